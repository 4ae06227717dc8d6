import { describe, expect, it } from 'vitest';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { expectHonest } from '../reference/expect-honest.ts';
import { penetrationMm, type Point } from '../reference/plate-overlap.ts';
import { runChain, type ChainOutput } from '../reference/run-chain.ts';
import { forAll } from '../support/for-all.ts';
import { IS_LONG } from '../support/long.ts';

/** Foam gives this much, mm. */
const FREE_MM = 0.05;

const REACH_MM = 120;

/** Triangles round one corner of the sculpt, each a piece of its own. */
interface Fan {
  readonly thicknessMm: number;
  readonly rim: readonly Point[];
}

/** Folds in and out by chance, so that hardly one corner is convex. */
function randomFan(rand: () => number): Fan {
  const count = 4 + Math.floor(5 * rand());
  const rim = Array.from({ length: count }, (_, i): Point => {
    const turn = (2 * Math.PI * (i + 0.5 * (rand() - 0.5))) / count;
    return [REACH_MM * Math.cos(turn), REACH_MM * Math.sin(turn), 1.2 * REACH_MM * (rand() - 0.5)];
  });
  return { thicknessMm: rand() < 0.5 ? 6 : 10, rim };
}

const runFan = async (fan: Fan): Promise<Outcome> => (await makeFan(fan)).made.outcome;

/** @param facets  of each piece. */
async function makeFan({ thicknessMm, rim }: Fan, facets = 1): Promise<{ bytes: Uint8Array; made: ChainOutput }> {
  const points: readonly Point[] = [[0, 0, 0], ...rim];
  const lines = [
    ...points.map((p) => `v ${p.join(' ')}`),
    ...rim.map((_, i) => `f 1 ${i + 2} ${((i + 1) % rim.length) + 2}`),
  ];
  const bytes = new TextEncoder().encode(lines.join('\n'));
  const made = await runChain({
    fileName: 'fan.obj',
    bytes,
    seams: rim.flatMap((_, i): [number, number][] => (i % facets === 0 ? [[0, i + 1]] : [])),
    scale: { by: 'unit', unit: 'mm' },
    thicknessMm,
    modelIs: 'face',
    neutralFraction: 0.5,
  });
  return { bytes, made };
}

/** Corners of a flat piece's face and back, put where the neutral surface has it. */
function plateOf({ cut }: Outcome, { patch, uv, outline, otherOutline, tracedSide, thicknessMm }: FoamPiece): Point[] {
  if (cut === null || tracedSide !== 'face') throw new Error('nothing was cut, or from the back');
  const { meshVertices } = cut.patches[patch];
  const at = (i: number): Point => {
    const [x, y, z] = cut.shells[patch].neutralPositions.subarray(3 * meshVertices[i], 3 * meshVertices[i] + 3);
    return [x, y, z];
  };
  const [o, p, q] = [at(0), at(1), at(2)];
  const [u, v] = [p, q].map((end) => end.map((c, k) => c - o[k]));
  const [a, b] = [1, 2].map((i) => [uv[2 * i] - uv[0], uv[2 * i + 1] - uv[1]]);
  const det = a[0] * b[1] - a[1] * b[0];
  const x = u.map((c, k) => (c * b[1] - v[k] * a[1]) / det);
  const y = v.map((c, k) => (c * a[0] - u[k] * b[0]) / det);
  const normal = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
  const skin = (ring: Float64Array, height: number): Point[] =>
    Array.from({ length: ring.length / 2 }, (_, i): Point => {
      const [s, t] = [ring[2 * i] - uv[0], ring[2 * i + 1] - uv[1]];
      const [px, py, pz] = [0, 1, 2].map((k) => o[k] + s * x[k] + t * y[k] + height * normal[k]);
      return [px, py, pz];
    });
  return [...skin(outline, thicknessMm / 2), ...skin(otherOutline, -thicknessMm / 2)];
}

/** Corners that only fold out, or only in, are shared out plane by plane; the plates of such stand beside their neutral surface. */
function isSaddle({ pieces }: Outcome): boolean {
  const bevels = (pieces ?? []).flatMap(({ edges }) => edges.map(({ bevelDeg }) => bevelDeg[0]));
  return Math.max(...bevels) > 0 && Math.min(...bevels) < 0;
}

/** The deepest that two pieces without a common seam run into each other. */
function deepestMm(outcome: Outcome): number {
  const pieces = outcome.pieces ?? [];
  let deepest = 0;
  for (const [i, a] of pieces.entries()) {
    for (const b of pieces.slice(i + 1)) {
      const own = new Set(a.edges.map(({ seam }) => seam));
      if (b.edges.some(({ seam }) => own.has(seam))) continue;
      deepest = Math.max(deepest, penetrationMm(plateOf(outcome, a), plateOf(outcome, b)));
    }
  }
  return deepest;
}

