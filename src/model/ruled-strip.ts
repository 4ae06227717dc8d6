import { formatAngle, settingText, SQUARE_DEG } from '../base/lean-words.ts';
import { formatMm } from '../base/format-length.ts';
import type { PieceId } from '../base/ids.ts';
import { deg, type Vec2 } from '../geom/vec.ts';

/**
 * A straight strip of one width that is cut by the ruler and has no paper, as its traced face is seen: x runs along its lower side from that side's left
 * end, y across it. mm.
 *
 *        upperFrom             upperTo
 *            ┌────────────────────┐
 *           /                    /    widthMm
 *          └────────────────────┘
 *          0                 lowerMm
 */
export interface RuledStrip {
  readonly piece: PieceId;
  readonly widthMm: number;
  readonly lowerMm: number;
  readonly upperFromMm: number;
  readonly upperToMm: number;
  /** Lean of each side, degrees from square; positive: the back stands inside the face. */
  readonly leansDeg: Readonly<Record<RuledSide, number>>;
  readonly marks: readonly RuledMark[];
  /** Sentences that would stand on its paper. */
  readonly notes: readonly string[];
}

export const RULED_SIDES = ['lower', 'right', 'upper', 'left'] as const;
export type RuledSide = (typeof RULED_SIDES)[number];

/** A straight line on it, or a tick. */
export interface RuledMark {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly text?: string;
}

/** Lengths nearer than this are told as one, mm: half of what a rule shows. */
const SAME_MM = 0.05;

const isSame = (a: number, b: number): boolean => Math.abs(a - b) < SAME_MM;

/** Width, length and ends, each a clause: `25 mm wide, 2080 mm long, ends square`. */
export function ruledSizeText({ widthMm, lowerMm, upperFromMm, upperToMm }: RuledStrip): string {
  const [left, right] = [upperFromMm, upperToMm - lowerMm];
  const long = isSame(upperToMm - upperFromMm, lowerMm)
    ? `${formatMm(lowerMm)} long`
    : `${formatMm(lowerMm)} long along its lower side, ${formatMm(upperToMm - upperFromMm)} along its upper one`;
  if (isSame(left, 0) && isSame(right, 0)) return `${formatMm(widthMm)} wide, ${long}, ends square`;
  const end = (name: string, shift: number): string =>
    isSame(shift, 0)
      ? `${name} end square`
      : `${name} end ${formatAngle(deg(Math.atan2(Math.abs(shift), widthMm)))} from square, its upper corner ${formatMm(Math.abs(shift))} farther ${shift > 0 ? 'right' : 'left'} than its lower one`;
  return `${formatMm(widthMm)} wide, ${long}; ${end('left', left)}; ${end('right', right)}`;
}

/** How its sides lean, those alike together; empty where all are square. */
export function ruledLeansText({ leansDeg }: RuledStrip): string {
  const byLean = new Map<string, string[]>();
  for (const side of RULED_SIDES) {
    const lean = leansDeg[side];
    if (Math.abs(lean) < SQUARE_DEG) continue;
    const name = side === 'lower' || side === 'upper' ? `${side} side` : `${side} end`;
    byLean.set(settingText(lean), [...(byLean.get(settingText(lean)) ?? []), name]);
  }
  return [...byLean].map(([lean, names]) => `${names.join(', ')} ${lean}`).join('; ');
}

/** Where its lines and ticks stand, from the left end of its lower side; empty where it has none. */
export function ruledMarksText(strip: RuledStrip): string {
  const told = strip.marks.map((mark) => {
    const name = mark.text === undefined ? '' : `${mark.text}: `;
    return `${name}${markPlace(mark, strip.widthMm)}`;
  });
  return told.join('; ');
}

function markPlace({ from, to }: RuledMark, widthMm: number): string {
  const mm = (value: number): string => formatMm(Math.abs(value) < SAME_MM ? 0 : value);
  if (isSame(from.y, to.y) && !isSame(from.x, to.x))
    return `${mm(from.y)} above the lower side, from ${mm(Math.min(from.x, to.x))} to ${mm(Math.max(from.x, to.x))}`;
  const [low, high] = from.y <= to.y ? [from, to] : [to, from];
  const middle = (low.y + high.y) / 2;
  const isAcross = low.y < widthMm / 4 && high.y > (3 * widthMm) / 4;
  const where = isAcross ? '' : middle < widthMm / 2 ? ' on the lower side' : ' on the upper side';
  return isSame(low.x, high.x)
    ? `${mm(low.x)}${where}`
    : `${mm(low.x)} below to ${mm(high.x)} above${where === '' ? '' : `,${where}`}`;
}

/** All of it, for a list. */
export const ruledText = (strip: RuledStrip): string =>
  [
    ruledSizeText(strip),
    ruledLeansText(strip),
    strip.marks.length === 0 ? '' : `marks, from the left end of its lower side: ${ruledMarksText(strip)}`,
  ]
    .filter((text) => text !== '')
    .join('; ');
