import { inEnglish, sayThickness, type Say } from '../../base/paper-language.ts';
import { ok, type Result } from '../../base/result.ts';
import { formatMm, formatNumber } from '../../base/format-length.ts';
import { plainTold } from '../../base/plain-told.ts';
import { thingsToMind, verdictSentence, type Verdict } from '../../base/verdict.ts';
import { CAUTIONS, cautionsById, cautionTexts } from '../../model/cautions.ts';
import { textWidthMm } from '../../geom/text-width.ts';
import type { CutRow } from '../../model/cut-row.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { Paper } from '../../model/foam-stock.ts';
import type { GluingPlan, GluingStep } from '../../model/gluing.ts';
import type { Page } from '../../model/page.ts';
import type { PartWork } from '../../model/part-work.ts';
import type { Quantities } from '../../model/quantities.ts';
import { ruledText } from '../../model/ruled-strip.ts';
import type { SawTable } from '../../model/saw-settings.ts';
import type { Drawing } from '../../model/template.ts';
import { moveDrawing } from './block.ts';
import { batchTimesText, batchTitle, runText, stepTitle, warmText, type Named } from './build-words.ts';
import { paintedBefore } from './finish-words.ts';
import { hasFinish, putFinishing, type FinishInput } from './finish-section.ts';
import { Flow, lineItem, type FlowItem } from './flow.ts';
import { frontPage } from './front-page.ts';
import { FOOT_MM, paperFrame } from './paper-frame.ts';
import { putPartWorks } from './part-section.ts';
import { LEADING, TYPE_MM, type Pen } from './pen.ts';
import { putQuantities } from './quantity-tables.ts';
import { putSawList } from './saw-list.ts';
import { CELL_GAP_MM, rowItem } from './table-row.ts';
import { clipText, wrapText } from './text-fit.ts';

/** What the paper beside the work is made of. */
export interface BuildSheetInput {
  readonly paper: Paper;
  readonly marginMm: number;
  readonly projectName: string;
  readonly projectRevision: number;
  /** Printed as it is given. */
  readonly date?: string;
  /** Whether it will work; left out where nobody has looked. */
  readonly verdict?: Verdict;
  readonly pieces: readonly FoamPiece[];
  readonly cutRows: readonly CutRow[];
  readonly saw: SawTable;
  /** What is cut or filled at seams beyond the blade, whole sentences. */
  readonly seamWork: readonly string[];
  readonly quantities: Quantities;
  readonly gluing: GluingPlan;
  /** The work on parts that no sculpt was parted for; left out where there is none. */
  readonly parts?: readonly PartWork[];
  /** Pictures of such parts, by their ids, as large as `PART_PICTURE_MM`; left out where there is none. */
  readonly partPictures?: ReadonlyMap<string, Drawing>;
  readonly finish: FinishInput;
  /** One for each step, as large as `pictureSize` says. */
  readonly pictures: readonly Drawing[];
  /** The language of the paper; English if left out. */
  readonly say?: Say;
}

/** Width of the picture beside a step, its least and greatest height, and what each seam beyond two adds to it, mm. */
const PICTURE_MM = { width: 80, least: 46, most: 84, bySeam: 9 };

/** Size of the picture beside a step, mm: taller where more is told beside it. */
export function pictureSize({ runs }: Pick<GluingStep, 'runs'>): {
  readonly widthMm: number;
  readonly heightMm: number;
} {
  const { width, least, most, bySeam } = PICTURE_MM;
  return { widthMm: width, heightMm: Math.min(most, least + bySeam * Math.max(0, runs.length - 3)) };
}

/**
 * The build sheet: what it takes, what is cut and how the saw is set, in which order it is glued, with a picture and the cautions beside each
 * step, and what comes after.
 * @returns fails with `tile/margin` where the paper leaves no room.
 */