describe('the depth of two bodies in each other', () => {
  const box = (x: number, turn: number): Point[] =>
    [0, 1, 2, 3, 4, 5, 6, 7].map((i): Point => {
      const [p, q] = [(i & 1) - 0.5, ((i >> 1) & 1) - 0.5];
      return [x + p * Math.cos(turn) - q * Math.sin(turn), p * Math.sin(turn) + q * Math.cos(turn), i >> 2];
    });

  it('is that of cubes side by side, and of one that comes with its edge', () => {
    expect(penetrationMm(box(0, 0), box(0.9, 0))).toBeCloseTo(0.1, 12);
    expect(penetrationMm(box(0, 0), box(1.5, 0))).toBeCloseTo(-0.5, 12);
    expect(penetrationMm(box(0, 0), box(1, Math.PI / 4))).toBeCloseTo(Math.SQRT1_2 - 0.5, 12);
  });
});

describe('corners where pieces meet that share no seam', () => {
  it('are cut back until none is in the way of another, whatever folds in and out there', async () => {
    const runs = IS_LONG ? 40 : 6;
    let cuts = 0;
    await forAll(
      randomFan,
      async (fan) => {
        const outcome = await runFan(fan);
        const [worst] = outcome.dryFit?.corners ?? [];
        expect(worst?.overlapMm ?? 0).toBeLessThan(FREE_MM);
        if (!isSaddle(outcome)) return;
        expect(deepestMm(outcome)).toBeLessThan(FREE_MM);
        cuts += (outcome.pieces ?? []).flatMap(({ cornerCuts = [] }) => cornerCuts).length;
      },
      { runs },
    );
    expect(cuts).toBeGreaterThan(runs);
  });

  it('are told on paper, in the report and by a finding, with what may stay open', async () => {
    const rim = [120, 30, -130, -60, 10].map((x, i): Point => [
      x,
      [10, 110, 40, -100, -120][i],
      i % 2 === 0 ? 50 : -45,
    ]);
    const { bytes, made } = await makeFan({ thicknessMm: 10, rim });
    const { outcome, report, reportText } = made;
    expectHonest(bytes, report);
    const cut = (outcome.pieces ?? []).filter(({ cornerCuts }) => cornerCuts !== undefined);
    expect(cut.length).toBeGreaterThan(0);
    const [{ cornerCuts: [{ cutMm, wideMm }] = [] }] = cut;
    const words = outcome.templates?.find(({ piece }) => piece === cut[0].id)?.drawing.words.map(({ text }) => text);
    expect(words?.join(' ')).toContain(`corner cut back ${Math.round(10 * cutMm) / 10} mm`);
    const told = JSON.parse(reportText) as {
      pieces: { id: string; cornerCuts?: unknown }[];
      dryFit: { corners: unknown };
    };
    expect(told.pieces.find(({ id }) => id === cut[0].id)?.cornerCuts).toEqual([{ corner: 0, cutMm, wideMm }]);
    expect(told.dryFit.corners).toHaveLength(outcome.dryFit?.corners.length ?? -1);
    const finding = outcome.findings.find(({ code }) => code === 'foam/corner-cut');
    expect(finding?.value).toBeCloseTo(
      Math.max(...cut.flatMap(({ cornerCuts = [] }) => cornerCuts.map((c) => c.cutMm))),
      9,
    );
    expect(finding?.text).toContain('fill what stays open there');
  });

  it('are cut alike on all gores of a cone, by as many thicknesses in any foam', async () => {
    const cuts = await Promise.all([6, 10].map(gores));
    for (const [own, thicknessMm] of [[cuts[0], 6] as const, [cuts[1], 10] as const]) {
      expect(own).toHaveLength(6);
      // All lengths at an apex go with the thickness.
      for (const cutMm of own) expect(cutMm / thicknessMm).toBeCloseTo(cuts[0][0] / 6, 6);
    }
    expect(cuts[0][0]).toBeGreaterThan(1);
  });
});

/** What is cut off the tips of six gores of a cone of 80 mm radius and 60 mm height, each of four facets and rolled. */
async function gores(thicknessMm: number): Promise<readonly number[]> {
  const rim = Array.from({ length: 24 }, (_, i): Point => {
    const turn = (Math.PI * i) / 12;
    return [80 * Math.cos(turn), 80 * Math.sin(turn), -60];
  });
  const { outcome } = (await makeFan({ thicknessMm, rim }, 4)).made;
  expect(outcome.dryFit?.corners).toEqual([]);
  for (const { worstGapMm, worstOverlapMm } of outcome.dryFit?.perSeam ?? [])
    expect(Math.max(worstGapMm, worstOverlapMm)).toBeLessThan(1e-3);
  return (outcome.pieces ?? []).flatMap(({ cornerCuts = [] }) => cornerCuts.map(({ cutMm }) => cutMm));
}
