import { describe, expect, it } from 'vitest';
import { deg, rad } from '../../../src/geom/vec.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { bevelsBetween } from '../../../src/steps/foam/chain-bevels.ts';
import { findPanels } from '../../../src/steps/foam/panels.ts';
import { pieceSurface } from '../../../src/steps/foam/piece-surface.ts';
import { boxMesh, meshOf, tubeMesh } from '../../support/meshes.ts';
import {
  BOX_EDGES,
  columnEdges,
  foamOf,
  hingeMesh,
  partedAlong,
  ringEdges,
  turnedMesh,
  type Pair,
  type Parted,
} from './support.ts';

/** Bevels in degrees along every butt seam of a parted surface whose pieces are all rolled: start and end of each edge. */
function smoothBevels({ mesh, patches, chains }: Parted): number[][] {
  const surfaces = patches.map((patch) => pieceSurface(mesh, patch));
  const panels = surfaces.map((surface) => findPanels(surface, rad(20)));
  return chains
    .filter(({ kind }) => kind === 'butt')
    .map((chain) => {
      const sides = chain.sides.map((side, i) => ({
        side,
        which: i === 0 ? (0 as const) : (1 as const),
        surface: surfaces[side.patch],
        panels: panels[side.patch],
        isSmooth: true,
      }));
      const { atStart, atEnd } = bevelsBetween(mesh, chain, sides);
      return [...atStart, ...atEnd].map(deg);
    });
}

const worst = (bevels: readonly (readonly number[])[]): number => Math.max(...bevels.flat().map(Math.abs));

/** Corners on a sphere, poles first and last. */
function sphereMesh(sides: number, rings: number, r: number): Mesh {
  const points: [number, number, number][] = [[0, 0, -r]];
  for (let j = 1; j < rings; j += 1) {
    for (let i = 0; i < sides; i += 1) {
      const [a, b] = [(2 * Math.PI * i) / sides, (Math.PI * j) / rings];
      points.push([r * Math.sin(b) * Math.cos(a), r * Math.sin(b) * Math.sin(a), -r * Math.cos(b)]);
    }
  }
  points.push([0, 0, r]);
  const at = (j: number, i: number): number => 1 + (j - 1) * sides + (i % sides);
  const faces: number[][] = [];
  for (let i = 0; i < sides; i += 1) {
    faces.push([0, at(1, i + 1), at(1, i)], [points.length - 1, at(rings - 1, i), at(rings - 1, i + 1)]);
    for (let j = 1; j < rings - 1; j += 1) faces.push([at(j, i), at(j, i + 1), at(j + 1, i + 1), at(j + 1, i)]);
  }
  return meshOf(points, faces);
}

describe('two panels that meet', () => {
  // Worked cases L1, L2 and L4 of the handbook table: interior angle 120, 90 and 240 degrees, sheet 10 mm, model = outer surface.
  // bevel = 90 - angle / 2; set-back of the inner face = t cot(angle / 2).
  it.each([
    { angle: 120, bevel: 30, setback: 5.773503 },
    { angle: 90, bevel: 45, setback: 10 },
    { angle: 240, bevel: -30, setback: -5.773503 },
  ])('at $angle degrees lean $bevel and set the back in by $setback', ({ angle, bevel, setback }) => {
    const parted = partedAlong(hingeMesh(rad(180 - angle)), [[0, 1]], { thicknessMm: 10, modelIs: 'face' });
    const { pieces } = foamOf(parted);
    expect(pieces).toHaveLength(2);
    for (const piece of pieces) {
      const edge = piece.edges.find(({ letter }) => letter === 'A');
      expect(edge?.bevelDeg.length).toBe(2);
      for (const lean of edge?.bevelDeg ?? []) expect(lean).toBeCloseTo(bevel, 9);
      for (let i = 0; i < 2; i += 1)
        expect((edge?.faceOffsetMm[i] ?? 0) - (edge?.backOffsetMm[i] ?? 0)).toBeCloseTo(setback, 5);
    }
  });

  it.each([0, 0.33, 0.5, 1])('share the neutral line as k = %f says', (k) => {
    const { pieces } = foamOf(partedAlong(hingeMesh(rad(90)), [[0, 1]], { thicknessMm: 8, neutralFraction: k }));
    const edge = pieces[0].edges.find(({ letter }) => letter === 'A');
    expect(edge?.faceOffsetMm[0]).toBeCloseTo((1 - k) * 8, 9);
    expect(edge?.backOffsetMm[0]).toBeCloseTo(-k * 8, 9);
  });
});

