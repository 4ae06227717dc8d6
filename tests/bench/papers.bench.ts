// Every sample on every paper, both ways, and on rolls, plain and corrected for two printers, each file read back by a reader of its own and
// measured: npm run bench:papers [-- names of samples or papers, and `true` to leave the two printers out]
import process from 'node:process';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { PrinterProfile } from '../../src/model/printer.ts';
import { PAPERS } from '../../src/model/papers.ts';
import { makeMockUp } from '../../src/pipeline/mock-up.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import type { Pipeline } from '../../src/pipeline/pipeline.ts';
import { pdfOf } from '../../src/pipeline/write-files.ts';
import type { PaperChoice } from '../../src/project/project.ts';
import { collisions } from '../steps/tile/support.ts';
import { measurePaper, type PaperMeasures } from '../support/printed-paper.ts';
import { expectOk } from '../support/expect-ok.ts';
import { readPdf } from '../support/read-pdf.ts';
import { SAMPLE_NAMES, sampleProject, testFont } from '../support/run-sample.ts';
import { textTable } from './text-table.ts';

const PRINTERS: readonly PrinterProfile[] = [
  { name: '1.031 × 0.988', acrossShare: 1.031, upShare: 0.988, leanRad: 0 },
  { name: '0.988 × 1.031', acrossShare: 0.988, upShare: 1.031, leanRad: 0 },
];

const CHOICES: readonly Partial<PaperChoice>[] = [
  ...PAPERS.flatMap(({ name }) => (['portrait', 'landscape'] as const).map((orientation) => ({ name, orientation }))),
  ...[310, 610, 914].map((widthMm) => ({ name: 'roll', widthMm, orientation: 'portrait' as const })),
];

/** No line may be off by more, and nothing may be lost, mm. */
const MOST_OFF_MM = 0.01;

interface Row extends PaperMeasures {
  readonly paper: string;
  readonly sample: string;
  readonly printer: string;
  readonly pages: number;
  readonly tiles: number;
  readonly collided: readonly string[];
}

const asked = process.argv.slice(2).map((word) => word.toLowerCase());
const wants = (kind: readonly string[], name: string): boolean => {
  const own = asked.filter((word) => kind.some((each) => each.toLowerCase() === word));
  return own.length === 0 || own.includes(name.toLowerCase());
};
const papersNamed = ['roll', ...PAPERS.map(({ name }) => name)];

const rows: Row[] = [];
const cards: string[][] = [];
const font = testFont();
for (const sample of SAMPLE_NAMES.filter((name) => wants(SAMPLE_NAMES, name))) {
  const { project, pipeline } = await sampleProject(sample);
  cards.push([sample, ...(await mockUpFigures(await pipeline.run(project, QUIET_WORK), pipeline))]);
  for (const choice of CHOICES.filter(({ name = '' }) => wants(papersNamed, name))) {
    for (const printer of asked.includes('true') ? [null] : [null, ...PRINTERS]) {
      const corrected = printer === null ? {} : { printers: [printer], printer: printer.name };
      const wished = { ...project, ...corrected, paper: { ...project.paper, ...choice } };
      const outcome = await pipeline.run(wished, QUIET_WORK, { date: '2026-01-01' });
      const set = outcome.paper;
      if (set === null) throw new Error(`${sample}: ${outcome.stopped?.problem.text}`);
      const read = await readPdf(expectOk(await pdfOf(outcome, { font, date: '2026-01-01' })));
      const drawn = [...(outcome.templates ?? []), ...outcome.turned];
      rows.push({
        ...measurePaper(
          read,
          set,
          onPaper(
            drawn,
            set.turned.map(({ template }) => template),
          ),
          printer,
          choice.name === 'roll',
        ),
        sample,
        paper: `${choice.name}${choice.widthMm ?? ''} ${choice.orientation}`,
        printer: printer?.name ?? 'true',
        pages: set.pages.length,
        tiles: set.pages.filter(({ kind }) => kind === 'tile').length,
        collided: set.pages.flatMap(collisions),
      });
    }
    process.stderr.write(`${sample} ${choice.name} ${choice.orientation}: ${rows.at(-1)?.pages} pages\n`);
  }
}

