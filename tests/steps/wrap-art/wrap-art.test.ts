import { describe, expect, it } from 'vitest';
import { buildTree } from '../../../src/geom/bvh.ts';
import { cross3, dot3, length3, scale3, sub3, add3, unit3, type Vec3 } from '../../../src/geom/vec.ts';
import { checkMeshLine } from '../../../src/mesh/lines/check-mesh-line.ts';
import { placeOf, pointAtPlace } from '../../../src/mesh/lines/mesh-point.ts';
import { surfaceOf, type Surface } from '../../../src/mesh/surface.ts';
import type { ArtSeat, ArtStroke, WrappedArt } from '../../../src/model/wrapped-art.ts';
import { artworkFromSvg, USUAL_ARTWORK } from '../../../src/pipeline/artwork.ts';
import { wrapArtwork, type WrapWish } from '../../../src/pipeline/wrap-artwork.ts';
import { wrapArt } from '../../../src/steps/wrap-art/wrap-art.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { ballMesh } from '../../support/round-meshes.ts';
import { bandSurface, cone, cylinder, spaced } from '../trim/round-grounds.ts';

const ring = (r: number, n: number, x = 0, y = 0): Float64Array =>
  Float64Array.from(
    Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / n).flatMap((a) => [
      x + r * Math.cos(a),
      y + r * Math.sin(a),
    ]),
  );
const STROKES: readonly ArtStroke[] = [
  { name: 'ring', points: ring(25, 60), closed: true },
  { name: 'off the middle', points: ring(6, 24, 12, 9), closed: true },
  { name: 'hook', points: Float64Array.of(-18, 5, 22, 10, 10, -20), closed: false },
];

const seatOn = (surface: Surface, near: Vec3, along: Vec3): ArtSeat => {
  const hit = buildTree(surface.positions, surface.triangles).nearest(near);
  if (hit === null) throw new Error('no surface');
  return { at: pointAtPlace(surface, hit.triangle, hit.point), along, origin: { x: 0, y: 0 }, turnRad: 0.3 };
};

const UP: Vec3 = { x: 0, y: 0, z: 1 };
const wholeLine = (surface: Surface, { lines }: WrappedArt): void => {
  for (const { line } of lines) expect(checkMeshLine(surface, line)).toEqual([]);
};

describe('artwork on a surface that rolls out flat', () => {
  it.each([
    ['cylinder', bandSurface(cylinder(40), 48, spaced(-50, 50, 12)), cylinder(40).at(0.3, 3)],
    ['cone', bandSurface(cone(0.5), 48, spaced(60, 150, 12), true), cone(0.5).at(0.3, 108)],
  ] as const)('keeps all lengths on a %s, and closed lines closed', (_, surface, near) => {
    const art = expectOk(wrapArt(surface, STROKES, seatOn(surface, near, UP)));
    wholeLine(surface, art);
    expect(art.lines.map(({ line }) => line.closed)).toEqual([true, true, false]);
    for (const { drawnMm, lengthMm } of art.lines) expect(Math.abs(lengthMm / drawnMm - 1)).toBeLessThan(1e-9);
    for (const percent of [art.mostStretchPercent, art.leastStretchPercent])
      expect(Math.abs(percent)).toBeLessThan(1e-6);
    expect(art.findings).toEqual([]);
  });
});

describe('artwork on a ball', () => {
  /** Where the azimuthal equidistant projection about a place puts a point drawn at (x, y) (Snyder, Map Projections: A Working Manual, USGS 1987, 25-14, 25-15). */
  const projected = (middle: Vec3, along: Vec3, r: number, x: number, y: number): Vec3 => {
    const n = unit3(middle);
    const e = unit3(sub3(along, scale3(n, dot3(along, n))));
    const far = Math.hypot(x, y);
    const way = add3(scale3(e, x / far), scale3(cross3(n, e), y / far));
    return add3(scale3(n, r * Math.cos(far / r)), scale3(way, r * Math.sin(far / r)));
  };

  it('lies where the azimuthal equidistant projection has it, nearer with finer facets', () => {
    const off = [3, 4].map((level) => {
      const surface = surfaceOf(ballMesh(level, 100));
      const seat = { ...seatOn(surface, { x: 20, y: 30, z: 93 }, { x: 1, y: 0, z: 0 }), turnRad: 0 };
      const corners = [0, 0, 30, 0, 5, 28, -20, -12];
      let worst = 0;
      for (let i = 2; i < corners.length; i += 2) {
        const stroke = { name: 'a', points: Float64Array.from([0, 0, corners[i], corners[i + 1]]), closed: false };
        const { lines } = expectOk(wrapArt(surface, [stroke], seat));
        const { points } = lines[0].line;
        const end = scale3(unit3(placeOf(surface, points[points.length - 1])), 100);
        const wanted = projected(placeOf(surface, seat.at), seat.along, 100, corners[i], corners[i + 1]);
        worst = Math.max(worst, length3(sub3(end, wanted)));
      }
      return worst;
    });
    expect(off[0]).toBeLessThan(0.5);
    expect(off[1]).toBeLessThan(0.15);
  });

  it('tells how much shorter a ring comes out: by sin(x) / x all round', () => {
    const surface = surfaceOf(ballMesh(4, 100));
    const seat = seatOn(surface, { x: 20, y: 30, z: 93 }, { x: 1, y: 0, z: 0 });
    const stroke = { name: 'a', points: ring(50, 120), closed: true };
    const art = expectOk(wrapArt(surface, [stroke], seat));
    wholeLine(surface, art);
    const mean = 100 * (art.lines[0].lengthMm / art.lines[0].drawnMm - 1);
    expect(Math.abs(mean - 100 * (Math.sin(0.5) / 0.5 - 1))).toBeLessThan(0.05);
    expect(art.findings.map(({ code }) => code)).toEqual(['wrap-art/stretch']);
  });
});

