import { describe, expect, it } from 'vitest';
import { chainGap, chainRing, chainSweep } from '../../../src/geom/outline.ts';
import { isSimpleArea } from '../../../src/geom/ring-simple.ts';
import type { Vec3 } from '../../../src/geom/vec.ts';
import { checkMeshLine } from '../../../src/mesh/lines/check-mesh-line.ts';
import { layLine, nearestAlong } from '../../../src/mesh/lines/along-line.ts';
import { lineThrough } from '../../../src/mesh/lines/line-through.ts';
import type { MeshLine } from '../../../src/mesh/lines/mesh-line.ts';
import { lineLength, placeOf, pointAtPlace } from '../../../src/mesh/lines/mesh-point.ts';
import { sectionLines } from '../../../src/mesh/lines/section-lines.ts';
import { surfaceOf, type Surface } from '../../../src/mesh/surface.ts';
import { buildTree } from '../../../src/geom/bvh.ts';
import { PLAIN_TRIM, type TrimResult, type TrimWish } from '../../../src/model/trim.ts';
import { lineTurning } from '../../../src/steps/trim/line-turning.ts';
import { makeTrim } from '../../../src/steps/trim/make-trim.ts';
import { stripStretches, type StripStretch } from '../../../src/steps/trim/strip-stretches.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { meshOf } from '../../support/meshes.ts';
import { ballMesh } from '../../support/round-meshes.ts';
import {
  bandSurface,
  bendBack,
  cone,
  cylinder,
  fromCircle,
  ringLine,
  spaced,
  sphere,
  torus,
  type RoundForm,
} from './round-grounds.ts';

const SIDES = { leftMm: 10, rightMm: 10, withinMm: 0.2, overlapMm: 0, mostLengthMm: Infinity };

function trim(surface: Surface, line: MeshLine, wish: Partial<TrimWish> = {}): TrimResult {
  const result = expectOk(
    makeTrim({ foot: surface, neutral: surface }, [{ name: 'A', line }], { ...PLAIN_TRIM, ...wish }),
  );
  for (const piece of result.work.pieces) {
    const chain = piece.outline.flatMap(({ segments }) => segments);
    expect(chainGap(chain)).toBeLessThan(1e-9);
    expect(chainSweep(chain)).toBeCloseTo(piece.areaMm2, 9);
    expect(isSimpleArea([chainRing(chain)])).toBe(true);
  }
  for (const { left, right, marks } of result.placing)
    for (const one of [...left, ...right, ...marks]) expect(checkMeshLine(surface, one)).toEqual([]);
  return result;
}

const one = (surface: Surface, line: MeshLine): StripStretch => {
  const stretches = stripStretches(lineTurning(surface, line), SIDES);
  expect(stretches).toHaveLength(1);
  return stretches[0];
};

/** A circle of a form at v: what the strip's curvature misses at worst, and how far it strays when it is bent back on the exact form. */
function circle(form: RoundForm, m: number, rows: readonly number[], v: number, kg: number, isDown = false) {
  const surface = bandSurface(form, m, rows, isDown);
  const row = rows.findIndex((at) => Math.abs(at - v) < 1e-9);
  const stretch = one(surface, ringLine(m, row));
  const [start, next] = [form.at(0, v), form.at(1e-6, v)];
  const heading: Vec3 = { x: next.x - start.x, y: next.y - start.y, z: next.z - start.z };
  const worst = stretch.centre.curvature.reduce((most, k) => Math.max(most, Math.abs(k - kg)), 0);
  const cover = bendBack(form, stretch, start, heading, fromCircle(Math.hypot(start.x, start.y), start.z));
  return { surface, row, stretch, worst, cover };
}

