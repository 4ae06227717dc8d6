import { formatAngle, settingText, SQUARE_DEG } from '../base/lean-words.ts';
import { formatNumber, formatSixtyFourths, type LengthUnit } from '../base/format-length.ts';
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

/** To a tenth of a mm, however long: `1935.9`, `900`. */
function tenths(mm: number): string {
  const rounded = Math.round(10 * mm);
  return formatNumber(rounded / 10, rounded % 10 === 0 ? 0 : 1);
}

/** The same with its unit; in inches by sixty-fourths, the finest that steel rules show: in sixteenths a seam would be off by 0.8 mm. */
export const ruledLength = (mm: number, unit: LengthUnit): string =>
  unit === 'mm' ? `${tenths(mm)}\u00a0mm` : formatSixtyFourths(mm);

/** Lengths nearer than this are told as one, mm: half of what a rule shows. */
const SAME_MM = 0.05;

const isSame = (a: number, b: number): boolean => Math.abs(a - b) < SAME_MM;

/** Width, length and ends, each a clause: `25 mm wide, 2080 mm long, ends square`. */
export function ruledSizeText({ widthMm, lowerMm, upperFromMm, upperToMm }: RuledStrip, unit: LengthUnit): string {
  const length = (mm: number): string => ruledLength(mm, unit);
  const [left, right] = [upperFromMm, upperToMm - lowerMm];
  const long = isSame(upperToMm - upperFromMm, lowerMm)
    ? `${length(lowerMm)} long`
    : `${length(lowerMm)} long along its lower side, ${length(upperToMm - upperFromMm)} along its upper one`;
  if (isSame(left, 0) && isSame(right, 0)) return `${length(widthMm)} wide, ${long}, ends square`;
  const end = (name: string, shift: number): string =>
    isSame(shift, 0)
      ? `${name} end square`
      : `${name} end ${formatAngle(deg(Math.atan2(Math.abs(shift), widthMm)))} from square, its upper corner ${length(Math.abs(shift))} farther ${shift > 0 ? 'right' : 'left'} than its lower one`;
  return `${length(widthMm)} wide, ${long}; ${end('left', left)}; ${end('right', right)}`;
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

/** Where its lines and ticks stand, from the left end of its lower side, those of one kind together; empty where it has none. */
export function ruledMarksText({ marks, widthMm }: RuledStrip, unit: LengthUnit): string {
  const places = new Map<string, string[]>();
  const enter = (where: string, at: string): void => {
    places.set(where, [...(places.get(where) ?? []), at]);
  };
  for (const mark of marks) {
    const [where, at] = markPlace(mark, widthMm, unit);
    const isNumbered = where === LOWER || where === UPPER;
    const numbered = unit === 'mm' ? `${mark.text ?? ''} ${at}` : `${mark.text ?? ''}: ${at}`;
    enter(where, mark.text === undefined ? at : isNumbered ? numbered : `${at} (${mark.text})`);
  }
  const [lower, upper] = [places.get(LOWER), places.get(UPPER)];
  if (lower !== undefined && lower.join() === upper?.join()) {
    places.delete(LOWER);
    places.delete(UPPER);
    places.set('on both sides at', lower);
  }
  // The unit of mm stands once, behind the last; fractions of an inch are told apart by theirs.
  return [...places].map(([where, all]) => `${where} ${all.join(', ')}${unit === 'mm' ? '\u00a0mm' : ''}`).join('; ');
}

const LOWER = 'on the lower side at';
const UPPER = 'on the upper side at';

/** What kind of place a mark stands at, and where there. */
function markPlace({ from, to }: RuledMark, widthMm: number, unit: LengthUnit): readonly [string, string] {
  const length = (mm: number): string => (unit === 'mm' ? tenths(mm) : ruledLength(mm, unit));
  if (isSame(from.y, to.y) && !isSame(from.x, to.x))
    return ['along it', `${length(from.y)} above the lower side from ${length(from.x)} to ${length(to.x)}`];
  const [low, high] = from.y <= to.y ? [from, to] : [to, from];
  const isAcross = low.y < widthMm / 4 && high.y > (3 * widthMm) / 4;
  const side = isAcross ? 'across it at' : (low.y + high.y) / 2 < widthMm / 2 ? LOWER : UPPER;
  if (isSame(low.x, high.x)) return [side, length(low.x)];
  return [
    'askew',
    `from ${length(low.x)}, ${length(low.y)} above the lower side, to ${length(high.x)}, ${length(high.y)} above it`,
  ];
}

/** All of it, for a list. */
export const ruledText = (strip: RuledStrip, unit: LengthUnit): string =>
  [
    ruledSizeText(strip, unit),
    ruledLeansText(strip),
    strip.marks.length === 0 ? '' : `marks, from the left end of its lower side: ${ruledMarksText(strip, unit)}`,
  ]
    .filter((text) => text !== '')
    .join('; ');
