import { formatNumber, formatPlain, MM_PER_INCH } from '../../base/format-length.ts';
import type { PieceId } from '../../base/ids.ts';
import { cautionsById } from '../../model/cautions.ts';
import type { ColourSum, FinishPlan, FinishStep } from '../../model/finish.ts';
import { rad } from '../../geom/vec.ts';
import { segmentInBox } from '../../geom/clip-to-box.ts';
import { HATCHINGS } from '../../model/hatching.ts';
import type { Drawing } from '../../model/template.ts';
import { moveDrawing } from './block.ts';
import type { Named } from './build-words.ts';
import {
  areaText,
  BEFORE_GLUING_RULE,
  finishReason,
  finishGroups,
  finishTexts,
  finishTitle,
  finishWhen,
  MASKING_RULE,
  volumeText,
  waitSummary,
} from './finish-words.ts';
import type { Flow, FlowItem } from './flow.ts';
import { LEADING, TYPE_MM, type Pen } from './pen.ts';
import { CELL_GAP_MM, rowItem } from './table-row.ts';
import { wrapText } from './text-fit.ts';

/** What the section of finishing is made of. */
export interface FinishInput {
  readonly plan: FinishPlan;
  /** Hatching of each colour, by its id; left out for the base. */
  readonly hatchingOf: ReadonlyMap<string, number>;
  /** The prop with its areas hatched, {@link FINISH_PICTURE_MM} large; null where nothing is painted in a colour. */
  readonly picture: Drawing | null;
}

/** Size of the picture, mm. */
export const FINISH_PICTURE_MM = { widthMm: 170, heightMm: 84 };

/** Whether there is more to tell than coats that go all over. */
export const hasFinish = ({ colours, clay }: FinishPlan): boolean => colours.length > 0 || clay !== null;

/** Widths of the columns of figures, mm; the first has the rest. */
const FIGURES_MM = [24, 26, 22, 18, 26];

/** Pieces whose share is told beside a colour; all are in gluing.json. */
const MOST_PIECES = 24;

/** Size of a sample of hatching, mm. */
const SAMPLE_MM = { width: 16, height: 6 };

/**
 * Colours with what each takes, the prop with its areas, and all steps in their order, those before gluing under the step they come before, with the
 * cautions beside the step they belong to.
 * @param putCautions sets sentences off from the rest.
 */
export function putFinishing(
  flow: Flow,
  { plan, hatchingOf, picture }: FinishInput,
  named: Named,
  putCautions: (flow: Flow, texts: readonly string[]) => void,
): void {
  flow.heading('Finishing');
  putColours(flow, plan.colours, hatchingOf, named);
  if (picture !== null) flow.put(pictureItem(picture));
  if (plan.colours.length > 1 || plan.tapeMm > 0) flow.paragraph(MASKING_RULE, {}, 1.6);
  if (plan.steps.some(({ beforeStep }) => beforeStep !== null)) flow.paragraph(BEFORE_GLUING_RULE, {}, 0.8);
  flow.paragraph(waitSummary(plan), {}, 0.8);
  const everything = new Set<PieceId>(plan.steps.flatMap(({ pieces }) => pieces));
  for (const group of finishGroups(plan)) {
    flow.heading(finishWhen(group[0], named));
    const why = finishReason(group[0]);
    if (why !== '') flow.paragraph(why, {}, 0.8);
    for (const step of group) putStep(flow, step, plan, named, step.pieces.length === everything.size, putCautions);
  }
}

function putColours(
  flow: Flow,
  colours: readonly ColourSum[],
  hatchingOf: FinishInput['hatchingOf'],
  named: Named,
): void {
  if (colours.length === 0) return;
  const { say } = flow;
  const [unitMm2, onPieces] = say.unit === 'in' ? [MM_PER_INCH ** 2, 'in² on pieces'] : [100, 'cm² on pieces'];
  const first = flow.width - FIGURES_MM.reduce((sum, mm) => sum + mm + CELL_GAP_MM, 0);
  const widths = [first, ...FIGURES_MM];
  const heading = rowItem(
    [['colour'], ['on paper'], ['area'], ['coats'], ['volume'], ['a litre covers']].map(([text]) => [say(text)]),
    widths,
    true,
  );
  flow.put(heading);
  for (const { colour, isBase, areaMm2, ml, pieces } of colours) {
    const numbered = pieces
      .map(({ piece, areaMm2: own }) => ({ number: named.get(piece)?.number ?? 0, own }))
      .sort((a, b) => a.number - b.number)
      .map(({ number, own }) => `${number}:\u00a0${formatNumber(own / unitMm2)}`);
    const shown = numbered.slice(0, MOST_PIECES);
    const more = numbered.length > shown.length ? say(` and ${numbered.length - shown.length} more`) : '';
    const whose = say(colour.figures === 'label' ? 'your label' : 'as usual');
    const cells = [
      [
        ...wrapText(`${colour.name}${isBase ? `, ${say('the base')}` : ''}`, TYPE_MM.body, first).slice(0, 3),
        ...(pieces.length > 1 ? wrapText(`${say(onPieces)} ${shown.join(' · ')}${more}`, TYPE_MM.body, first) : []),
      ],
      [],
      [say(areaText(areaMm2))],
      [String(colour.coats)],
      [say(volumeText(ml))],
      [say(`${formatPlain(colour.coverageM2PerL)} m²`), whose],
    ];
    const hatching = hatchingOf.get(colour.id);
    flow.put(sampled(rowItem(cells, widths, false), first + CELL_GAP_MM, hatching), heading);
  }
}

