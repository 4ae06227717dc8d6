import type { Say } from '../../base/paper-language.ts';
import { textWidthMm } from '../../geom/text-width.ts';
import type { PaperFrame } from './paper-frame.ts';
import { drawLevelRule } from './check-rules.ts';
import { TYPE_MM, type Pen } from './pen.ts';
import { clipText } from './text-fit.ts';

/** What stands along the lower edge of a page. */
export interface Foot {
  /** `map`, `2-B3` … */
  readonly pageName: string;
  readonly pageNumber: number;
  readonly pageCount: number;
  /** Project, revision, date. */
  readonly title: string;
  /** Pieces with their revisions, or what else the page should say. */
  readonly below: string;
  /** Height of the tile over the foot, which gets rules to check it by, mm; null: none. */
  readonly ruledHeightMm: number | null;
  readonly say: Say;
}

/** Baselines of the two lines over the margin, mm. */
const FIRST_LINE_MM = 4.9;
const SECOND_LINE_MM = 0.9;

/** White between the words and the page's name, mm. */
const GAP_MM = 5;

/**
 * Draws the foot: check rules along the line above and up the tile, two lines of words, and the page's name, large.
 *
 *     ├─┬─┬─┬─┬─┼─┬─┬─┬─┬─┤ 100 mm both ways, measure me
 *     Lamplighter shield · revision 4 · 2026-11-25 · page 7 of 12      2-B3
 *     Pieces: 1 a3f2, 4 99e1
 */
export function drawFoot(pen: Pen, frame: PaperFrame, foot: Foot): void {
  const { marginMm, tileWidthMm } = frame;
  const right = marginMm + tileWidthMm;
  const { say } = foot;
  const pageName = say(foot.pageName);
  const nameWidth = textWidthMm(pageName, TYPE_MM.name);
  pen.write(pageName, { x: right, y: marginMm + 1.9 }, { heightMm: TYPE_MM.name, align: 'right', bold: true });
  const room = tileWidthMm - nameWidth - GAP_MM;
  const page = say(`page ${foot.pageNumber} of ${foot.pageCount}`);
  const title = clipText(foot.title, TYPE_MM.body, room - textWidthMm(` · ${page}`, TYPE_MM.body));
  pen.write(title === '' ? page : `${title} · ${page}`, { x: marginMm, y: marginMm + FIRST_LINE_MM });
  pen.write(clipText(foot.below, TYPE_MM.body, room), { x: marginMm, y: marginMm + SECOND_LINE_MM });
  if (foot.ruledHeightMm !== null) drawLevelRule(pen, frame, foot.ruledHeightMm, say);
}

/** `1 a3f2, 4 99e1`, as many as fit in the width, then how many more. */
export function listThatFits(
  parts: readonly string[],
  heightMm: number,
  widthMm: number,
  rest: (count: number) => string,
): string {
  for (let kept = parts.length; kept > 0; kept -= 1) {
    const left = parts.length - kept;
    const text = parts.slice(0, kept).join(', ') + (left > 0 ? `, ${rest(left)}` : '');
    if (textWidthMm(text, heightMm) <= widthMm) return text;
  }
  return rest(parts.length);
}
