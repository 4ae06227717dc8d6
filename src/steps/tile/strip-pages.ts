import { MM_PER_INCH, type LengthUnit } from '../../base/format-length.ts';
import { inEnglish, type Say } from '../../base/paper-language.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import type { Paper } from '../../model/foam-stock.ts';
import type { Page } from '../../model/page.ts';
import { Flow, lineItem, type FilledPage, type FlowItem } from './flow.ts';
import { frontPage } from './front-page.ts';
import { FOOT_MM, paperFrame, type PaperFrame } from './paper-frame.ts';
import { TYPE_MM, type Pen } from './pen.ts';

/** What the pages of the test strip are made of. */
export interface StripInput {
  readonly paper: Paper;
  readonly marginMm: number;
  /** What strips are to be cut from: a strip and its table for each, on a page of their own. One or more. */
  readonly foams: readonly { readonly name: string; readonly thicknessMm: number }[];
  /** Printed as it is given. */
  readonly date?: string;
  /** Whole sentences from shared/cautions.json. */
  readonly cautions: readonly string[];
  /** The language of the paper; English if left out. */
  readonly say?: Say;
}

/** How a strip is measured: the longest and the shortest worth bending and the step between, its ticks and its numbers, in a unit of so many mm. */
interface StripRuling {
  readonly name: LengthUnit;
  readonly unitMm: number;
  readonly longest: number;
  readonly shortest: number;
  readonly step: number;
  readonly tick: number;
  readonly numbered: number;
}

const RULINGS: Readonly<Record<LengthUnit, StripRuling>> = {
  mm: { name: 'mm', unitMm: 1, longest: 240, shortest: 120, step: 20, tick: 10, numbered: 50 },
  in: { name: 'in', unitMm: MM_PER_INCH, longest: 9, shortest: 5, step: 1, tick: 0.5, numbered: 2 },
};
/** Wide enough to bend evenly, mm. */
const WIDTH_MM = 40;
/** Rows to fill in. */
const BENDS = 5;

/** Things round enough that most shops have, outside diameter, mm [J]. */
const ROUND_THINGS = 'pipes of 50, 75 and 110 mm, tins of 73 and 99 mm, a bottle';

/**
 * The pages from which a maker finds the neutral fraction of foams, one for each: a strip in true size to trace, what to do with it, and a table
 * to write in.
 * @returns fails with `tile/margin`, or with `tile/strip` where the paper is too short for a strip.
 */
export function stripPages(input: StripInput): Result<readonly Page[]> {
  const { say = inEnglish } = input;
  const ruling = RULINGS[say.unit ?? 'mm'];
  const { unitMm, longest, shortest, step } = ruling;
  const upright = input.paper.roll || input.paper.widthMm - 2 * input.marginMm >= longest * unitMm;
  const framed = paperFrame(input.paper, upright ? 'portrait' : 'landscape', input.marginMm, 0);
  if (!framed.ok) return framed;
  const frame = framed.value;
  const length = Math.min(longest, step * Math.floor(frame.tileWidthMm / (step * unitMm)));
  if (length < shortest) {
    return fail('tile/strip', `${frame.paperName} is too short for a test strip: take paper of A5 or larger.`);
  }
  const filled = input.foams.flatMap((foam) => {
    const title = say(titleOf(foam));
    return fill(title, stripItem(length, ruling), frame, { cautions: input.cautions, say }).map((page) => ({
      title,
      page,
    }));
  });
  const date = input.date === undefined ? [] : [input.date];
  return ok(
    filled.map(({ title, page }, i) =>
      frontPage('strip', i === 0 ? 'strip' : `strip ${i + 1}`, page, frame, {
        title: [title, ...date].join(' · '),
        pageNumber: i + 1,
        pageCount: filled.length,
        say,
      }),
    ),
    framed.notes,
  );
}

function titleOf({ name, thicknessMm }: StripInput['foams'][number]): string {
  const thickness = `${thicknessMm} mm`;
  return `Test strip: ${name}${name.includes(thickness) ? '' : `, ${thickness}`}`;
}