/** A row with a sample of hatching in its second column; plain where it has none. */
function sampled(row: FlowItem, left: number, hatching: number | undefined): FlowItem {
  const heightMm = Math.max(row.heightMm, SAMPLE_MM.height + 2);
  return {
    ...row,
    heightMm,
    draw: (pen: Pen, x: number, top: number) => {
      row.draw(pen, x, top);
      const bottom = top - 1 - SAMPLE_MM.height;
      drawSample(pen, x + left, bottom, hatching);
    },
  };
}

function drawSample(pen: Pen, left: number, bottom: number, hatching: number | undefined): void {
  const { width, height } = SAMPLE_MM;
  pen.rectangle('map', left, bottom, width, height);
  if (hatching === undefined) return;
  const { anglesDeg, spacingMm } = HATCHINGS[hatching];
  const box = { minX: left, minY: bottom, maxX: left + width, maxY: bottom + height };
  const far = width + height;
  for (const deg of anglesDeg) {
    const [c, s] = [Math.cos(rad(deg)), Math.sin(rad(deg))];
    const rows = Math.ceil((width + height) / spacingMm);
    for (let row = -rows; row <= rows; row += 1) {
      const off = (row + 0.5) * spacingMm;
      const [x0, y0] = [left + width / 2 - off * s, bottom + height / 2 + off * c];
      const [ax, ay, bx, by] = [x0 - far * c, y0 - far * s, x0 + far * c, y0 + far * s];
      const span = segmentInBox(ax, ay, bx, by, box);
      if (span === null || span.to <= span.from) continue;
      const at = (share: number): readonly [number, number] => [ax + share * (bx - ax), ay + share * (by - ay)];
      pen.line('map', ...at(span.from), ...at(span.to));
    }
  }
}

function pictureItem(picture: Drawing): FlowItem {
  return {
    heightMm: FINISH_PICTURE_MM.heightMm,
    gapMm: 3,
    draw: (pen: Pen, left: number, top: number) => {
      const { strokes, words } = moveDrawing(picture, { x: left, y: top - FINISH_PICTURE_MM.heightMm, turnRad: 0 });
      pen.strokes.push(...strokes);
      pen.words.push(...words);
    },
  };
}

/** A step: its number and title, what it takes, and what can hurt in it. */
function putStep(
  flow: Flow,
  step: FinishStep,
  plan: FinishPlan,
  named: Named,
  isAll: boolean,
  putCautions: (flow: Flow, texts: readonly string[]) => void,
): void {
  const items =
    step.work === 'clay'
      ? (plan.clay?.items ?? []).filter(({ pieces }) => pieces.every((id) => step.pieces.includes(id)))
      : [];
  flow.put(
    stepItem(
      `${step.number}. ${flow.say(finishTitle(step, named, isAll))}`,
      finishTexts(step, items).map(flow.say),
      flow.width,
    ),
  );
  putCautions(flow, cautionsById(step.cautions));
}

function stepItem(title: string, texts: readonly string[], widthMm: number): FlowItem {
  const pitch = TYPE_MM.body * LEADING;
  const lines = [
    ...wrapText(title, TYPE_MM.body, widthMm).map((text) => ({ text, bold: true })),
    ...texts.flatMap((text) => wrapText(text, TYPE_MM.body, widthMm)).map((text) => ({ text, bold: false })),
  ];
  return {
    heightMm: lines.length * pitch + 0.5,
    gapMm: 2,
    draw: (pen: Pen, left: number, top: number) => {
      lines.forEach(({ text, bold }, i) =>
        pen.write(text, { x: left, y: top - i * pitch - TYPE_MM.body * 1.3 }, { bold }),
      );
    },
  };
}