describe('strips along circles of closed form', () => {
  // Geodesic curvature of a parallel circle: tan(latitude) / R on a sphere, sin(half angle) / radius on a cone (it develops to an arc of its slant),
  // and on a torus 0 outside and inside and 1 / R on top (do Carmo, Differential Geometry of Curves and Surfaces, 4-4, from memory).
  it('covers a parallel of a sphere, better by the square of the fineness', () => {
    const found = [64, 128].map((m) =>
      circle(sphere(100), m, spaced(0, Math.PI / 3, m / 8), Math.PI / 6, Math.tan(Math.PI / 6) / 100),
    );
    expect(found[0].worst).toBeLessThan(3e-6);
    expect(found[0].cover).toBeLessThan(0.05);
    expect(Math.log2(found[0].cover / found[1].cover)).toBeGreaterThan(1.7);
  });

  it('covers it also where the rows beside it lie unevenly', () => {
    const rows = [...spaced(0, Math.PI / 3, 11), Math.PI / 6].sort((a, b) => a - b);
    expect(circle(sphere(100), 96, rows, Math.PI / 6, Math.tan(Math.PI / 6) / 100).cover).toBeLessThan(0.05);
  });

  it('is the arc of its slant on a cone, and needs no stretch', () => {
    const half = 0.5;
    const radius = 100 / Math.cos(half);
    const found = [64, 128].map((m) => circle(cone(half), m, spaced(60, 140, m / 8), 100, 1 / radius, true));
    expect(Math.log2(found[0].cover / found[1].cover)).toBeGreaterThan(1.7);
    expect(found[0].cover).toBeLessThan(0.05);
    const { surface, row } = found[1];
    const { work, strips } = trim(surface, ringLine(128, row));
    expect(Math.abs(strips[0].greatestStretchPercent)).toBeLessThan(0.005);
    expect(Math.abs(strips[0].leastFlatRadiusMm / radius - 1)).toBeLessThan(1e-3);
    // All round: the cone's circle turns by its sector, 2 pi sin(half), and both edges are arcs about one middle.
    expect(strips[0].flatTurnRad).toBeCloseTo(2 * Math.PI * Math.sin(half), 3);
    for (const side of [0, 2]) expect(work.pieces[0].outline[side].segments[0].kind).toBe('arc');
    // Its middle bends to where the normal of the cone meets its axis.
    expect(strips[0].leastBendRadiusMm).toBeCloseTo((100 * Math.tan(half)) / Math.cos(half), 0);
  });

  it('is straight outside and inside a torus, an arc on top, with the stretch that its curvature asks for', () => {
    const form = torus(100, 30);
    const flat = [0, Math.PI].map((v) => circle(form, 128, spaced(v - 1, v + 1, 16), v, 0));
    for (const { worst, cover } of flat) {
      expect(worst).toBeLessThan(1e-12);
      expect(cover).toBeLessThan(1e-6);
    }
    const tops = [128, 256].map((m) => circle(form, m, spaced(0.5, Math.PI - 0.5, m / 8), Math.PI / 2, 1 / 100));
    expect(Math.log2(tops[0].cover / tops[1].cover)).toBeGreaterThan(1.7);
    expect(tops[0].cover).toBeLessThan(0.03);
    // Edges 10 mm from the middle: circles of radius big + small cos(10 / small) outside, big - small cos(10 / small) inside.
    for (const [i, sign] of [1, -1].entries()) {
      const { strips } = trim(flat[i].surface, ringLine(128, flat[i].row));
      const means = [strips[0].leftStretchPercent, strips[0].rightStretchPercent].map(
        (list) => list.reduce((sum, { value }) => sum + value, 0) / list.length,
      );
      const exact = 100 * ((100 + sign * 30 * Math.cos(1 / 3)) / (100 + sign * 30) - 1);
      for (const mean of means) expect(Math.abs(mean - exact)).toBeLessThan(0.2);
    }
  });

  // Across its top the curvature of a torus goes from summit to saddle, so the corners on it miss nothing themselves.
  it('covers the top of a torus of few facets, also where the rows beside it lie unevenly', () => {
    const even = spaced(0.5, Math.PI - 0.5, 8);
    const uneven = [0.9, 1.25, Math.PI / 2, 1.7, 1.85, 2.1];
    for (const rows of [even, uneven])
      expect(circle(torus(100, 30), 64, rows, Math.PI / 2, 1 / 100).cover).toBeLessThan(0.2);
  });

  it('covers a circle drawn across the triangles of a ball', () => {
    const surface = surfaceOf(ballMesh(4, 100));
    for (const v of [0.8, 1.1]) {
      const [radius, z] = [100 * Math.sin(v), 100 * Math.cos(v)];
      const [line] = sectionLines(surface, { point: { x: 0, y: 0, z }, normal: { x: 0, y: 0, z: 1 } });
      const turning = lineTurning(surface, line);
      const [p, q] = turning.laid.places;
      const way = Math.sign(p.x * q.y - p.y * q.x);
      const stretch = one(surface, line);
      expect(stretch.centre.offMm).toBeLessThan(0.2);
      expect(
        bendBack(sphere(100), stretch, p, { x: -way * p.y, y: way * p.x, z: 0 }, fromCircle(radius, z)),
      ).toBeLessThan(0.2);
      // Gauss and Bonnet: all round it turns by 2 pi cos v.
      const total = Math.abs(turning.turns.reduce((sum, turn) => sum + turn, 0));
      expect(Math.abs(total / (2 * Math.PI * Math.cos(v)) - 1)).toBeLessThan(2e-3);
    }
  });
});

