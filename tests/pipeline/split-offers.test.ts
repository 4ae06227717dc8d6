import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { addMarks } from '../../src/project/path-commands.ts';
import type { Project } from '../../src/project/project.ts';
import { setFillRule } from '../../src/project/stock-commands.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { sampleProject } from '../support/run-sample.ts';

const SCHEMA = JSON.parse(readFileSync(new URL('../../shared/report.schema.json', import.meta.url), 'utf8')) as Schema;

it('offers a straight line across a piece that is larger than a sheet, and both parts then fit', async () => {
  const { project, pipeline } = await sampleProject('bracer');
  const small: Project = {
    ...project,
    foams: project.foams.map((one) => ({ ...one, sheetWidthMm: 220, sheetHeightMm: 300 })),
  };
  const before = await pipeline.run(small, QUIET_WORK, { date: '2026-11-27' });
  const [body] = before.sheets?.tooLarge ?? [];
  expect(before.sheets?.tooLarge).toHaveLength(1);
  const finding = before.findings.find(({ code }) => code === 'nest/too-large');
  expect(finding).toMatchObject({ severity: 'warning', where: { piece: body } });
  expect(finding?.text).toMatch(/straight line of \d+ mm that is offered, so that both parts fit/);
  const offers = before.cut?.offers ?? [];
  expect(offers).toHaveLength(1);
  expect(offers[0].patch).toBe(before.pieces?.find(({ id }) => id === body)?.patch);
  const report = JSON.parse(reportOf(before)) as { foamLayout: { splits: unknown[] } };
  expect(schemaFaults(SCHEMA, report)).toEqual([]);
  expect(report.foamLayout.splits).toMatchObject([{ piece: body, doBothFit: true }]);

  const parted = addMarks(offers[0].marks ?? { edges: [], paths: [] }).apply(small);
  const after = await pipeline.run(parted, QUIET_WORK, { date: '2026-11-27' });
  expect(after.pieces).toHaveLength((before.pieces?.length ?? 0) + 1);
  expect(after.sheets?.tooLarge).toEqual([]);
  const laid = after.sheets?.sheets.flatMap(({ placements }) => placements) ?? [];
  expect(laid).toHaveLength(after.pieces?.length ?? 0);
  // The new seam is as long as was said: the line is straight on the flat piece, and the bracer bends without stretch.
  const isNew = after.seams?.filter(({ id }) => !before.seams?.some((seam) => seam.id === id)) ?? [];
  expect(isNew.some(({ trueLengthMm }) => Math.abs(trueLengthMm - offers[0].lengthMm) < 3)).toBe(true);
});

it('speaks of the sheets in hand where none may be bought', async () => {
  const { project, pipeline } = await sampleProject('bracer');
  const foams = project.parts[0].layers.map(({ foam }) => foam);
  const kept = foams.reduce((changed, foam) => setFillRule(foam, { buys: false }).apply(changed), project);
  const outcome = await pipeline.run(kept, QUIET_WORK, { date: '2026-11-27' });
  const texts = outcome.findings.filter(({ code }) => code === 'nest/too-large').map(({ text }) => text);
  expect(texts).toHaveLength(outcome.pieces?.length ?? 0);
  for (const text of texts)
    expect(text).toMatch(/^No sheet of EVA .* in hand is large enough for .*let sheets be bought/);
});
