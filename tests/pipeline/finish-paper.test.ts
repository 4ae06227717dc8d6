import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { textWidthMm } from '../../src/geom/text-width.ts';
import type { Words } from '../../src/model/template.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { shopPaperSteps, type ShopPaper } from '../../src/pipeline/shop-files.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import type { Command } from '../../src/project/commands.ts';
import {
  addColour,
  clayRegion,
  newColour,
  paintFaces,
  setBaseColour,
  setColour,
} from '../../src/project/finish-commands.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { outcomeWith } from '../support/outcome-with.ts';
import { outcomeOf, block } from '../support/run-solid.ts';

const schemaOf = (name: string): Schema => JSON.parse(readFileSync(`shared/${name}.schema.json`, 'utf8')) as Schema;

/** Words on a page that lie over one another. */
function collisions(words: readonly Words[]): readonly string[] {
  const boxes = words.map(({ text, at, heightMm, align }) => {
    const left = at.x - textWidthMm(text, heightMm) * { left: 0, centre: 0.5, right: 1 }[align];
    return { text, left, right: left + textWidthMm(text, heightMm), bottom: at.y, top: at.y + heightMm };
  });
  return boxes.flatMap((a, i) =>
    boxes
      .slice(0, i)
      .filter((b) => a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top)
      .map((b) => `${a.text} | ${b.text}`),
  );
}

/** A closed box of six pieces; the first face is its bottom, the second its top. */
const BOX = block([0, 0, 0], [120, 90, 60]);

describe('finishing on the build sheet', () => {
  let outcome: Outcome;
  let painted: Outcome;
  let paper: ShopPaper;
  let words: readonly string[];
  beforeAll(async () => {
    outcome = await outcomeOf(BOX);
    const commands: readonly Command[] = [
      addColour(newColour('Lamp black', '#1d1d1f')),
      addColour(newColour('Brass', '#b58a3c')),
      addColour(newColour('Bone', '#e8dcc0')),
      setColour('colour-2', { coverageM2PerL: 4.5, cautions: ['paint'] }),
      setBaseColour('colour-1'),
      paintFaces('Lid', [1], 'colour-2'),
      paintFaces('Side', [4], 'colour-3'),
      clayRegion('area-2', 8),
    ];
    const project = commands.reduce((changed, command) => command.apply(changed), outcome.project);
    painted = outcomeWith(outcome, project);
    paper = expectOk(runAtOnce(shopPaperSteps(painted, '2026-11-27')));
    words = paper.pages.flatMap(({ drawing }) => drawing.words.map(({ text }) => text));
  });

  it('keeps words and lines clear of each other and on the paper', () => {
    for (const { drawing, widthMm, heightMm } of paper.pages) {
      expect(collisions(drawing.words)).toEqual([]);
      for (const { points } of drawing.strokes)
        points.forEach((x, i) => {
          expect(x).toBeGreaterThan(9);
          expect(x).toBeLessThan((i % 2 === 0 ? widthMm : heightMm) - 9);
        });
    }
  });

  it('names every colour, whose figures they are, and what comes before a step of gluing', () => {
    const told = words.join(' ');
    for (const text of [
      'Finishing',
      'Lamp black, the base',
      'your label',
      'as usual',
      'on paper',
      '108\u00a0cm²',
      'Painted beforehand:',
    ])
      expect(told).toContain(text);
    // A section of finishing tells all coats: they are not told a second time.
    expect(told).not.toContain('until it is worn');
    const { finish, gluing } = paper.plan;
    // Lid and side meet, but not before they are glued: there is no border to tape between them.
    const loose = finish.plan.steps.filter(({ work, beforeStep }) => work === 'colour' && beforeStep !== null);
    expect(loose.map(({ name, tapeMm }) => [name, tapeMm]).sort()).toEqual([
      ['Bone', 0],
      ['Brass', 0],
    ]);
    for (const { beforeStep } of finish.plan.steps)
      if (beforeStep !== null) expect(gluing.steps[beforeStep - 1]).toBeDefined();
  });

  it('puts each caution under the step that needs it and no other', () => {
    const at = (begin: string): readonly number[] => words.flatMap((text, i) => (text.startsWith(begin) ? [i] : []));
    const [brass] = at(`${paper.plan.finish.plan.steps.find(({ name }) => name === 'Brass')?.number}. Brass on`);
    const spray = at('Spray paint:');
    expect(spray).toHaveLength(1);
    const after = words.slice(brass + 1).findIndex((text) => /^\d+\. /.test(text) || text === 'Afterwards');
    expect(spray[0]).toBeGreaterThan(brass);
    expect(spray[0]).toBeLessThan(brass + 1 + after);
  });

  it('tells colours apart by hatching, the base by none', () => {
    const strokes = paper.pages.flatMap(({ drawing }) => drawing.strokes.filter(({ role }) => role === 'map'));
    const angles = new Map<number, number>();
    for (const { points, closed } of strokes) {
      if (closed || points.length !== 4) continue;
      const deg = Math.round((Math.atan2(points[3] - points[1], points[2] - points[0]) * 180) / Math.PI);
      angles.set(deg, (angles.get(deg) ?? 0) + 1);
    }
    // Brass leans one way; bone is crossed. The first hatching is the base's own and is not used alone.
    expect(angles.get(-45)).toBeGreaterThan(20);
    expect(angles.get(45)).toBeGreaterThan(10);
    expect(angles.get(-45)).toBeGreaterThan(angles.get(45) ?? 0);
  });

  it('stands in the reports as their schemas say', () => {
    const report = JSON.parse(reportOf(painted)) as { finish: { colours: { areaMm2: number }[]; clay: unknown[] } };
    expect(schemaFaults(schemaOf('report'), report)).toEqual([]);
    expect(report.finish.colours.map(({ areaMm2 }) => Math.round(areaMm2))).toEqual([
      10800 + 2 * 7200 + 5400,
      10800,
      5400,
    ]);
    expect(report.finish.clay).toHaveLength(1);
    expect(JSON.parse(reportOf(outcome))).not.toHaveProperty('finish');
  });
});
