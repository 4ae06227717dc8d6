import type { Say } from '../../base/paper-language.ts';
import { doesSegmentMeetBox } from '../../geom/turned-box.ts';
import type { Words } from '../../model/template.ts';
import { FOOT_MM, type PaperFrame } from './paper-frame.ts';
import type { Pen } from './pen.ts';
import { turnedWordsBox } from './words-box.ts';

/*
 * Rules by which any page of templates is checked, of 100 mm or, on small paper, 50: one along the lower edge of the tile with ticks into the
 * foot, one up its left edge with short ticks into the tile. Nothing is drawn in the margin.
 */

const TICKS_EVERY_MM = 10;
const LONGEST_TICK_MM = 3;
/** Ticks inside the tile share it with the pieces. */
const UPRIGHT_TICK_SHARE = 0.5;

const levelLength = ({ tileWidthMm }: PaperFrame): number => (tileWidthMm >= 145 ? 100 : 50);

/** mm; 0 where a page of a roll is too low for one. */
function uprightLength(frame: PaperFrame, tileHeightMm: number): number {
  const length = tileHeightMm >= 100 ? levelLength(frame) : 50;
  return tileHeightMm >= length ? length : 0;
}

/** The rule along the lower edge, with what both measure. */
export function drawLevelRule(pen: Pen, frame: PaperFrame, tileHeightMm: number, say: Say): void {
  const { marginMm } = frame;
  const length = levelLength(frame);
  const up = uprightLength(frame, tileHeightMm);
  const y = marginMm + FOOT_MM;
  pen.line('ruler', marginMm, y, marginMm + length, y);
  for (let mm = 0; mm <= length; mm += TICKS_EVERY_MM)
    pen.line('ruler', marginMm + mm, y, marginMm + mm, y - tickOf(mm, length));
  const said = up === length ? `${length} mm both ways` : up === 0 ? `${length} mm` : `${length} mm, ${up} upright`;
  pen.write(say(said), { x: marginMm + length + 2, y: y - 3.3 });
}

/**
 * The rule up the left edge of the tile.
 * @param words of the pieces, page space: a tick that would run into one is left out.
 */
export function drawUprightRule(pen: Pen, frame: PaperFrame, tileHeightMm: number, words: readonly Words[]): void {
  const { marginMm: x } = frame;
  const length = uprightLength(frame, tileHeightMm);
  if (length === 0) return;
  const foot = x + FOOT_MM;
  const boxes = words.map(turnedWordsBox);
  pen.line('ruler', x, foot, x, foot + length);
  for (let mm = TICKS_EVERY_MM; mm <= length; mm += TICKS_EVERY_MM) {
    const end = x + UPRIGHT_TICK_SHARE * tickOf(mm, length);
    if (boxes.every((box) => !doesSegmentMeetBox(x, foot + mm, end, foot + mm, box)))
      pen.line('ruler', x, foot + mm, end, foot + mm);
  }
}

const tickOf = (mm: number, length: number): number =>
  mm % 100 === 0 || mm === length ? LONGEST_TICK_MM : mm % 50 === 0 ? 2.4 : 1.5;