/** Strip, what to do and table of one foam. */
function fill(
  title: string,
  strip: FlowItem,
  frame: PaperFrame,
  { cautions, say }: { readonly cautions: readonly string[]; readonly say: Say },
): readonly FilledPage[] {
  const { marginMm, tileWidthMm, tileHeightMm, heightMm } = frame;
  const top = frame.roll ? tileHeightMm + marginMm + FOOT_MM : heightMm - marginMm;
  const area = { minX: marginMm, minY: marginMm + FOOT_MM, maxX: marginMm + tileWidthMm, maxY: top };
  const flow = new Flow(area, say);
  flow.put(lineItem(title, { heightMm: TYPE_MM.title, bold: true }));
  flow.paragraph(
    `Where in its thickness a foam keeps its length (k) decides how long a bent piece must be cut. Print at 100 %, trace the strip, cut it square and measure its length and thickness.`,
  );
  flow.put(strip);
  const isWide = tileWidthMm >= 2 * NARROWEST_COLUMN_MM + COLUMN_GAP_MM;
  if (isWide) flow.columns([(tileWidthMm - COLUMN_GAP_MM) / 2, (tileWidthMm - COLUMN_GAP_MM) / 2], COLUMN_GAP_MM);
  flow.heading('Bend it');
  flow.paragraph(
    `1. Take three or more round things of unlike size, each longer round than the strip or nearly so: ${ROUND_THINGS}. Measure across each with a calliper.`,
  );
  flow.paragraph('2. Lay the strip round it without pulling, as cold or warm as you will work, and tape it.');
  flow.paragraph(
    '3. Mark both ends of the strip on the round thing, take the strip off, and measure along the round thing from mark to mark, where the foam lay.',
  );
  flow.paragraph('4. Type the figures beside the foam: k comes with how sure it is.');
  for (const caution of cautions) flow.paragraph(caution, {}, 1.2);
  flow.breakColumn();
  flow.heading('Measured');
  flow.put(measuredRow([say('length of strip'), say('its thickness')]));
  for (let i = 1; i <= BENDS; i += 1) flow.put(measuredRow([`${i}.  ${say('across')}`, say('mark to mark')]));
  return flow.pages();
}

const NARROWEST_COLUMN_MM = 80;
const COLUMN_GAP_MM = 10;

/**
 * The strip: cut lines, ticks along both edges, every 10 mm or half an inch, and a number every 50 mm or 2 in.
 *
 *     ┌┬┬┬┬┬┬┬┬┬┬┬┬┬┐
 *     │    50   100  │
 *     └┴┴┴┴┴┴┴┴┴┴┴┴┴┘
 */
function stripItem(length: number, { name, unitMm, tick, numbered }: StripRuling): FlowItem {
  return {
    heightMm: WIDTH_MM,
    gapMm: 5,
    draw: (pen: Pen, left: number, top: number) => {
      const bottom = top - WIDTH_MM;
      pen.rectangle('cut', left, bottom, length * unitMm, WIDTH_MM);
      for (let at = tick; at < length; at += tick) {
        const x = left + at * unitMm;
        const high = at % numbered === 0 ? 4 : 2.4;
        pen.line('mark', x, bottom, x, bottom + high);
        pen.line('mark', x, top, x, top - high);
        if (at % numbered === 0) pen.write(String(at), { x, y: bottom + 5.4 }, { align: 'centre' });
      }
      const middle = { x: left + (length * unitMm) / 2, y: top - WIDTH_MM / 2 - TYPE_MM.name / 2 };
      pen.write(`${length} ${name}`, middle, { heightMm: TYPE_MM.name, align: 'centre', bold: true });
    },
  };
}

/** Blanks to write into, side by side. */
function measuredRow(labels: readonly [string, string]): FlowItem {
  const [labelMm, blankMm] = [27, 15];
  return {
    heightMm: 9,
    gapMm: 1,
    draw: (pen: Pen, left: number, top: number) => {
      const y = top - 7;
      labels.forEach((label, i) => {
        const x = left + i * (labelMm + blankMm + 1);
        pen.write(label, { x, y });
        pen.line('frame', x + labelMm, y - 0.6, x + labelMm + blankMm - 2, y - 0.6);
      });
    },
  };
}