export function buildSheetPages(input: BuildSheetInput): Result<readonly Page[]> {
  const framed = paperFrame(input.paper, 'portrait', input.marginMm, 0);
  if (!framed.ok) return framed;
  const frame = framed.value;
  const { marginMm, tileWidthMm, tileHeightMm } = frame;
  const bottom = marginMm + FOOT_MM;
  const { say = inEnglish } = input;
  const area = { minX: marginMm, minY: bottom, maxX: marginMm + tileWidthMm, maxY: bottom + tileHeightMm };
  const flow = new Flow(area, say);
  const title = `${say('Build sheet')}: ${input.projectName}`;
  flow.put(lineItem(clipText(title, TYPE_MM.title, flow.width), { heightMm: TYPE_MM.title, bold: true }));
  flow.paragraph(summary(input, say), {}, 1);
  if (input.verdict !== undefined) putVerdict(flow, input.verdict);
  putQuantities(flow, input.quantities, input.finish.plan);
  putCutList(flow, input.cutRows);
  putSawList(flow, input.saw, input.pieces);
  if (input.seamWork.length > 0) {
    flow.heading('Seams beyond the blade');
    for (const sentence of input.seamWork) flow.paragraph(sentence, {}, 0.8);
  }
  putCautions(flow, cautionTexts('cut'));
  putGluing(flow, input);
  putPartWorks(flow, input.parts ?? [], input.partPictures ?? new Map(), toldBefore(input), putCautions);
  if (hasFinish(input.finish.plan)) putFinishing(flow, input.finish, namedOf(input), putCautions);
  putAfterwards(flow, input);
  const pages = flow.pages();
  const foot = [
    input.projectName,
    say(`revision ${input.projectRevision}`),
    ...(input.date === undefined ? [] : [input.date]),
  ];
  return ok(
    pages.map((page, i) =>
      frontPage('build', i === 0 ? 'build' : `build ${i + 1}`, page, frame, {
        title: foot.join(' · '),
        pageNumber: i + 1,
        pageCount: pages.length,
        say,
      }),
    ),
    framed.notes,
  );
}

/** Things to mind that are told on paper; a job with more of them is looked at in the window first. */
const MOST_TOLD = 8;

/** The verdict as the window gives it, and each thing it asks to look to. */
function putVerdict(flow: Flow, verdict: Verdict): void {
  const things = thingsToMind(verdict);
  flow.heading('Will it work?');
  flow.paragraph(verdictSentence(verdict), {}, 0.8);
  for (const { text } of things.slice(0, MOST_TOLD)) flow.paragraph(`• ${plainTold(text)}`, {}, 0.8);
  const more = things.length - MOST_TOLD;
  if (more > 0) flow.paragraph(`• and ${more} more, told in report.json.`, {}, 0.8);
}

/** Cautions that stand on the sheet before the work on other parts. */
const toldBefore = ({ gluing: { steps } }: BuildSheetInput): readonly string[] => [
  ...CAUTIONS.filter(({ work }) => work.includes('cut')).map(({ id }) => id),
  ...steps.flatMap(({ cautions }) => cautions),
];

