import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import type { ModelFacts } from '../../../src/model/model-facts.ts';
import { factsOf } from '../../../src/steps/read/facts.ts';
import { findFaults } from '../../../src/steps/read/faults.ts';
import { meshFromModel } from '../../../src/steps/read/size.ts';
import { forAll } from '../../support/for-all.ts';
import { modelOf, objOf } from './text-model.ts';

type Shape = { readonly points: readonly (readonly number[])[]; readonly faces: readonly (readonly number[])[] };

/** Squares of flat quads in a random pattern on the sides of a box of cells: holes, rims, separate parts, shared vertices. */
function randomShape(rand: () => number): Shape {
  const n = 2 + Math.floor(3 * rand());
  const number = new Map<string, number>();
  const points: number[][] = [];
  const at = (x: number, y: number, z: number): number => {
    const key = `${x} ${y} ${z}`;
    const known = number.get(key);
    if (known !== undefined) return known;
    number.set(key, points.length);
    return points.push([x, y, z]) - 1;
  };
  const faces: number[][] = [];
  for (let x = 0; x < n; x += 1) {
    for (let y = 0; y < n; y += 1) {
      for (let z = 0; z < n; z += 1) {
        if (rand() < 0.3) faces.push([at(x, y, z), at(x + 1, y, z), at(x + 1, y + 1, z), at(x, y + 1, z)]);
        if (rand() < 0.3) faces.push([at(x, y, z), at(x, y, z + 1), at(x + 1, y, z + 1), at(x + 1, y, z)]);
        if (rand() < 0.2) faces.push([at(x, y, z), at(x, y + 1, z), at(x, y, z + 1)].sort(() => rand() - 0.5));
      }
    }
  }
  if (faces.length === 0) faces.push([at(0, 0, 0), at(1, 0, 0), at(0, 1, 0)]);
  return { points, faces };
}

/** Turns by three angles, scales and moves. */
function moved(points: Shape['points'], rand: () => number, scale: number): number[][] {
  const [a, b, c] = [6 * rand(), 6 * rand(), 6 * rand()];
  const away = [10 * rand(), 10 * rand(), 10 * rand()];
  return points.map(([x, y, z]) => {
    const [x1, y1] = [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)];
    const [y2, z2] = [y1 * Math.cos(b) - z * Math.sin(b), y1 * Math.sin(b) + z * Math.cos(b)];
    const [z3, x3] = [z2 * Math.cos(c) - x1 * Math.sin(c), z2 * Math.sin(c) + x1 * Math.cos(c)];
    return [x3, y2, z3].map((value, axis) => scale * (value + away[axis]));
  });
}

/** Renumbers vertices and faces, begins each face at another corner, and gives each face corners of its own that lie exactly on the others. */
function renumbered({ points, faces }: Shape, rand: () => number, isSplit: boolean): Shape {
  const order = points.map((_, i) => ({ i, key: rand() })).sort((p, q) => p.key - q.key);
  const place = new Map(order.map(({ i }, now) => [i, now]));
  const newPoints: (readonly number[])[] = order.map(({ i }) => points[i]);
  const newFaces = faces.map((face) => {
    const shift = Math.floor(face.length * rand());
    return face.map((_, k) => {
      const corner = face[(k + shift) % face.length];
      return isSplit ? newPoints.push(points[corner]) - 1 : (place.get(corner) as number);
    });
  });
  return {
    points: newPoints,
    faces: newFaces
      .map((face) => ({ face, key: rand() }))
      .sort((p, q) => p.key - q.key)
      .map(({ face }) => face),
  };
}

const counts = ({ area: _, fanArea: __, boxMin: ___, boxSize: ____, ...rest }: ModelFacts) => rest;

describe('facts', () => {
  it('stay when the model is moved, turned, scaled, renumbered or split into separate faces', () =>
    forAll(
      (rand) => {
        const shape = randomShape(rand);
        const scale = 10 ** (4 * rand() - 2);
        const points = moved(shape.points, rand, scale);
        return { shape, other: renumbered({ points, faces: shape.faces }, rand, rand() < 0.5), scale };
      },
      async ({ shape, other, scale }) => {
        const before = factsOf(await modelOf(objOf(shape.points, shape.faces)));
        const after = factsOf(await modelOf(objOf(other.points, other.faces)));
        expect(counts(after)).toEqual(counts(before));
        expect(Math.abs(after.area / (before.area * scale * scale) - 1)).toBeLessThan(1e-9);
        expect(Math.abs(after.fanArea / after.area - 1)).toBeLessThan(1e-9);
      },
      { runs: 60 },
    ));

  it('agree with the topology of the mesh and with the findings', () =>
    forAll(
      (rand) => randomShape(rand),
      async ({ points, faces }) => {
        const model = await modelOf(objOf(points, faces));
        const facts = factsOf(model);
        const mesh = meshFromModel(model, 1);
        const { edgeCount, usesOfEdge } = topologyOf(mesh);
        expect(facts.triangleEdges).toBe(edgeCount);
        expect(facts.openEdges).toBe(usesOfEdge.filter((uses) => uses === 1).length);
        const findings = await findFaults(model, mesh, QUIET_WORK);
        const value = (code: string): number =>
          findings.filter((f) => f.code === code).reduce((sum, f) => sum + (f.value ?? 0), 0);
        expect(value('read/non-manifold-edge')).toBe(facts.nonManifoldEdges);
        expect(value('read/non-manifold-vertex')).toBe(facts.nonManifoldVertices);
        expect(value('read/separate-surfaces') || 1).toBe(facts.shells);
        expect(value('read/turned-faces') > 0 || value('read/one-sided') > 0).toBe(facts.turnedEdges > 0);
      },
      { runs: 60, seed: 4 },
    ));

  it('count a box of quads as such, its triangles beside', async () => {
    const points = Array.from({ length: 8 }, (_, i) => [(i & 1) * 2, ((i >> 1) & 1) * 3, (i >> 2) * 5]);
    const faces = [
      [0, 2, 3, 1],
      [4, 5, 7, 6],
      [0, 1, 5, 4],
      [2, 6, 7, 3],
      [0, 4, 6, 2],
      [1, 3, 7, 5],
    ];
    expect(factsOf(await modelOf(objOf(points, faces)))).toMatchObject({
      vertices: 8,
      faces: 6,
      edges: 12,
      euler: 2,
      triangles: 12,
      triangleEdges: 18,
      shells: 1,
      openLoops: 0,
      genus: 0,
      area: 2 * (6 + 10 + 15),
      fanArea: 62,
      boxMin: [0, 0, 0],
      boxSize: [2, 3, 5],
    });
  });
});
