import { beforeAll, describe, expect, it } from 'vitest';
import { runAtOnce } from '../../src/base/stepwise.ts';
import type { Page } from '../../src/model/page.ts';
import { shopPaperSteps } from '../../src/pipeline/shop-files.ts';
import { sayOf } from '../../src/pipeline/paper-say.ts';
import { setLengthUnit } from '../../src/project/commands.ts';
import { expectOk } from '../support/expect-ok.ts';
import { makeSample, type MadeSample } from '../support/run-sample.ts';

/** What keeps its millimetres: foam by the name it is sold by. */
const SOLD =
  /\d+(?:\.\d+)? mm (?:foam|EVA)|EVA \d+(?:\.\d+)? mm|foam of \d+(?:\.\d+)? mm|layers of [\d.]+ mm|^\d+ mm$/g;

const linesOf = (pages: readonly Page[]): readonly string[] =>
  pages.flatMap(({ drawing }) => drawing.words.map(({ text }) => text.replaceAll('\u00a0', ' ')));

describe('the paper of a job in inches', () => {
  let made: MadeSample;
  let sheet: readonly Page[];
  beforeAll(async () => {
    made = await makeSample('maul-head', setLengthUnit('in').apply);
    sheet = expectOk(runAtOnce(shopPaperSteps(made.outcome, '2026-01-01'))).pages;
  });

  it('tells lengths in inches, and in mm only what is sold or measured by them', () => {
    // On the first page stands the square of 100 mm that is measured.
    const beside = (made.outcome.paper?.pages ?? []).filter(({ kind }) => kind !== 'scale');
    const lines = linesOf([...beside, ...sheet]);
    const left = lines.filter((line) => /\dc?m[m²]?\b|\bmm\b|cm²/.test(line.replace(SOLD, '')));
    expect([...new Set(left)]).toEqual([]);
    expect(lines.some((line) => /\d \d+\/(?:2|4|8|16) in\b/.test(line))).toBe(true);
    expect(lines).toContain('EVA 6 mm, 1000 × 2000');
  });

  it('has rules of 4 in, 101.6 mm, on each page of templates', () => {
    const tiles = (made.outcome.paper?.pages ?? []).filter(({ kind }) => kind === 'tile');
    expect(tiles.length).toBeGreaterThan(0);
    for (const { drawing } of tiles) {
      expect(drawing.words.map(({ text }) => text)).toContain('4 in both ways');
      // Four inches of 25.4 mm, exact by definition.
      const level = drawing.strokes.filter(
        ({ role, points: [x1, y1, x2, y2] }) => role === 'ruler' && y1 === y2 && Math.abs(x2 - x1 - 101.6) < 1e-9,
      );
      expect(level).toHaveLength(1);
    }
  });

  it('keeps within the paper', () => {
    const right = (made.outcome.paper?.pages[0]?.widthMm ?? 0) + 1e-6;
    for (const { drawing } of [...(made.outcome.paper?.pages ?? []), ...sheet])
      for (const { at } of drawing.words) expect(at.x).toBeLessThan(right);
  });

  it('speaks one way for one job, and as ever in mm', () => {
    const { project } = made.outcome;
    expect(sayOf(project)).toBe(sayOf({ ...project }));
    const say = sayOf(setLengthUnit('mm').apply(project));
    expect(say('lap 12.7 mm, on top')).toBe('lap 12.7 mm, on top');
  });
});
