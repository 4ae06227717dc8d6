import { expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { PrinterProfile } from '../../src/model/printer.ts';
import { pdfOf } from '../../src/pipeline/write-files.ts';
import { collisions } from '../steps/tile/support.ts';
import { measurePaper } from '../support/printed-paper.ts';
import { expectOk } from '../support/expect-ok.ts';
import { readPdf } from '../support/read-pdf.ts';
import { sampleProject, testFont } from '../support/run-sample.ts';

// Every sample on every paper: npm run bench:papers. Here a few of them.
const LONG: PrinterProfile = { name: 'long and short', acrossShare: 1.031, upShare: 0.988, leanRad: 0 };
const SHORT: PrinterProfile = { name: 'short and long', acrossShare: 0.988, upShare: 1.031, leanRad: 0 };

it.each([
  { sample: 'helm', name: 'A4', orientation: 'portrait', printer: LONG },
  { sample: 'lantern', name: 'Letter', orientation: 'landscape', printer: SHORT },
  { sample: 'bracer', name: 'A3', orientation: 'portrait', printer: null },
] as const)(
  'the $sample on $name $orientation measures true as it comes out of the printer',
  async ({ sample, name, orientation, printer }) => {
    const { project, pipeline } = await sampleProject(sample);
    const corrected = printer === null ? {} : { printers: [printer], printer: printer.name };
    const paper = { ...project.paper, name, orientation };
    const outcome = await pipeline.run({ ...project, ...corrected, paper }, QUIET_WORK, { date: '2026-01-01' });
    const set = outcome.paper!;
    const read = await readPdf(expectOk(await pdfOf(outcome, { font: testFont(), date: '2026-01-01' })));
    const served = new Set<string>(set.turned.map(({ template }) => template));
    const templates = [
      ...outcome.templates!.filter(({ piece }) => !served.has(piece)),
      ...outcome.turned.filter(({ piece }) => served.has(piece)),
    ];
    const measures = measurePaper(read, set, templates, printer);
    expect(measures.corners).toBeGreaterThan(100);
    expect(measures).toMatchObject({ lostCorners: 0, blankPages: 0 });
    for (const key of ['offMm', 'strayMm', 'lostMm', 'squareOffMm', 'outsideMm'] as const)
      expect(measures[key], key).toBeLessThan(0.01);
    expect(set.pages.flatMap(collisions)).toEqual([]);
  },
);