/** In card of 0.4 mm, a quarter of its size: its pages, how it closes, and words that hit something. */
async function mockUpFigures(outcome: Outcome, pipeline: Pipeline): Promise<string[]> {
  const made = await makeMockUp(pipeline, outcome, { times: 4, cardMm: 0.4 }, '2026-01-01', QUIET_WORK);
  if (!made.ok) throw new Error(made.problem.text);
  const { pages } = made.value.pages;
  const { dryFit } = made.value.outcome;
  const tiles = pages.filter(({ kind }) => kind === 'tile').length;
  return [
    `${tiles}`,
    micro(dryFit?.worstGapMm ?? NaN),
    micro(dryFit?.worstOverlapMm ?? NaN),
    `${pages.flatMap(collisions).length}`,
  ];
}

/** The templates that are printed: where one serves for two twins, that one. */
function onPaper<T extends { readonly piece: string; readonly turned?: string }>(
  all: readonly T[],
  serving: readonly string[],
): T[] {
  return all.filter(({ piece, turned }) => (turned !== undefined) === serving.includes(piece));
}

const most = (own: readonly Row[], figure: (row: Row) => number): number => Math.max(0, ...own.map(figure));
const sum = (own: readonly Row[], figure: (row: Row) => number): number =>
  own.reduce((all, row) => all + figure(row), 0);
function micro(mm: number): string {
  return (mm * 1000).toFixed(3);
}
const groups = [...new Set(rows.map(({ paper }) => paper))];
const line = (name: string, own: readonly Row[]): string[] => [
  name,
  String(own.length),
  String(sum(own, ({ pages }) => pages)),
  micro(most(own, ({ offMm }) => offMm)),
  micro(most(own, ({ strayMm }) => strayMm)),
  micro(most(own, ({ lostMm }) => lostMm)),
  `${sum(own, ({ lostCorners }) => lostCorners)} of ${sum(own, ({ corners }) => corners)}`,
  String(sum(own, ({ blankPages }) => blankPages)),
  micro(most(own, ({ squareOffMm }) => squareOffMm)),
  micro(most(own, ({ outsideMm }) => outsideMm)),
  String(sum(own, ({ collided }) => collided.length)),
];
process.stdout.write(
  textTable(
    [
      'paper',
      'files',
      'pages',
      'off µm',
      'stray µm',
      'lost µm',
      'corners lost',
      'blank',
      'square µm',
      'outside µm',
      'words hit',
    ],
    [
      ...groups.map((paper) =>
        line(
          paper,
          rows.filter((row) => row.paper === paper),
        ),
      ),
      ...['true', ...PRINTERS.map(({ name }) => name)].map((name) =>
        line(
          `all, ${name}`,
          rows.filter((row) => row.printer === name),
        ),
      ),
      line('all', rows),
    ],
  ),
);
const plain = rows.filter(({ printer }) => printer === 'true');
const names = [...new Set(rows.map(({ sample }) => sample))];
process.stdout.write(
  `\ntile pages\n${textTable(
    ['paper', ...names, 'sum'],
    groups.map((paper) => {
      const own = plain.filter((row) => row.paper === paper);
      return [
        paper,
        ...names.map((name) => String(own.find(({ sample }) => sample === name)?.tiles)),
        String(sum(own, ({ tiles }) => tiles)),
      ];
    }),
  )}`,
);
process.stdout.write(
  `\nmock-ups 1:4 in card of 0.4 mm\n${textTable(['sample', 'tiles', 'gap µm', 'overlap µm', 'words hit'], cards)}`,
);
for (const { sample, paper, printer, collided } of rows)
  for (const text of collided) process.stdout.write(`${sample}, ${paper}, ${printer}: ${text}\n`);
const isGood = (row: Row): boolean =>
  Math.max(row.offMm, row.strayMm, row.lostMm, row.squareOffMm, row.outsideMm) <= MOST_OFF_MM &&
  row.lostCorners + row.blankPages + row.collided.length === 0;
for (const row of rows.filter((each) => !isGood(each)))
  process.stdout.write(`NOT GOOD: ${row.sample}, ${row.paper}, ${row.printer}\n`);
if (
  !rows.every(isGood) ||
  cards.some(([, , gap, overlap, hits]) => Math.max(Number(gap), Number(overlap)) > 100 || hits !== '0')
)
  process.exitCode = 1;
