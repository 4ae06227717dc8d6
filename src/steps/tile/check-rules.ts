import { MM_PER_INCH, type LengthUnit } from '../../base/format-length.ts';
import type { Say } from '../../base/paper-language.ts';
import { doesSegmentMeetBox } from '../../geom/turned-box.ts';
import type { Words } from '../../model/template.ts';
import { FOOT_MM, type PaperFrame } from './paper-frame.ts';
import type { Pen } from './pen.ts';
import { turnedWordsBox } from './words-box.ts';

/*
 * Rules by which any page of templates is checked, of 100 mm or 4 in or, on small paper, half that: one along the lower edge of the tile with ticks
 * into the foot, one up its left edge with short ticks into the tile. Nothing is drawn in the margin.
 */

/** How a rule is ruled: how long it is on large and on small paper and where its ticks stand, in its unit, which is of so many mm. */
interface Ruling {
  readonly name: LengthUnit;
  readonly unitMm: number;
  readonly long: number;
  readonly short: number;
  readonly ticks: { readonly every: number; readonly middle: number; readonly whole: number };
}

const RULINGS: Readonly<Record<LengthUnit, Ruling>> = {
  mm: { name: 'mm', unitMm: 1, long: 100, short: 50, ticks: { every: 10, middle: 50, whole: 100 } },
  in: { name: 'in', unitMm: MM_PER_INCH, long: 4, short: 2, ticks: { every: 0.25, middle: 0.5, whole: 1 } },
};

const LONGEST_TICK_MM = 3;
/** Ticks inside the tile share it with the pieces. */
const UPRIGHT_TICK_SHARE = 0.5;
/** Narrowest tile that has room for the long rule and its words, mm. */
const ROOMY_MM = 145;

const levelLength = ({ tileWidthMm }: PaperFrame, { long, short }: Ruling): number =>
  tileWidthMm >= ROOMY_MM ? long : short;

/** In the units of the rule; 0 where a page of a roll is too low for one. */
function uprightLength(frame: PaperFrame, tileHeightMm: number, ruling: Ruling): number {
  const { unitMm, long, short } = ruling;
  const length = tileHeightMm >= long * unitMm ? levelLength(frame, ruling) : short;
  return tileHeightMm >= length * unitMm ? length : 0;
}

/** The rule along the lower edge, with what both measure. */
export function drawLevelRule(pen: Pen, frame: PaperFrame, tileHeightMm: number, say: Say): void {
  const { marginMm } = frame;
  const ruling = RULINGS[say.unit ?? 'mm'];
  const {
    name,
    unitMm,
    ticks: { every },
  } = ruling;
  const length = levelLength(frame, ruling);
  const up = uprightLength(frame, tileHeightMm, ruling);
  const y = marginMm + FOOT_MM;
  pen.line('ruler', marginMm, y, marginMm + length * unitMm, y);
  for (let at = 0; at <= length; at += every)
    pen.line('ruler', marginMm + at * unitMm, y, marginMm + at * unitMm, y - tickOf(at, length, ruling));
  const own = `${length} ${name}`;
  const said = up === length ? `${own} both ways` : up === 0 ? own : `${own}, ${up} upright`;
  pen.write(say(said), { x: marginMm + length * unitMm + 2, y: y - 3.3 });
}

/**
 * The rule up the left edge of the tile.
 * @param beside.words of the pieces, page space: a tick that would run into one is left out.
 */
export function drawUprightRule(
  pen: Pen,
  frame: PaperFrame,
  tileHeightMm: number,
  { words, say }: { readonly words: readonly Words[]; readonly say: Say },
): void {
  const { marginMm: x } = frame;
  const ruling = RULINGS[say.unit ?? 'mm'];
  const {
    unitMm,
    ticks: { every },
  } = ruling;
  const length = uprightLength(frame, tileHeightMm, ruling);
  if (length === 0) return;
  const foot = x + FOOT_MM;
  const boxes = words.map(turnedWordsBox);
  pen.line('ruler', x, foot, x, foot + length * unitMm);
  for (let at = every; at <= length; at += every) {
    const y = foot + at * unitMm;
    const end = x + UPRIGHT_TICK_SHARE * tickOf(at, length, ruling);
    if (boxes.every((box) => !doesSegmentMeetBox(x, y, end, y, box))) pen.line('ruler', x, y, end, y);
  }
}

const tickOf = (at: number, length: number, { ticks: { middle, whole } }: Ruling): number =>
  at % whole === 0 || at === length ? LONGEST_TICK_MM : at % middle === 0 ? 2.4 : 1.5;
