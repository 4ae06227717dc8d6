import { describe, expect, it } from 'vitest';
import type { FoamPiece } from '../../../src/model/foam-piece.ts';
import { sawSettings, SAME_SETTING_DEG } from '../../../src/steps/foam/saw-settings.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, tubeMesh } from '../../support/meshes.ts';
import { BOX_EDGES, columnEdges, foamOf, partedAlong } from './support.ts';

const LIMIT_DEG = 45;

const edgesOf = (...bevels: readonly (readonly number[])[]): { bevelDeg: Float64Array }[] =>
  bevels.map((list) => ({ bevelDeg: Float64Array.from(list) }));

/** A piece's settings in short: angle and letters, open edges as a dash. */
const inShort = ({ saw, edges }: FoamPiece): string =>
  [
    ...(saw?.settings ?? []).map(
      ({ bevelDeg, edges: list }) => `${bevelDeg.toFixed(3)} x${list.filter((i) => edges[i].letter !== '').length}`,
    ),
    ...(saw?.byHand ?? []).map(({ edge, why }) => `${edges[edge].letter} by hand, ${why}`),
  ].join('; ');

describe('settings of the saw', () => {
  it('cut a box of six panels at one angle of 45 degrees', () => {
    const { pieces } = foamOf(partedAlong(boxMesh(100), BOX_EDGES));
    expect(pieces.map(inShort)).toEqual(Array.from({ length: 6 }, () => '45.000 x4'));
  });

  // A regular tube of n sides turns by 360 / n at each edge, half of it on each side of the seam. Each panel of it has two open ends, cut square.
  it.each([
    { sides: 4, angle: '45.000' },
    { sides: 6, angle: '30.000' },
    { sides: 8, angle: '22.500' },
  ])(
    'cut the panels of a tube of $sides sides square at the ends and at $angle along the seams',
    ({ sides, angle }) => {
      const cuts = Array.from({ length: sides }, (_, i) => columnEdges(sides, i, 1)).flat();
      const { pieces } = foamOf(partedAlong(tubeMesh(sides, 60, 90), cuts));
      expect(pieces.map(inShort)).toEqual(Array.from({ length: sides }, () => `0.000 x0; ${angle} x2`));
    },
  );

  it('serve edges a degree either side of the common angle, and no more', () => {
    // 28.9 and 30.9 have 29.9 between them, a degree from both; 31.0 is out of its reach.
    const { settings, byHand } = sawSettings(edgesOf([30.9, 30.9], [28.9, 28.9], [31, 31]), LIMIT_DEG);
    expect(byHand).toEqual([]);
    expect(settings.map(({ bevelDeg }) => bevelDeg)).toEqual([expect.closeTo(29.9, 9), expect.closeTo(31, 9)]);
    expect(settings.map(({ edges }) => edges)).toEqual([[0, 1], [2]]);
  });

  it('keep what leans in apart from what leans out, and begin at square', () => {
    const { settings } = sawSettings(edgesOf([-30, -30], [30, 30], [0.6, -0.9], [12, 13]), LIMIT_DEG);
    expect(settings).toEqual([
      { bevelDeg: 0, edges: [2] },
      { bevelDeg: 12.5, edges: [3] },
      { bevelDeg: 30, edges: [1] },
      { bevelDeg: -30, edges: [0] },
    ]);
  });

  it('leave to the hand what changes by more than two degrees, what leans over to the other side and what no blade reaches', () => {
    const { settings, byHand } = sawSettings(
      edgesOf([10, 14, 12.5], [-0.8, 1.1], [50, 50], [45 + 1e-8, 45]),
      LIMIT_DEG,
    );
    expect(settings.map(({ edges }) => edges)).toEqual([[3]]);
    expect(byHand).toEqual([
      { edge: 0, fromDeg: 10, toDeg: 12.5, leastDeg: 10, mostDeg: 14, why: 'changes' },
      { edge: 1, fromDeg: -0.8, toDeg: 1.1, leastDeg: -0.8, mostDeg: 1.1, why: 'changes' },
      { edge: 2, fromDeg: 50, toDeg: 50, leastDeg: 50, mostDeg: 50, why: 'steep' },
    ]);
  });

  it('serve every edge once, within reach, and need no setting that could be spared', async () => {
    await forAll(
      (rand) =>
        Array.from({ length: 1 + Math.floor(8 * rand()) }, () => {
          const lean = 1.5 + 12 * rand();
          return [lean, lean + 2.5 * rand(), lean + 1.2 * rand()];
        }),
      (bevels) => {
        const { settings, byHand } = sawSettings(edgesOf(...bevels), LIMIT_DEG);
        const told = [...settings.flatMap(({ edges }) => edges), ...byHand.map(({ edge }) => edge)];
        expect(told.sort((a, b) => a - b)).toEqual(bevels.map((_, i) => i));
        for (const { bevelDeg, edges } of settings)
          for (const i of edges)
            for (const bevel of bevels[i])
              expect(Math.abs(bevel - bevelDeg)).toBeLessThanOrEqual(SAME_SETTING_DEG + 1e-6);
        // Edges of which no two can share a setting need one each; the flattest reach of each setting is such a set.
        const steady = bevels.filter((list) => Math.max(...list) - Math.min(...list) <= 2);
        const reaches = steady.map((list) => ({ from: Math.max(...list) - 1, to: Math.min(...list) + 1 }));
        let needed = 0;
        let reached = -Infinity;
        for (const { from, to } of reaches.sort((a, b) => a.to - b.to)) {
          if (from <= reached) continue;
          needed += 1;
          reached = to;
        }
        expect(settings.length).toBe(needed);
      },
    );
  });
});
