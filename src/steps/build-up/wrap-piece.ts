import { chainSweep, line } from '../../geom/outline.ts';
import { deg, vec2 } from '../../geom/vec.ts';
import { BEND_LIMITS } from '../../model/bend-check.ts';
import type { WrapSheet } from '../../model/build-up.ts';
import { leaningEdge, squareEdge } from '../../model/plain-edge.ts';
import type { PlainDraft, PlainLine } from '../../model/plain-piece.ts';

/** How far the edges of a thick sheet stay flat when it is rolled, in thicknesses [J]: nothing bends them there. */
const FLAT_EDGE_SHARE = 0.5;

/** Steepest lean of blade or saw table, degrees. */
const MOST_LEAN_DEG = 45;

/** Round the surface that keeps its length: pi (D + 2 k t), D across the inside, mm. */
export const wrapAround = (insideRadius: number, { thicknessMm, neutralFraction }: WrapSheet): number =>
  2 * Math.PI * (insideRadius + neutralFraction * thicknessMm);

/** What rolling does to the skin that gives most: the larger of `k t / R` and `(1 - k) t / R`, per cent, R the neutral radius. */
export const skinStrainPct = (insideRadius: number, { thicknessMm, neutralFraction }: WrapSheet): number =>
  (100 * Math.max(neutralFraction, 1 - neutralFraction) * thicknessMm) / (insideRadius + neutralFraction * thicknessMm);

/**
 * Blade lean of the two edges of a butt seam, degrees, positive: the back stands inside. A thick sheet does not bend up to its edge: over a stretch f
 * it stays flat, so both edges meet under the turn 2 f / R, half of which each takes. Thin sheets, whose skins give under 10 %, are cut square.
 */
export function seamBevelDeg(insideRadius: number, sheet: WrapSheet): number {
  if (skinStrainPct(insideRadius, sheet) <= BEND_LIMITS.noticePct) return 0;
  const radius = insideRadius + sheet.neutralFraction * sheet.thicknessMm;
  return Math.min(MOST_LEAN_DEG, deg((FLAT_EDGE_SHARE * sheet.thicknessMm) / radius));
}

/** How a wrap is parted to come from its sheet. */
export interface WrapParts {
  /** Alike round the core. */
  readonly around: number;
  /** Lengths along the core, mm, from its start. */
  readonly along: readonly number[];
}

/** Parts of a wrap at most, along and round. */
const MOST_ALONG = 40;
const MOST_AROUND = 12;

/**
 * As few parts as fit the sheet, either way round on it. Every second layer begins with half a part, so that no joint lies on another.
 * @param isOdd  the layer is one of these.
 * @returns null where no such number of parts fits.
 */
export function wrapParts(
  aroundMm: number,
  longMm: number,
  size: readonly [number, number] | undefined,
  isOdd: boolean,
): WrapParts | null {
  const whole = { around: 1, along: [longMm] };
  if (size === undefined) return whole;
  const fits = (w: number, l: number): boolean => (w <= size[0] && l <= size[1]) || (w <= size[1] && l <= size[0]);
  let best: { around: number; along: number } | null = null;
  for (let around = 1; around <= MOST_AROUND; around += 1)
    for (let along = 1; along <= MOST_ALONG; along += 1) {
      if (best !== null && around * along >= best.around * best.along) break;
      if (fits(aroundMm / around, longMm / along)) best = { around, along };
    }
  if (best === null) return null;
  const part = longMm / best.along;
  if (best.along === 1 || !isOdd) return { around: best.around, along: Array.from({ length: best.along }, () => part) };
  const inner = Array.from({ length: best.along - 1 }, () => part);
  return { around: best.around, along: [part / 2, ...inner, part / 2] };
}

/** A line across or along a wrap that tells where the next thing goes, or which way it lies. */
export interface WrapMark {
  readonly text: string;
  /** Round the core from the wrap's own seam, degrees, 0 to 360: a line along the core; or a place along the core, mm: a line round it. */
  readonly at: { readonly turnDeg: number } | { readonly alongMm: number };
}

interface WrapLook {
  readonly key: string;
  readonly name: string;
  readonly thicknessMm: number;
  readonly neutralFraction: number;
  /** Of the neutral surface. */
  readonly radiusMm: number;
  readonly quantity: number;
  readonly bevelDeg: number;
  readonly seam: string;
  readonly marks: readonly WrapMark[];
  readonly notes: readonly string[];
}

/** Length of the arrow that points to the core's end, mm, and its share of a short piece. */
const ARROW_MM = 40;
const ARROW_SHARE = 0.5;

/**
 * A wrap laid flat, seen from its face: x round the core, counter-clockwise as seen from the core's end, y along it to its end.
 * @param wide  round the core on the neutral surface, mm; of all of it where it is one part.
 * @param part  which share of the whole turn it is, 1 for all.
 */
export function wrapPiece(wide: number, long: number, part: number, look: WrapLook): PlainDraft {
  const [a, b, c, d] = [vec2(0, 0), vec2(wide, 0), vec2(wide, long), vec2(0, long)];
  const outline = [
    squareEdge('start rim', [line(a, b)]),
    leaningEdge('seam', [line(b, c)], look.bevelDeg, { seam: look.seam }),
    squareEdge('end rim', [line(c, d)]),
    leaningEdge('seam', [line(d, a)], look.bevelDeg, { seam: look.seam }),
  ];
  const lines = look.marks.flatMap(({ text, at }): readonly PlainLine[] => {
    if ('turnDeg' in at) {
      const x = (wide * at.turnDeg) / 360 / part;
      return x <= 0 || x >= wide ? [] : [mark('placement', [x, 0, x, long], text)];
    }
    return at.alongMm <= 0 || at.alongMm >= long ? [] : [mark('placement', [0, at.alongMm, wide, at.alongMm], text)];
  });
  return {
    key: look.key,
    name: look.name,
    quantity: look.quantity,
    thicknessMm: look.thicknessMm,
    drawnAt: look.neutralFraction,
    outline,
    holes: [],
    bend: { kind: 'rolled', leastRadiusMm: look.radiusMm, greatestRadiusMm: look.radiusMm },
    lines: [...arrow(wide / 2, long), ...lines],
    notes: look.notes,
    areaMm2: chainSweep(outline.flatMap(({ segments }) => segments)),
  };
}

/** Points to the core's end, in the middle of a piece of so much length. */
export function arrow(x: number, long: number, from = 0): readonly PlainLine[] {
  const size = Math.min(ARROW_MM, ARROW_SHARE * long);
  const [low, high] = [from + (long - size) / 2, from + (long + size) / 2];
  const head = size / 6;
  return [
    mark('mark', [x, low, x, high], 'to the end'),
    mark('mark', [x - head, high - 1.5 * head, x, high, x + head, high - 1.5 * head]),
  ];
}

export const mark = (role: PlainLine['role'], points: readonly number[], text?: string): PlainLine => ({
  role,
  points: Float64Array.from(points),
  closed: false,
  ...(text === undefined ? {} : { text }),
});