describe('strips along other lines', () => {
  it('is straight along a helix, bent by cos² and twisted by sin cos of its lead', () => {
    const [r, lead, m] = [40, 0.6, 96];
    const surface = bandSurface(cylinder(r), m, spaced(-10, 170, 20));
    const tree = buildTree(surface.positions, surface.triangles);
    const points = spaced(0, 180, 60).map((mm) => {
      const at = cylinder(r).at((mm * Math.cos(lead)) / r, mm * Math.sin(lead));
      const hit = tree.nearest(at);
      if (hit === null) throw new Error('no surface');
      return pointAtPlace(surface, hit.triangle, hit.point);
    });
    const line = expectOk(lineThrough(surface, points, false));
    const { strips, placing } = trim(surface, line);
    expect(strips).toHaveLength(1);
    expect(strips[0].leastFlatRadiusMm).toBeGreaterThan(2e4);
    expect(Math.abs(strips[0].greatestStretchPercent)).toBeLessThan(0.05);
    expect(strips[0].leastBendRadiusMm / (r / Math.cos(lead) ** 2)).toBeCloseTo(1, 1);
    const twist = (100 * Math.sin(lead) * Math.cos(lead) * 180) / Math.PI / r;
    expect(strips[0].twistDegPer100Mm / twist).toBeCloseTo(1, 1);
    // Both placing lines are helices 10 mm to the side: of the strip's own length.
    for (const side of [placing[0].left, placing[0].right])
      expect(side.reduce((sum, part) => sum + lineLength(surface, part), 0)).toBeCloseTo(strips[0].lengthMm, 0);
  });

  const plane = (y: (i: number) => number, count = 101): { surface: Surface; line: MeshLine } => {
    const points = [-40, 0, 40].flatMap((row) =>
      Array.from({ length: count }, (_, i): [number, number, number] => [4 * i, row + (row === 0 ? y(i) : 0), 0]),
    );
    const faces = [0, 1].flatMap((row) =>
      Array.from({ length: count - 1 }, (_, i) => [
        row * count + i,
        row * count + i + 1,
        (row + 1) * count + i + 1,
        (row + 1) * count + i,
      ]),
    );
    const line: MeshLine = {
      points: Array.from({ length: count }, (_, i) => ({ at: 'vertex', vertex: count + i })),
      closed: false,
    };
    return { surface: surfaceOf(meshOf(points, faces)), line };
  };

  it('does not follow the jags of a seam along the mesh', () => {
    for (const jag of [0.15, 1.5]) {
      const { surface, line } = plane((i) => (i % 2 === 0 ? jag : -jag));
      const { strips, work } = trim(surface, line);
      expect(strips).toHaveLength(1);
      expect(strips[0].offMm).toBeLessThan(jag * 1.35);
      expect(strips[0].leastFlatRadiusMm).toBeGreaterThan(300);
      expect(work.findings.map(({ code }) => code)).toEqual(jag > 0.2 ? ['trim/off-line'] : []);
    }
  });

  it('has its marks where the seam has them, and beneath it at the same places', () => {
    const { surface, line } = plane((i) => 5 * Math.sin(i / 20));
    const marksAtMm = [50, 123, 301];
    const result = expectOk(
      makeTrim({ foot: surface, neutral: surface }, [{ name: 'A', line, marksAtMm }], PLAIN_TRIM),
    );
    const laid = layLine(surface, line);
    expect(result.work.pieces[0].lines).toHaveLength(6);
    expect(result.placing[0].marks).toHaveLength(6);
    for (const [i, mark] of result.placing[0].marks.entries()) {
      const near = nearestAlong(laid, placeOf(surface, mark.points[0]));
      expect(near.mm).toBeCloseTo(marksAtMm[i >> 1], 0);
      expect(near.distanceMm).toBeCloseTo(10, 1);
    }
    // The placing lines run at half the width.
    for (const side of [result.placing[0].left, result.placing[0].right])
      for (const p of side[0].points)
        expect(Math.abs(nearestAlong(laid, placeOf(surface, p)).distanceMm - 10)).toBeLessThan(0.25);
  });

  it('meets in mitres round a square, each as long as its side', () => {
    const n = 21;
    const points = Array.from({ length: n * n }, (_, i): [number, number, number] => [
      10 * (i % n),
      10 * Math.floor(i / n),
      0,
    ]);
    const faces = Array.from({ length: (n - 1) * (n - 1) }, (_, i) => {
      const a = n * Math.floor(i / (n - 1)) + (i % (n - 1));
      return [a, a + 1, a + n + 1, a + n];
    });
    const surface = surfaceOf(meshOf(points, faces));
    const at = (x: number, y: number): number => n * y + x;
    const ring = [
      ...Array.from({ length: 10 }, (_, i) => at(5 + i, 5)),
      ...Array.from({ length: 10 }, (_, i) => at(15, 5 + i)),
      ...Array.from({ length: 10 }, (_, i) => at(15 - i, 15)),
      ...Array.from({ length: 10 }, (_, i) => at(5, 15 - i)),
    ];
    const line: MeshLine = { points: ring.map((vertex) => ({ at: 'vertex', vertex })), closed: true };
    const { work, strips } = trim(surface, line);
    expect(strips.map(({ lengthMm }) => Math.round(1e6 * lengthMm) / 1e6)).toEqual([100, 100, 100, 100]);
    for (const { outline } of work.pieces) {
      expect(outline[0].lengthMm).toBeCloseTo(120, 6);
      expect(outline[2].lengthMm).toBeCloseTo(80, 6);
    }
  });

  it('is cut to the greatest length, alike, and overlaps where a ring is asked to', () => {
    const surface = bandSurface(cylinder(50), 64, spaced(-30, 30, 12));
    const ring = ringLine(64, 6);
    const around = 64 * 2 * 50 * Math.sin(Math.PI / 64);
    expect(trim(surface, ring, { overlapMm: 15 }).strips[0].lengthMm).toBeCloseTo(around + 15, 1);
    const parts = trim(surface, ring, { mostLengthMm: 100 }).strips;
    expect(parts).toHaveLength(4);
    for (const { lengthMm } of parts) expect(lengthMm).toBeCloseTo(around / 4, 1);
  });

  it('curves an edging by the rim, with its edge on it', () => {
    const half = 0.4;
    const surface = bandSurface(cone(half), 96, spaced(60, 100, 10), true);
    const { strips, placing } = trim(surface, ringLine(96, 10), { leftShare: 1 });
    expect(strips[0].leastFlatRadiusMm / (100 / Math.cos(half))).toBeCloseTo(1, 2);
    expect(Math.abs(strips[0].greatestStretchPercent)).toBeLessThan(0.2);
    expect(placing[0].left.length + placing[0].right.length).toBeGreaterThan(0);
  });

  it('says what no strip can be made of', () => {
    const surface = bandSurface(cylinder(50), 32, spaced(-30, 30, 6));
    const made = (wish: Partial<TrimWish>) =>
      makeTrim({ foot: surface, neutral: surface }, [{ name: 'A', line: ringLine(32, 3) }], { ...PLAIN_TRIM, ...wish });
    expectProblem(made({ widthMm: Number.NaN }), 'trim/size');
    expectProblem(made({ mostLengthMm: 10 }), 'trim/length');
    expectProblem(made({ end: { kind: 'mitre', turnDeg: 179 } }), 'trim/end');
    expectProblem(made({ profile: { kind: 'half-round', from: 'cut' }, thicknessMm: 15 }), 'trim/profile');
    expectProblem(made({ profile: { kind: 'u-binding', rimMm: 6, depthMm: 10, insideRadiusMm: 0 } }), 'trim/no-rim');
  });
});
