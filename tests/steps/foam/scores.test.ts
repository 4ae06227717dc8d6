import { describe, expect, it } from 'vitest';
import { onPaper, pieceStrokes } from '../../../src/steps/foam/template-lines.ts';
import { makingLines } from '../../../src/steps/foam/template-words.ts';
import { outcomeOf } from '../../support/run-solid.ts';
import type { ScoredLine } from '../../../src/model/score.ts';
import { reportOf } from '../../../src/pipeline/write-files.ts';
import type { Outcome } from '../../../src/pipeline/outcome.ts';
import type { Solid } from '../../reference/handbook/polygon-solids.ts';
import { inSheets } from '../../support/run-solid.ts';

/**
 * A plate of three columns of 40 x 60 mm, each of two squares; seam between the first and the second.
 *
 *   8 - 9 - 10 - 11     y 60
 *   4 - 5 -  6 -  7     y 30
 *   0 - 1 -  2 -  3     y 0
 */
const PLATE: Solid = {
  corners: [0, 30, 60].flatMap((y) => [0, 40, 80, 120].map((x): [number, number, number] => [x, y, 0])),
  faces: [0, 4].flatMap((row) => [0, 1, 2].map((i) => [row + i, row + i + 1, row + i + 5, row + i + 4])),
  seams: [
    [1, 5],
    [5, 9],
  ],
};

const LINE: ScoredLine = {
  id: 'score-1',
  edges: [
    [2, 6],
    [10, 6],
  ],
  depthMm: 3,
  openMm: 1.5,
};
const scored = (lines: readonly ScoredLine[], ...sheets: number[]): Promise<Outcome> =>
  outcomeOf(PLATE, (part) => ({ ...inSheets(part, ...(sheets.length === 0 ? [6] : sheets)), scores: lines }));

const codes = ({ findings }: Outcome): string[] =>
  findings.map(({ code, severity }) => `${severity} ${code}`).filter((code) => code.includes('score'));

describe('scored lines', () => {
  it('lie on the piece they run over, as long as on the sculpt and 40 mm from the seam, as one line', async () => {
    // Edges that run on from each other are one line whichever way round the second is named in the file.
    const line = { ...LINE, edges: [[2, 6] as const, [6, 10] as const] };
    const outcome = await scored([line]);
    const [small, large] = [...(outcome.pieces ?? [])].sort((a, b) => a.areaMm2 - b.areaMm2);
    expect(small.scores).toBeUndefined();
    expect(large.scores?.length).toBe(1);
    const points = large.scores?.[0].points ?? new Float64Array();
    expect(points.length).toBe(6);
    const [dx, dy] = [points[4] - points[0], points[5] - points[1]];
    expect(Math.hypot(dx, dy)).toBeCloseTo(60, 9);
    // Every corner of the piece (80 x 60) is 40 mm from the line.
    for (let i = 0; i < large.outline.length; i += 2) {
      const [x, y] = [large.outline[i] - points[0], large.outline[i + 1] - points[1]];
      const aside = Math.abs(dx * y - dy * x) / 60;
      expect(Math.min(Math.abs(aside - 40), aside)).toBeLessThan(1e-9);
    }
    expect(codes(outcome)).toEqual([]);
  });

  it('are drawn and told on the template, mirrored where it is traced on the back, and change its code', async () => {
    const [with1, without] = [await scored([LINE]), await scored([])];
    const pieceOf = ({ pieces }: Outcome) => [...(pieces ?? [])].sort((a, b) => b.areaMm2 - a.areaMm2)[0];
    const piece = pieceOf(with1);
    const strokes = pieceStrokes(onPaper(piece)).filter(({ role }) => role === 'score');
    expect(strokes.map(({ points }) => [...points])).toEqual(piece.scores?.map(({ points }) => [...points]));
    const back = pieceStrokes(onPaper({ ...piece, tracedSide: 'back' })).filter(({ role }) => role === 'score');
    expect(back[0].points[0]).toBe(-strokes[0].points[0]);
    expect(makingLines(piece)).toContain('score the face 3 mm deep, opens to 1.5 mm when warmed');
    expect(makingLines(pieceOf(without)).join()).not.toContain('score');
    expect(piece.revision).not.toBe(pieceOf(without).revision);
    const report = JSON.parse(reportOf(with1)) as { pieces: { scores?: { line: string; pointsMm: number[][] }[] }[] };
    const told = report.pieces.flatMap(({ scores = [] }) => scores);
    expect(told.map(({ line, pointsMm }) => [line, pointsMm.length])).toEqual([
      ['score-1', 2],
      ['score-1', 2],
    ]);
  });

  it('are cut into the outermost sheet alone', async () => {
    const { layers } = await scored([LINE], 6, 10);
    expect(layers.map(({ pieces }) => pieces?.filter(({ scores }) => scores !== undefined).length)).toEqual([1, 0]);
  });

  it.each([
    [4.9, []],
    [5.1, ['warning foam/score-deep']],
    [6, ['error foam/score-deep']],
  ])('%d mm deep in 6 mm of foam, of which 1 mm must be left', async (depthMm, told) => {
    expect(codes(await scored([{ ...LINE, depthMm }]))).toEqual(told);
  });

  it('are told where the foam is cut through anyway, and where the sculpt has no such edge', async () => {
    const outcome = await scored([
      { ...LINE, edges: [[1, 5]] },
      { ...LINE, id: 'score-2', edges: [[0, 11]] },
      {
        ...LINE,
        id: 'score-3',
        edges: [
          [2, 6],
          [2, 3],
          [999, 2],
        ],
      },
    ]);
    expect(codes(outcome)).toEqual(Array.from({ length: 3 }, () => 'warning foam/score-lost'));
    const [first, , third] = outcome.findings.filter(({ code }) => code === 'foam/score-lost');
    expect(first.text).toMatch(/^A scored line lies along seams/);
    expect(third.text).toMatch(/^Part of a scored line \(2 of 3 edges\)/);
  });
});
