import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { graphOfTriangles } from '../../../src/geom/sparse-graph.ts';
import { rad } from '../../../src/geom/vec.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import type { LeastRatio } from '../../../src/model/forming.ts';
import type { Patch } from '../../../src/model/patch.ts';
import { leastRatio } from '../../../src/steps/flatten/least-ratio.ts';
import { restShapes, type RestShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { IS_LONG } from '../../support/long.ts';
import { meshOf } from '../../support/meshes.ts';
import { runSample } from '../../support/run-sample.ts';
import { flatten, onePatch, referencePatch } from './flatten-support.ts';
import { polarDisc, type Away } from './polar-disc.ts';

const ofPatch = (patch: Patch, rest: RestShapes): Promise<LeastRatio> =>
  leastRatio(patch, rest, graphOfTriangles(rest.vertexCount, patch.triangles), QUIET_WORK);

function ofMesh(mesh: Mesh): Promise<LeastRatio> {
  const patch = onePatch(mesh);
  return ofPatch(patch, restShapes(patch, mesh.positions));
}

const milnor = (x: number): number => x / Math.sin(x);

/** A cap of a unit sphere, half-angle `x`: rings of 6, 12, 18 … triangles round the pole. */
function cap(x: number, rings: number): Mesh {
  return polarDisc(rings, (i, share) => {
    const polar = (x * i) / rings;
    const turn = 2 * Math.PI * share;
    return [Math.sin(polar) * Math.cos(turn), Math.sin(polar) * Math.sin(turn), Math.cos(polar)];
  });
}

/** A patch that is a polar disc of a surface of constant curvature, by its sides alone. */
function abstractDisc(rings: number, radius: number, away: Away): { patch: Patch; rest: RestShapes } {
  const patch = onePatch(
    polarDisc(rings, (i, share) => [i * Math.cos(2 * Math.PI * share), i * Math.sin(2 * Math.PI * share), 0]),
  );
  const flat = restShapes(patch, flatPositions(patch, rings));
  const polar = (v: number): [number, number] => [
    (Math.hypot(flat.points[3 * v], flat.points[3 * v + 1]) * radius) / rings,
    Math.atan2(flat.points[3 * v + 1], flat.points[3 * v]),
  ];
  const base = new Float64Array(flat.count);
  const foot = new Float64Array(flat.count);
  const height = new Float64Array(flat.count);
  const area = new Float64Array(flat.count);
  for (let t = 0; t < flat.count; t += 1) {
    const [p, q, r] = [0, 1, 2].map((k) => polar(flat.corners[3 * t + k]));
    const [pq, qr, rp] = [away(p, q), away(q, r), away(r, p)];
    base[t] = pq;
    foot[t] = (pq * pq + rp * rp - qr * qr) / (2 * pq);
    height[t] = Math.sqrt(rp * rp - foot[t] * foot[t]);
    area[t] = (pq * height[t]) / 2;
  }
  return { patch, rest: { ...flat, base, foot, height, area, totalArea: area.reduce((a, b) => a + b) } };
}

function flatPositions(patch: Patch, rings: number): Float64Array {
  const mesh = polarDisc(rings, (i, share) => [
    i * Math.cos(2 * Math.PI * share),
    i * Math.sin(2 * Math.PI * share),
    0,
  ]);
  expect(mesh.positions.length).toBe(3 * patch.meshVertices.length);
  return mesh.positions;
}

describe('a cap of a sphere', () => {
  it.each([15, 30, 45, 60, 90])('of %i degrees asks for x / sin x, to the mesh', async (half) => {
    const x = rad(half);
    const { ratio, kind, radiusMm, heldDeg, defectDeg } = await ofMesh(cap(x, 24));
    // 24 rings: sides of x / 24, whose chords are short by (x / 24)² / 24 of themselves.
    expect(ratio).toBeLessThan(milnor(x) * (1 + x * x * 1e-4));
    expect(ratio).toBeGreaterThan(milnor(x) * (1 - x * x * 2e-3));
    expect(kind).toBe('dome');
    expect(radiusMm).toBeCloseTo(x, 2);
    // The cap holds 360 (1 - cos x) degrees; the half of a ring that belongs to the border does not count.
    expect(heldDeg).toBeCloseTo(defectDeg, 6);
    expect(defectDeg / (360 * (1 - Math.cos(x)))).toBeCloseTo(1, 1);
  });

  it('comes nearer to it with the square of the sides', async () => {
    const x = rad(60);
    const misses = [];
    for (const rings of [8, 16, 32]) misses.push(Math.abs((await ofMesh(cap(x, rings))).ratio - milnor(x)));
    expect(misses[1]).toBeLessThan(misses[0] / 2);
    expect(misses[2]).toBeLessThan(misses[1] / 2);
  });

  it('is found on meshes without order', async () => {
    for (const [name, half] of [
      ['cap30-2k', 30],
      ['cap45-2k', 45],
      ['hemisphere-500', 90],
      ['hemisphere-2k', 90],
    ] as const) {
      const { ratio } = await ofMesh(referencePatch(name));
      const bound = milnor(rad(half));
      expect(ratio / bound).toBeLessThan(1.001);
      expect(ratio / bound).toBeGreaterThan(0.993);
    }
  });
});

describe('other shapes with a known figure', () => {
  it('developable ones ask for nothing', async () => {
    for (const name of ['cylinder120-500', 'frustum360-500', 'annulus-frustum-2k']) {
      expect(await ofMesh(referencePatch(name))).toMatchObject({
        ratio: 1,
        kind: 'flat',
        centreVertex: -1,
        centre: null,
        radiusMm: 0,
      });
    }
    const lone = await ofMesh(
      meshOf(
        [
          [0, 0, 0],
          [1, 0, 0],
          [0, 1, 0],
        ],
        [[0, 1, 2]],
      ),
    );
    expect(lone).toMatchObject({ ratio: 1, kind: 'flat', defectDeg: 0, domeDeg: 0, saddleDeg: 0 });
  });

  it('the tip of a cone asks for the full turn over what is there', async () => {
    for (const turn of [200, 300, 350]) {
      // A cone whose sides lie `turn` degrees round the tip when cut open: radius 1 along the side.
      const wide = turn / 360;
      const cone = polarDisc(12, (i, share) => [
        (i / 12) * wide * Math.cos(2 * Math.PI * share),
        (i / 12) * wide * Math.sin(2 * Math.PI * share),
        -(i / 12) * Math.sqrt(1 - wide * wide),
      ]);
      const { ratio, kind, defectDeg } = await ofMesh(cone);
      expect(kind).toBe('dome');
      expect(defectDeg).toBeGreaterThan(360 - turn - 1);
      expect(ratio / (360 / turn)).toBeGreaterThan(0.99);
      expect(ratio / (360 / turn)).toBeLessThan(1.02);
    }
  });

  it('a disc of constant curvature -1, between what is proven and what is reached', async () => {
    const away: Away = ([r, a], [s, b]) =>
      Math.acosh(Math.max(1, Math.cosh(r) * Math.cosh(s) - Math.sinh(r) * Math.sinh(s) * Math.cos(a - b)));
    for (const radius of [0.5, 1, 1.5]) {
      const { patch, rest } = abstractDisc(24, radius, away);
      const { ratio, kind, saddleDeg, heldDeg } = await ofPatch(patch, rest);
      // A disc of radius s has the area 2 pi (cosh s - 1); the proof uses the s with R / s = A(s) / (pi s²).
      const proven = crossing((s) => radius / s - (2 * (Math.cosh(s) - 1)) / (s * s), 1e-3, radius);
      const exact = crossing((s) => radius / s - Math.sinh(s) / s, 1e-3, radius);
      expect(kind).toBe('saddle');
      expect(ratio - 1).toBeGreaterThan(0.8 * (radius / proven - 1));
      expect(ratio).toBeLessThan(1.002 * (radius / exact));
      // Straight out from the middle at true length, rings become longer by this.
      expect(ratio).toBeLessThan(Math.sinh(radius) / radius);
      expect(saddleDeg / (360 * (Math.cosh(radius) - 1))).toBeCloseTo(1, 0);
      expect(heldDeg).toBeLessThan(0);
    }
  });
});

/** Where a falling function is 0. */
function crossing(f: (x: number) => number, low: number, high: number): number {
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (f(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

/** A rough disc of hills and saddles, its vertices moved about. */
function hills(seed: number): Mesh {
  const random = seededRandom(seed);
  const waves = Array.from({ length: 4 }, () => [
    random() * 4 - 2,
    random() * 4 - 2,
    random() * 6,
    (random() - 0.5) * 0.5,
  ]);
  return polarDisc(10, (i, share) => {
    const [r, turn] = [
      (i + (i > 0 && i < 10 ? (random() - 0.5) * 0.5 : 0)) / 10,
      2 * Math.PI * share + (random() - 0.5) * 0.04,
    ];
    const [x, y] = [r * Math.cos(turn), r * Math.sin(turn)];
    return [x, y, waves.reduce((z, [a, b, c, d]) => z + d * Math.sin(a * x + b * y + c), 0)];
  });
}

describe('no laying flat is better', () => {
  const reached = (flat: { major: Float64Array; minor: Float64Array }): number =>
    Math.max(...flat.major) / Math.min(...flat.minor);

  it('of the reference patches', async () => {
    for (const name of [
      'cap30-2k',
      'cap45-2k',
      'hemisphere-500',
      'mask-1k',
      'mask-collapsed-1k',
      'spot-flank',
      'annulus-frustum-2k',
    ]) {
      const mesh = referencePatch(name);
      const { ratio } = await ofMesh(mesh);
      expect(ratio).toBeLessThanOrEqual(reached(await flatten(mesh)));
    }
    expect((await ofMesh(referencePatch('mask-1k'))).ratio).toBeGreaterThan(1.3);
    expect((await ofMesh(referencePatch('spot-flank'))).ratio).toBeGreaterThan(2);
  });

  it('of rough hills', async () => {
    let found = 0;
    for (let seed = 1; seed <= 25; seed += 1) {
      const mesh = hills(seed);
      const { ratio } = await ofMesh(mesh);
      const flat = await flatten(mesh);
      expect(flat.flipped).toBe(0);
      expect(ratio).toBeLessThanOrEqual(reached(flat));
      if (ratio > 1) found += 1;
    }
    expect(found).toBeGreaterThan(15);
  });

  it.each(IS_LONG ? ['helm', 'shoulder-plate'] : ['shoulder-plate'])('of the pieces of %s', async (name) => {
    const { cut, flats } = await runSample(name);
    for (const [i, patch] of (cut?.patches ?? []).entries()) {
      const flat = flats?.[i];
      if (flat === null || flat === undefined || cut === null) continue;
      const { ratio } = await ofPatch(patch, restShapes(patch, cut.shell.neutralPositions));
      expect(ratio).toBeLessThanOrEqual(reached(flat) * (1 + 1e-9));
    }
  });
});

describe('the same shape', () => {
  it('asks for the same however it lies, is scaled, mirrored or numbered', async () => {
    const mesh = hills(3);
    const count = mesh.positions.length / 3;
    const plain = await ofMesh(mesh);
    expect(plain.ratio).toBeGreaterThan(1.001);
    const at = (v: number): [number, number, number] => [
      mesh.positions[3 * v],
      mesh.positions[3 * v + 1],
      mesh.positions[3 * v + 2],
    ];
    const faces = Array.from({ length: mesh.triangles.length / 3 }, (_, t) => [
      ...mesh.triangles.subarray(3 * t, 3 * t + 3),
    ]);
    const points = Array.from({ length: count }, (_, v) => at(v));
    const turned = meshOf(
      points.map(([x, y, z]) => [7 + 25.4 * z, -25.4 * y, 25.4 * x - 3]),
      faces,
    );
    const mirrored = meshOf(
      points.map(([x, y, z]) => [-x, y, z]),
      faces.map(([a, b, c]) => [a, c, b]),
    );
    const renumbered = meshOf(
      points.toReversed(),
      faces.toReversed().map(([a, b, c]) => [count - 1 - b, count - 1 - c, count - 1 - a]),
    );
    for (const [other, scale] of [
      [turned, 25.4],
      [mirrored, 1],
      [renumbered, 1],
    ] as const) {
      const found = await ofMesh(other);
      expect(found.ratio).toBeCloseTo(plain.ratio, 9);
      expect(found.kind).toBe(plain.kind);
      expect(found.radiusMm / scale).toBeCloseTo(plain.radiusMm, 9);
      expect(found.defectDeg).toBeCloseTo(plain.defectDeg, 9);
      expect(found.heldDeg).toBeCloseTo(plain.heldDeg, 9);
    }
    expect((await ofMesh(renumbered)).centre).toEqual(plain.centre);
  });
});
