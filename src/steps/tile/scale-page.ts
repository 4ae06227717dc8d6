import { inEnglish, type Say } from '../../base/paper-language.ts';
import { textWidthMm } from '../../geom/text-width.ts';
import { Flow, lineItem, type FilledPage, type FlowItem } from './flow.ts';
import type { PrinterProfile } from '../../model/printer.ts';
import type { PageInput } from './page-input.ts';
import { FOOT_MM, type PaperFrame } from './paper-frame.ts';
import { TYPE_MM, type Pen } from './pen.ts';
import { scaleFigure, scaleFigureSide, type ScaleSize } from './scale-figure.ts';
import { clipText } from './text-fit.ts';

const GAP_MM = 10;

/** Narrowest column that instructions read well in, mm [J]. */
const NARROWEST_TEXT_MM = 55;

/** A column so wide holds all the rest too; beside a narrower one it goes underneath, mm [J]. */
const WIDE_TEXT_MM = 90;

/** Longest lines that read well, mm [J]. */
const WIDEST_TEXT_MM = 190;

/**
 * The page that is printed first and measured, with how pages are joined and the cautions: most often one, on very small paper more.
 * @param hasJoints whether any template goes over several pages.
 */
export function scalePages(input: PageInput, frame: PaperFrame, hasJoints: boolean): readonly FilledPage[] {
  const { marginMm, tileWidthMm, tileHeightMm } = frame;
  const top = frame.roll ? tileHeightMm + marginMm + FOOT_MM : frame.heightMm - marginMm;
  const { say = inEnglish } = input;
  const area = { minX: marginMm, minY: marginMm + FOOT_MM, maxX: marginMm + tileWidthMm, maxY: top };
  const flow = new Flow(area, say);
  flow.put(lineItem(clipText(input.projectName, TYPE_MM.title, flow.width), { heightMm: TYPE_MM.title, bold: true }));
  for (const sentence of input.notice ?? []) flow.paragraph(sentence, { heightMm: TYPE_MM.heading, bold: true }, 1);
  flow.paragraph(
    'Print this page first, at 100 %: “actual size”, nothing fitted or shrunk to the page.',
    { heightMm: TYPE_MM.heading },
    1,
  );
  const size: ScaleSize = Math.min(tileWidthMm, tileHeightMm) >= scaleFigureSide(LARGE) ? LARGE : SMALL;
  const figure = scaleFigureSide(size);
  const text = tileWidthMm - figure - GAP_MM;
  if (text >= NARROWEST_TEXT_MM) flow.columns([figure, Math.min(text, 120)], GAP_MM);
  flow.put(scaleFigure(size, say));
  flow.breakColumn();
  writeInstructions(flow, size, frame, input.printer);
  if (text < WIDE_TEXT_MM) flow.columns([Math.min(tileWidthMm, WIDEST_TEXT_MM)], 0);
  if (hasJoints) {
    flow.heading('Joining');
    flow.paragraph(joiningText(frame.overlapMm), {}, 0.8);
  }
  if (input.cautions.length > 0) {
    flow.heading('Take care');
    for (const caution of input.cautions) flow.paragraph(caution, {}, 0.8);
  }
  return flow.pages();
}

const LARGE: ScaleSize = { squareMm: 100, ruleIn: 4 };
const SMALL: ScaleSize = { squareMm: 50, ruleIn: 2 };

function writeInstructions(
  flow: Flow,
  { squareMm, ruleIn }: ScaleSize,
  frame: PaperFrame,
  printer: PrinterProfile | undefined,
): void {
  if (printer !== undefined) {
    flow.heading(clipText(flow.say(`For ${printer.name} only`), TYPE_MM.heading, flow.width));
    flow.paragraph(
      `These pages are drawn ${correctionText(printer)} so that this printer prints them true. On another printer they come out wrong.`,
    );
  }
  flow.heading('Measure both sides');
  flow.paragraph(
    `Both sides of the square must read ${squareMm} mm. The rules beside it must read ${ruleIn} in, across and up.`,
  );
  flow.paragraph(
    `Measure corner to corner too: both diagonals must read ${(squareMm * Math.SQRT2).toFixed(1)} mm, else the paper ran in askew.`,
  );
  flow.put(measuredItem(flow.say));
  flow.heading('If a side is short or long');
  flow.paragraph(
    'Do not cut foam from these pages. Look in the print window for “fit”, “shrink” or “scale” and set 100 %, check that it prints on ' +
      `${frame.paperName}, and print this page again. A desktop viewer is surer than a browser. ` +
      'If it is still off, type what you measured beside “printer” in the program: it draws the pages so that yours prints them true.',
  );
  flow.paragraph(
    `Every page of templates carries rules along its lower and its left edge: any of them can be checked by itself.`,
  );
}

/** `1.2 % larger across, 0.4 % smaller up`. */
function correctionText({ acrossShare, upShare, leanRad }: PrinterProfile): string {
  const say = (share: number, way: string): string => {
    const pct = (1 / share - 1) * 100;
    const text = Math.abs(pct).toFixed(2);
    return Number(text) === 0 ? `true ${way}` : `${text} % ${pct > 0 ? 'larger' : 'smaller'} ${way}`;
  };
  const deg = (-leanRad * 180) / Math.PI;
  const lean =
    Math.abs(deg) < 0.005 ? '' : `, leaning ${Math.abs(deg).toFixed(2)}° to the ${deg > 0 ? 'right' : 'left'}`;
  return `${say(acrossShare, 'across')}, ${say(upShare, 'up')}${lean}`;
}

/** Blanks to write what was measured into. */
function measuredItem(say: Say): FlowItem {
  const [across, up] = [say('across'), say('up')];
  // Where a word is longer than its room, what comes after it stands farther off.
  const first = Math.max(13, textWidthMm(across, TYPE_MM.body) + 1.5);
  const second = first + 17;
  return {
    heightMm: 9,
    gapMm: 2,
    draw: (pen: Pen, left: number, top: number) => {
      const y = top - 7;
      pen.write(across, { x: left, y });
      pen.line('frame', left + first, y - 0.6, left + first + 14, y - 0.6);
      pen.write(up, { x: left + second, y });
      const blank = left + second + Math.max(6, textWidthMm(up, TYPE_MM.body) + 1.5);
      pen.line('frame', blank, y - 0.6, blank + 14, y - 0.6);
    },
  };
}

function joiningText(overlapMm: number): string {
  if (overlapMm === 0)
    return 'Cut each page along its frame and tape the edges together so that crosses and ticks meet.';
  return (
    'Begin with A1, lower left. Cut the next page along its left and lower lines where they say so, lay it on the ' +
    `${overlapMm} mm strip of its neighbour so that crosses and ticks meet, and glue.`
  );
}