describe('artwork at an edge', () => {
  const surface = bandSurface(cylinder(40), 48, spaced(-20, 20, 6));
  it('is left out beyond it, and told', () => {
    const stroke = { name: 'a', points: Float64Array.of(-30, -10, 30, -10, 30, 10, -30, 10), closed: true };
    const seat = { ...seatOn(surface, cylinder(40).at(0.3, 1), UP), turnRad: 0 };
    const art = expectOk(wrapArt(surface, [stroke], seat));
    wholeLine(surface, art);
    expect(art.lines.length).toBeGreaterThan(0);
    expect(art.lostMm).toBeGreaterThan(40);
    expect(art.findings.map(({ code }) => code)).toEqual(['wrap-art/off']);
  });
  it('has no place on it', () => {
    const at = { at: 'vertex', vertex: 0 } as const;
    expectProblem(wrapArt(surface, STROKES, { ...seatOn(surface, UP, UP), at }), 'wrap-art/place');
  });
});

describe('artwork on flat pieces', () => {
  const [r, m, rows] = [40, 48, spaced(-50, 50, 12)];
  const surface = bandSurface(cylinder(r), m, rows);
  const side = 2 * r * Math.sin(Math.PI / m);
  /** The cylinder laid flat, parted along its first column. */
  const ground = {
    patch: {
      meshTriangles: Uint32Array.from({ length: surface.triangles.length / 3 }, (_, t) => t),
      triangles: surface.triangles.map((v, h) => {
        const own = [0, 1, 2].map((k) => surface.triangles[h - (h % 3) + k] % m);
        const column = own.includes(m - 1) && v % m === 0 ? m : v % m;
        return Math.floor(v / m) * (m + 1) + column;
      }),
      loops: [],
    },
    uv: Float64Array.from(rows.flatMap((z) => Array.from({ length: m + 1 }, (_, i) => [i * side, z])).flat()),
  };
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><rect x="2" y="2" width="36" height="26"/></svg>';
  const lay = (at: Vec3, trueOn: WrapWish['trueOn']) =>
    expectOk(
      wrapArtwork(
        surface,
        [ground],
        expectOk(artworkFromSvg(svg, USUAL_ARTWORK)),
        { at: seatOn(surface, at, UP).at, along: UP, turnRad: 0, trueOn },
      ),
    );
  const flatLength = (points: Float64Array, closed: boolean): number => {
    let sum = 0;
    for (let i = closed ? 0 : 2; i < points.length; i += 2) {
      const j = (i + points.length - 2) % points.length;
      sum += Math.hypot(points[i] - points[j], points[i + 1] - points[j + 1]);
    }
    return sum;
  };

  it.each(['surface', 'piece'] as const)('is an outline of its size, true on the %s', (trueOn) => {
    const { art, onPieces } = lay(cylinder(r).at(2, 3), trueOn);
    expect(art.lines).toHaveLength(1);
    expect(onPieces.map(({ closed }) => closed)).toEqual([true]);
    expect(flatLength(onPieces[0].points, true)).toBeCloseTo(124, 6);
    // Its longer side runs up the cylinder, as it was asked to.
    const [xs, ys] = [0, 1].map((axis) => onPieces[0].points.filter((_, i) => i % 2 === axis));
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(36, 6);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(26, 6);
  });

  it('is parted where it lies over a seam', () => {
    const { onPieces } = lay(cylinder(r).at(0.05, 3), 'surface');
    expect(onPieces.length).toBeGreaterThan(1);
    const lengths = onPieces.map(({ points, closed }) => flatLength(points, closed));
    expect(lengths.reduce((sum, one) => sum + one, 0)).toBeCloseTo(124, 6);
  });
});