function summary({ cutRows, gluing, parts = [], quantities }: BuildSheetInput, say: Say): string {
  const seams = new Set(gluing.steps.flatMap(({ runs }) => runs.map(({ seam }) => seam))).size;
  const [x, y, z] = quantities.sizeMm.map((mm) => formatNumber(mm));
  const work = parts.reduce((sum, { steps }) => sum + steps.length, 0);
  const counts = [
    counted(cutRows.length, 'piece'),
    ...(gluing.steps.length === 0 ? [] : [counted(seams, 'seam'), `${counted(gluing.steps.length, 'step')} of gluing`]),
    ...(work === 0 ? [] : [`${counted(work, 'step')} of work on ${gluing.steps.length === 0 ? '' : 'other '}parts`]),
  ]
    .map(say)
    .join(', ');
  const weighs = `weighs about ${grams(quantities.massG)} bare.`;
  const finished =
    quantities.longestMm === 0
      ? `Finished it ${weighs}`
      : `Finished it measures ${x} × ${y} × ${z} mm, ${formatMm(quantities.longestMm)} at its longest, and ${weighs}`;
  return `${counts}. ${say(finished)}`;
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

export const grams = (g: number): string => (g < 1000 ? `${formatNumber(g)} g` : `${formatNumber(g / 1000, 2)} kg`);

/** Cautions stand in one block, set off by a line on both sides. */
function putCautions(flow: Flow, texts: readonly string[]): void {
  if (texts.length === 0) return;
  flow.put(ruleItem());
  for (const text of texts) flow.paragraph(text, {}, 0.8);
  flow.put(ruleItem());
}

function ruleItem(): FlowItem {
  return {
    heightMm: 0.8,
    gapMm: 1.6,
    draw: (pen: Pen, left: number, top: number) => pen.line('cut', left, top - 0.4, left + 12, top - 0.4),
  };
}

const COLUMNS: readonly {
  readonly heading: string;
  readonly widthMm?: number;
  readonly text: (row: CutRow, say: Say) => string;
}[] = [
  { heading: 'no.', widthMm: 8, text: ({ number }) => String(number) },
  { heading: 'piece', text: ({ name }, say) => say(name) },
  { heading: 'cut', widthMm: 10, text: ({ quantity }, say) => say(`${quantity} ×`) },
  { heading: 'foam', widthMm: 14, text: ({ thicknessMm }, say) => sayThickness(thicknessMm, say) },
  {
    heading: 'size',
    widthMm: 30,
    text: ({ widthMm, heightMm }, say) => say(`${formatNumber(widthMm)} × ${formatNumber(heightMm)} mm`),
  },
  { heading: 'area', widthMm: 18, text: ({ areaMm2 }, say) => say(`${formatNumber(areaMm2 / 100)} cm²`) },
  {
    heading: 'longest bevel',
    widthMm: 28,
    text: ({ longestBevelMm, steepestDeg }, say) =>
      say(longestBevelMm === 0 ? 'all square' : `${formatNumber(longestBevelMm)} mm, to ${formatNumber(steepestDeg)}°`),
  },
];

function putCutList(flow: Flow, rows: readonly CutRow[]): void {
  const { say } = flow;
  const own = COLUMNS.map(({ heading, widthMm }) =>
    widthMm === undefined ? undefined : Math.max(widthMm, textWidthMm(say(heading), TYPE_MM.body) + 0.5),
  );
  const fixed = own.reduce<number>((sum, mm) => sum + (mm ?? 0) + CELL_GAP_MM, -CELL_GAP_MM);
  const widths = own.map((mm) => mm ?? flow.width - fixed);
  const heading = rowItem(
    COLUMNS.map((column) => [say(column.heading)]),
    widths,
    true,
  );
  flow.heading('Cut list');
  flow.put(heading);
  for (const row of rows) {
    const cells = COLUMNS.map(({ text }, i) => wrapText(text(row, say), TYPE_MM.body, widths[i]).slice(0, 3));
    flow.put(rowItem(cells, widths, false), heading);
    if (row.ruled !== undefined)
      flow.paragraph(`By the ruler, without paper: ${ruledText(row.ruled, say.unit ?? 'mm')}.`, {}, 0.4);
  }
}

function putGluing(flow: Flow, input: BuildSheetInput): void {
  const { steps, batches, glue } = input.gluing;
  const isGlued = (input.parts ?? []).some((part) => part.steps.some(({ glueMm2 }) => glueMm2 > 0));
  if (steps.length === 0 && !isGlued) return;
  const named = namedOf(input);
  putWarming(flow, steps, named);
  flow.heading('Gluing');
  flow.paragraph(
    `With ${glue.name}: touch-dry after ${formatNumber(glue.waitMin)} min, to be joined within ${formatNumber(glue.openMin)} min, full strength after ${formatNumber(glue.cureH)} h. If the label says otherwise, it is right.`,
    {},
    0.8,
  );
  if (steps.length === 0) return;
  flow.paragraph(
    'It grabs at once and cannot slide: put the edges together at the dot, then roll them shut along the arrows. What is added is drawn heavy. The inside of a seam is reached by hand unless it says otherwise.',
    {},
    0.8,
  );
  for (const batch of batches) {
    flow.heading(batchTitle(batch));
    flow.paragraph(batchTimesText(batch), {}, 0.8);
    const own = steps.filter(({ batch: number }) => number === batch.number);
    putCautions(
      flow,
      cautionsById(own.flatMap(({ cautions }) => cautions).filter((id) => !WARM_CAUTIONS.includes(id))),
    );
    for (const step of own) {
      const painted = paintedBefore(input.finish.plan, step.number, named);
      flow.put(stepItem(step, input.pictures[step.number - 1], { named, painted, say: flow.say }, flow.width));
    }
  }
}

const namedOf = ({ pieces }: BuildSheetInput): Named => new Map(pieces.map((piece) => [piece.id, piece]));

/** What is told beside the warming, all of which is done before the glue is opened. */
const WARM_CAUTIONS: readonly string[] = ['heat', 'pvc', 'glue-then-heat'];

/** All that is warmed, before there is any glue: its vapour burns. */
function putWarming(flow: Flow, steps: readonly GluingStep[], named: Named): void {
  const work = steps.flatMap(({ warm }) => warm);
  if (work.length === 0) return;
  flow.heading('Warm and form');
  flow.paragraph('All of it before the glue is opened, and each piece held in its form until it is cold.', {}, 0.8);
  const needed = WARM_CAUTIONS.filter((id) => steps.some(({ cautions }) => cautions.includes(id)));
  putCautions(flow, cautionsById(needed));
  for (const warm of work) flow.paragraph(warmText(warm, named), {}, 0.8);
}

/** White between the picture and the words beside it, mm. */
const BESIDE_MM = 4;

/** A step: its picture, and beside it what is done. @param told.painted what was painted before it, a sentence; empty where nothing was. */
function stepItem(
  step: GluingStep,
  picture: Drawing,
  told: { readonly named: Named; readonly painted: string; readonly say: Say },
  widthMm: number,
): FlowItem {
  const { named, painted, say } = told;
  const pitch = TYPE_MM.body * LEADING;
  const size = pictureSize(step);
  const textWidth = widthMm - size.widthMm - BESIDE_MM;
  const paragraphs = [
    { text: stepTitle(step, named), isBold: true },
    ...[...formedText(step, named), ...(painted === '' ? [] : [painted])].map((text) => ({ text, isBold: false })),
    ...step.runs.map((run) => ({ text: runText(run), isBold: false })),
  ];
  const lines = paragraphs.flatMap(({ text, isBold }, p) =>
    wrapText(say(text), TYPE_MM.body, textWidth).map((line, i) => ({ line, isBold, gapMm: p > 0 && i === 0 ? 1 : 0 })),
  );
  const textHeight = lines.reduce((sum, { gapMm }) => sum + pitch + gapMm, 0);
  return {
    heightMm: Math.max(size.heightMm, textHeight + 3),
    gapMm: 3,
    draw: (pen: Pen, left: number, top: number) => {
      const { strokes, words } = moveDrawing(picture, { x: left, y: top - size.heightMm, turnRad: 0 });
      pen.strokes.push(...strokes);
      pen.words.push(...words);
      const x = left + size.widthMm + BESIDE_MM;
      pen.line('frame', left, top, left + widthMm, top);
      let y = top - 2;
      for (const { line, isBold, gapMm } of lines) {
        y -= gapMm;
        pen.write(line, { x, y: y - TYPE_MM.body * 1.3 }, { bold: isBold });
        y -= pitch;
      }
    },
  };
}

/** Reminds of what was formed before. */
function formedText({ warm }: GluingStep, named: Named): readonly string[] {
  const numbers = [...new Set(warm.map(({ piece }) => named.get(piece)?.number ?? 0))];
  if (numbers.length === 0) return [];
  return [`Formed beforehand: ${numbers.join(', ')}.`];
}

/** What comes after the glue: coats, where they are not told among the steps of finishing, and wearing it. */
function putAfterwards(flow: Flow, { gluing, parts = [], quantities, finish }: BuildSheetInput): void {
  flow.heading('Afterwards');
  const isGlued = gluing.steps.length > 0 || parts.some(({ steps }) => steps.some(({ glueMm2 }) => glueMm2 > 0));
  if (isGlued)
    flow.paragraph(`Leave the glue ${formatNumber(gluing.glue.cureH)} h before the prop is bent or worn.`, {}, 0.8);
  const coatings = hasFinish(finish.plan) ? [] : quantities.coatings;
  for (const { coating, dryMin } of coatings) {
    const coats = coating.coats === 1 ? 'one coat' : `${coating.coats} coats`;
    flow.paragraph(
      `${capital(coating.name)}: ${coats}, ${formatNumber(coating.recoatMin)} min from one to the next, ${formatNumber(dryMin / 60, 1)} h in all, then ${formatNumber(coating.cureH)} h until it is worn.`,
      {},
      0.8,
    );
  }
  const ids = coatings.flatMap(({ coating }) => coating.cautions);
  const told = parts.flatMap(({ steps }) => steps.flatMap(({ cautions }) => cautions));
  putCautions(flow, cautionsById([...ids, 'dust', 'wear'].filter((id) => !told.includes(id))));
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