describe('smooth surfaces', () => {
  it('leave a tube square wherever it is cut, of 24 sides or 48, one row or three', () => {
    for (const sides of [24, 48]) {
      for (const rings of [1, 3]) {
        const cuts: Pair[] = [...columnEdges(sides, 0, rings), ...columnEdges(sides, 7, rings)];
        if (rings > 1) cuts.push(...ringEdges(sides, 1));
        expect(worst(smoothBevels(partedAlong(tubeMesh(sides, 50, 90, rings), cuts)))).toBe(0);
      }
    }
  });

  it('leave a tube of uneven triangles square too', () => {
    const [sides, rings] = [24, 8];
    const points: [number, number, number][] = [];
    for (let j = 0; j <= rings; j += 1) {
      for (let i = 0; i < sides; i += 1) {
        const angle = (2 * Math.PI * (i + (j % 2) / 2 + 0.15 * Math.sin(3 * i + 5 * j))) / sides;
        points.push([50 * Math.cos(angle), 50 * Math.sin(angle), 12 * j]);
      }
    }
    const faces: number[][] = [];
    for (let j = 0; j < rings; j += 1) {
      for (let i = 0; i < sides; i += 1) {
        const [a, b] = [j * sides + i, j * sides + ((i + 1) % sides)];
        faces.push(
          ...(j % 2 === 0
            ? [
                [a, b, a + sides],
                [b, b + sides, a + sides],
              ]
            : [
                [a, b + sides, a + sides],
                [a, b, b + sides],
              ]),
        );
      }
    }
    const parted = partedAlong(meshOf(points, faces), [
      ...columnEdges(sides, 0, rings),
      ...columnEdges(sides, 12, rings),
    ]);
    expect(worst(smoothBevels(parted))).toBe(0);
  });

  it('leave a cone square, along it and round it', () => {
    const cone = turnedMesh(24, [
      [80, 0],
      [67.5, 15],
      [55, 30],
      [42.5, 45],
      [30, 60],
    ]);
    expect(worst(smoothBevels(partedAlong(cone, [...columnEdges(24, 0, 4), ...columnEdges(24, 9, 4)])))).toBe(0);
    expect(worst(smoothBevels(partedAlong(cone, [...columnEdges(24, 0, 4), ...ringEdges(24, 2)])))).toBe(0);
  });

  it('leave a sphere square at its equator and along its meridians', () => {
    const [sides, rings] = [24, 12];
    const sphere = sphereMesh(sides, rings, 100);
    const equator = Array.from({ length: sides }, (_, i): Pair => {
      const start = 1 + (rings / 2 - 1) * sides;
      return [start + i, start + ((i + 1) % sides)];
    });
    const meridian = (i: number): Pair[] => [
      [0, 1 + i],
      ...Array.from({ length: rings - 2 }, (_, j): Pair => [1 + j * sides + i, 1 + (j + 1) * sides + i]),
      [1 + (rings - 2) * sides + i, 1 + (rings - 1) * sides],
    ];
    expect(worst(smoothBevels(partedAlong(sphere, equator)))).toBe(0);
    expect(worst(smoothBevels(partedAlong(sphere, [...meridian(0), ...meridian(6)])))).toBe(0);
  });
});

