import { describe, expect, it } from 'vitest';
import { ringArea } from '../../../src/geom/ring.ts';
import type { Outcome } from '../../../src/pipeline/outcome.ts';
import { reportOf } from '../../../src/pipeline/write-files.ts';
import { setTipHole } from '../../../src/project/tip-commands.ts';
import { newProject } from '../../../src/project/new-project.ts';
import { onPaper, pieceStrokes } from '../../../src/steps/foam/template-lines.ts';
import type { Solid } from '../../reference/handbook/polygon-solids.ts';
import { outcomeOf } from '../../support/run-solid.ts';

/**
 * A plate of three by two squares, slit from its lower edge to its middle.
 *
 *   8 - 9 - 10 - 11     y 60
 *   4 - 5 -  6 -  7     y 30
 *   0 - 1 -  2 -  3     y 0
 */
const SLIT: Solid = {
  corners: [0, 30, 60].flatMap((y) => [0, 40, 80, 120].map((x): [number, number, number] => [x, y, 0])),
  faces: [0, 4].flatMap((row) => [0, 1, 2].map((i) => [row + i, row + i + 1, row + i + 5, row + i + 4])),
  seams: [[2, 6]],
};
const holed = (...holes: { corner: number; diameterMm: number }[]): Promise<Outcome> =>
  outcomeOf(SLIT, (part) => ({ ...part, tipHoles: holes }));

describe('a round hole at the end of a dart', () => {
  it('lies where the dart ends, round and in its size', async () => {
    const outcome = await holed({ corner: 6, diameterMm: 5 });
    const [piece] = outcome.pieces ?? [];
    expect(piece.tipHoles).toHaveLength(1);
    const [hole] = piece.tipHoles ?? [];
    const tip = outcome.cut?.patches[0].meshVertices.indexOf(6) ?? -1;
    expect([hole.at.x, hole.at.y]).toEqual([piece.uv[2 * tip], piece.uv[2 * tip + 1]]);
    const [stroke] = pieceStrokes(onPaper(piece)).filter(({ role }) => role === 'hole');
    expect(ringArea(stroke.points) / (Math.PI * 2.5 ** 2)).toBeCloseTo(1, 2);
    const report = JSON.parse(reportOf(outcome)) as { pieces: { tipHoles?: unknown }[] };
    expect(report.pieces[0].tipHoles).toEqual([{ corner: 6, diameterMm: 5, at: [hole.at.x, hole.at.y] }]);
    // What is printed has changed, and so has its code.
    expect(piece.revision).not.toBe((await holed()).pieces?.[0].revision);
  });

  it('is left out and told where no dart ends', async () => {
    const outcome = await holed(
      { corner: 5, diameterMm: 5 },
      { corner: 2, diameterMm: 5 },
      { corner: 99, diameterMm: 5 },
    );
    expect(outcome.pieces?.[0].tipHoles).toBeUndefined();
    const found = outcome.findings.filter(({ code }) => code === 'foam/tip-lost');
    expect(found.map(({ value, where }) => [value, where.vertices])).toEqual([[3, [5, 2]]]);
  });
});

describe('setTipHole', () => {
  const project = newProject('x', { hash: 'x', fileName: 'x.obj', format: 'obj' });
  const holes = (p: typeof project) => p.parts[0].tipHoles;

  it('makes, changes and takes away one hole at a corner', () => {
    const one = setTipHole(6, 4).apply(project);
    expect(holes(one)).toEqual([{ corner: 6, diameterMm: 4 }]);
    expect(setTipHole(6, 4).apply(one)).toBe(one);
    expect(holes(setTipHole(6, 5).apply(one))).toEqual([{ corner: 6, diameterMm: 5 }]);
    expect(holes(setTipHole(7, 5).apply(one))).toHaveLength(2);
    expect('tipHoles' in setTipHole(6, null).apply(one).parts[0]).toBe(false);
    expect(setTipHole(6, null).apply(project)).toBe(project);
  });
});
