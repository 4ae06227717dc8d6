import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { toldOf, verdictSentence, weighed } from '../../src/base/verdict.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { textWidthMm } from '../../src/geom/text-width.ts';
import type { Words } from '../../src/model/template.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { shopPaperSteps, writeShopFiles, type ShopPaper } from '../../src/pipeline/shop-files.ts';
import { namesOfOrder, orderFindingSteps } from '../../src/pipeline/shop-order.ts';
import { shopPlanSteps } from '../../src/pipeline/shop-plan.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { acceptGluing, movedInOrder } from '../../src/project/shop-commands.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { outcomeWith } from '../support/outcome-with.ts';
import { readPdf } from '../support/read-pdf.ts';
import { runSample, SAMPLE_NAMES, testFont } from '../support/run-sample.ts';

const REPORT = JSON.parse(readFileSync('shared/report.schema.json', 'utf8')) as Schema;
const SCHEMA = JSON.parse(readFileSync('shared/gluing.schema.json', 'utf8')) as Schema;

/** Boxes of words on a page that lie over one another. */
function collisions(words: readonly Words[]): readonly string[] {
  const boxes = words.map(({ text, at, heightMm, align }) => {
    const width = textWidthMm(text, heightMm);
    const left = at.x - width * { left: 0, centre: 0.5, right: 1 }[align];
    return { text, left, right: left + width, bottom: at.y, top: at.y + heightMm };
  });
  return boxes.flatMap((a, i) =>
    boxes
      .slice(0, i)
      .filter((b) => a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top)
      .map((b) => `${a.text} | ${b.text}`),
  );
}

describe.each(SAMPLE_NAMES)('the build sheet of %s', (name) => {
  let outcome: Outcome;
  let paper: ShopPaper;
  beforeAll(async () => {
    outcome = await runSample(name);
    paper = expectOk(runAtOnce(shopPaperSteps(outcome, '2026-11-27')));
  });

  it('names every piece in its list and every seam in a step, once', () => {
    const { gluing, cutRows } = paper.plan;
    expect(cutRows.map(({ number }) => number)).toEqual((outcome.pieces ?? []).map(({ number }) => number));
    const joined = (outcome.seams ?? []).filter(({ kind }) => kind !== 'open').map(({ id }) => id);
    const glued = gluing.steps.flatMap(({ runs }) => runs.map(({ seam }) => seam));
    expect([...glued].sort()).toEqual([...joined].sort());
    expect(gluing.outside).toEqual([]);
    for (const { joinedMin } of gluing.batches) expect(joinedMin).toBeLessThan(60);
  });

  it('says in the words of the report whether it will work', () => {
    const { verdict } = JSON.parse(reportOf(outcome, [], paper.plan)) as { verdict: { text: string } };
    const sentence = verdictSentence(weighed(toldOf(outcome.findings, null), true));
    expect(verdict.text).toBe(sentence);
    expect(paper.pages[0].drawing.words.map(({ text }) => text).join(' ')).toContain(sentence);
  });

  it('keeps all lines and words on the paper and clear of each other', () => {
    for (const { drawing, widthMm, heightMm } of paper.pages) {
      expect(collisions(drawing.words)).toEqual([]);
      for (const { points } of drawing.strokes) {
        points.forEach((x, i) => {
          expect(x).toBeGreaterThan(9);
          expect(x).toBeLessThan((i % 2 === 0 ? widthMm : heightMm) - 9);
        });
      }
    }
  });

  it('tells no heat where a glue has been opened', () => {
    const words = paper.pages.flatMap(({ drawing }) => drawing.words.map(({ text }) => text));
    const glue = words.findIndex((text) => text.startsWith('Contact adhesive'));
    const heat = words.findLastIndex((text) => text.startsWith('Hot-air gun'));
    expect(glue).toBeGreaterThan(0);
    expect(heat).toBeLessThan(glue);
    const warm = paper.plan.gluing.steps.flatMap((step) => step.warm);
    expect(heat >= 0).toBe(warm.length > 0);
  });
});

describe('the files beside the work', () => {
  it('are the same for the same job, read by other readers, and as the schema says', async () => {
    const outcome = await runSample('bracer');
    const { files, line } = await writeShopFiles(outcome, { font: testFont(), date: '2026-11-27' }, QUIET_WORK);
    const again = await writeShopFiles(outcome, { font: testFont(), date: '2026-11-27' }, QUIET_WORK);
    expect([...files.keys()]).toEqual(['build-sheet.pdf', 'cut-list.csv', 'gluing.json']);
    expect(again.files).toEqual(files);
    expect(line).toMatch(/^\d+ g bare, \d+ mm at its longest; glued in 2 steps, 1 batch$/);
    const gluing: unknown = JSON.parse(files.get('gluing.json') as string);
    expect(schemaFaults(SCHEMA, gluing)).toEqual([]);
    expect(schemaFaults(SCHEMA, { ...(gluing as object), steps: [{}] })).not.toEqual([]);
    const plan = runAtOnce(shopPlanSteps(outcome));
    const report = JSON.parse(reportOf(outcome, [], plan)) as { gluing: { order: string[]; batches: unknown[] } };
    expect(schemaFaults(REPORT, report)).toEqual([]);
    expect(schemaFaults(REPORT, { ...report, gluing: { ...report.gluing, order: [1] } })).not.toEqual([]);
    expect(report.gluing.order).toHaveLength((outcome.seams ?? []).filter(({ kind }) => kind !== 'open').length);
    expect(report.gluing.batches).toHaveLength(1);
    const pdf = await readPdf(files.get('build-sheet.pdf') as Uint8Array);
    const text = pdf.pages.flatMap(({ texts }) => texts.map((one) => one.text)).join(' ');
    for (const told of ['Build sheet: bracer', 'Cut list', 'Gluing', 'Batch 1', 'Touch first', 'Ask your event'])
      expect(text).toContain(told);
  });

  it('follow an order that was accepted, and say which cannot be', async () => {
    const outcome = await runSample('maul-head');
    const found = expectOk(runAtOnce(shopPaperSteps(outcome, '2026-01-01'))).plan.gluing;
    const [inner] = outcome.layers;
    const chains = inner.cut?.chains ?? [];
    const order = found.steps.flatMap(({ runs }) => runs.map(({ seam }) => chains.findIndex(({ id }) => id === seam)));
    const names = namesOfOrder(inner, order);
    expect(names).toHaveLength(18);

    const swapped = movedInOrder(names, 2, 0);
    const accepted = outcomeWith(outcome, acceptGluing(swapped).apply(outcome.project));
    const followed = expectOk(runAtOnce(shopPaperSteps(accepted, '2026-01-01'))).plan;
    expect(followed.findings).toEqual([]);
    const [first] = followed.gluing.steps[0].runs;
    expect(first.seam).toBe(chains[order[2]].id);

    // The closing seam of a shoulder lies deep in the head: all else first shuts it in.
    const late = movedInOrder(names, 3, names.length - 1);
    const findings = runAtOnce(orderFindingSteps(inner, late));
    expect(findings.map(({ code }) => code)).toEqual(['shop/order-shut']);
    expect(findings[0].text).toMatch(/^Seam R comes too late .* once seam \w+ is shut: glue it before that/);
  });
});