describe('creases', () => {
  it('give a box 45 degrees on every edge', () => {
    const { pieces } = foamOf(partedAlong(boxMesh(100), BOX_EDGES));
    for (const piece of pieces)
      for (const { bevelDeg } of piece.edges) for (const lean of bevelDeg) expect(lean).toBeCloseTo(45, 9);
  });

  it('give the lid of a smooth tube 45 degrees all round', () => {
    const sides = 24;
    const tube = tubeMesh(sides, 50, 60, 2);
    const centre = tube.positions.length / 3;
    const points = Array.from(
      { length: centre },
      (_, v) => [...tube.positions.subarray(3 * v, 3 * v + 3)] as [number, number, number],
    );
    const walls = Array.from({ length: 2 * sides }, (_, f) => {
      const [j, i] = [Math.floor(f / sides), f % sides];
      return [j * sides + i, j * sides + ((i + 1) % sides), (j + 1) * sides + ((i + 1) % sides), (j + 1) * sides + i];
    });
    const lid = Array.from({ length: sides }, (_, i) => [2 * sides + i, 2 * sides + ((i + 1) % sides), centre]);
    const mesh = meshOf([...points, [0, 0, 60]], [...walls, ...lid]);
    const bevels = smoothBevels(partedAlong(mesh, [...ringEdges(sides, 2), ...columnEdges(sides, 0, 2)]));
    const [closing, rim] = bevels[0].length < bevels[1].length ? bevels : [bevels[1], bevels[0]];
    for (const lean of closing) expect(lean).toBe(0);
    expect(rim).toHaveLength(2 * sides);
    for (const lean of rim) expect(lean).toBeCloseTo(45, 6);
  });

  it('between strips one facet wide are those of the facets: nothing tells how such a strip bends across', () => {
    // A crest that rises and falls, with a strip down either side that leans now more, now less.
    const count = 14;
    const points: [number, number, number][] = [];
    for (let i = 0; i <= count; i += 1) {
      const lean = 0.7 + 0.3 * Math.sin(i * 0.5);
      const top = 20 * Math.sin(i / 3);
      points.push(
        [0, 12 * i, top],
        [-18 * Math.cos(lean), 12 * i, top - 18 * Math.sin(lean)],
        [18 * Math.cos(lean), 12 * i, top - 18 * Math.sin(lean)],
      );
    }
    const faces = Array.from({ length: count }, (_, i) => [
      [3 * i + 1, 3 * i, 3 * i + 3, 3 * i + 4],
      [3 * i, 3 * i + 2, 3 * i + 5, 3 * i + 3],
    ]).flat();
    const parted = partedAlong(
      meshOf(points, faces),
      Array.from({ length: count }, (_, i): Pair => [3 * i, 3 * i + 3]),
    );
    const chain = parted.chains.find(({ kind }) => kind === 'butt');
    const [bevels] = smoothBevels(parted);
    const middles = Array.from({ length: count }, (_, i) => (bevels[i] + bevels[count + i]) / 2);
    chain?.foldRad.slice(2, -2).forEach((fold, i) => expect(Math.abs(middles[i + 2] - deg(fold) / 2)).toBeLessThan(3));
    expect(chain?.foldRad.length).toBe(count);
  });

  it('follow the mitre of two tubes from one side to the other', () => {
    // Two tubes of R 40 whose axes turn by 60 degrees: the mitre plane leans 30 degrees, and on the true tubes
    // sin(bevel) = sin(30) cos(angle round the tube), positive on the outside of the elbow.
    const [sides, r, lean] = [48, 40, rad(30)];
    const points: [number, number, number][] = [];
    const ring = (map: (x: number, y: number) => [number, number, number]): void => {
      for (let i = 0; i < sides; i += 1) {
        const angle = (2 * Math.PI * i) / sides;
        points.push(map(r * Math.cos(angle), r * Math.sin(angle)));
      }
    };
    // The mitre plane through the origin holds y and falls along x; the outside of the elbow is at -x.
    const mirrored = ([x, y, z]: [number, number, number]): [number, number, number] => {
      const [nx, nz] = [Math.sin(lean), Math.cos(lean)];
      const d = 2 * (x * nx + z * nz);
      return [x - d * nx, y, z - d * nz];
    };
    const below =
      (drop: number) =>
      (x: number, y: number): [number, number, number] => [x, y, -drop];
    ring(below(120));
    ring(below(60));
    ring((x, y) => [x, y, -x * Math.tan(lean)]);
    ring((x, y) => mirrored([x, y, -60]));
    ring((x, y) => mirrored([x, y, -120]));
    const faces: number[][] = [];
    for (let j = 0; j < 4; j += 1) {
      for (let i = 0; i < sides; i += 1) {
        faces.push([
          j * sides + i,
          j * sides + ((i + 1) % sides),
          (j + 1) * sides + ((i + 1) % sides),
          (j + 1) * sides + i,
        ]);
      }
    }
    const parted = partedAlong(meshOf(points, faces), [...ringEdges(sides, 2), ...columnEdges(sides, 0, 4)]);
    const chain = parted.chains.findIndex(({ kind, vertices }) => kind === 'butt' && vertices.length === sides + 1);
    const butts = parted.chains.filter(({ kind }) => kind === 'butt');
    const bevels = smoothBevels(parted)[butts.indexOf(parted.chains[chain])];
    let most = 0;
    parted.chains[chain].vertices.slice(0, sides).forEach((v, i) => {
      const angle = Math.atan2(points[v][1], points[v][0]);
      const expected = -deg(Math.asin(Math.sin(lean) * Math.cos(angle)));
      most = Math.max(most, Math.abs(bevels[i] - expected));
    });
    expect(most).toBeLessThan(0.4);
  });
});
