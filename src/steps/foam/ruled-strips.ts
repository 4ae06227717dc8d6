import { formatAngle, SQUARE_DEG } from '../../base/lean-words.ts';
import { distanceToSegment } from '../../geom/distance-to-segment.ts';
import { chainPoints } from '../../geom/outline.ts';
import { deg, type Vec2 } from '../../geom/vec.ts';
import type { FoamStrip } from '../../model/foam-strip.ts';
import { isPlain, type CutBeside, type PlainDraft } from '../../model/plain-piece.ts';
import { RULED_SIDES, type RuledMark, type RuledSide, type RuledStrip } from '../../model/ruled-strip.ts';
import { isOneWidth } from './steep-words.ts';

/** Farthest that what is taken for straight, or for one width, may be off, mm: a tenth of what a knife can follow. */
const STRAIGHT_MM = 0.02;
/** Farthest that straight parts of an outline lie off its curve while it is looked at, mm. */
const CHORD_MM = 0.002;
/** A piece this many times as long as it is wide is a strip: it is ruled where a page does not hold it. */
const SLENDER = 4;
/** Any other of straight sides and one width is ruled where it is longer than so many pages [J]. */
const PAGES = 2;
/** More lines on it than these are printed sooner than told. */
const MOST_MARKS = 60;

/**
 * Strips that are cut by the ruler, for their paper would be long and all but empty: four straight sides of which two are parallel, and on it nothing but
 * straight lines.
 * @param pageMm  longer side of what a page shows, mm.
 */
export const ruledStrips = (beside: readonly CutBeside[], pageMm: number): readonly RuledStrip[] =>
  beside.flatMap((one) => {
    const strip = isPlain(one) ? ruledDraft(one) : ruledFoamStrip(one);
    if (strip === null) return [];
    const longMm = Math.max(strip.lowerMm, strip.upperToMm) - Math.min(0, strip.upperFromMm);
    const isRuled = longMm > pageMm && (longMm >= SLENDER * strip.widthMm || longMm > PAGES * pageMm);
    return isRuled ? [strip] : [];
  });

/** A strip at a seam, where its width does not change on the way. */
function ruledFoamStrip({ id, lengthMm, faceMm, backMm, bevelDeg }: FoamStrip): RuledStrip | null {
  if (!isOneWidth(faceMm) || !isOneWidth(backMm)) return null;
  return {
    piece: id,
    widthMm: faceMm.max,
    lowerMm: lengthMm,
    upperFromMm: 0,
    upperToMm: lengthMm,
    leansDeg: { lower: bevelDeg, right: 0, upper: bevelDeg, left: 0 },
    marks: [],
    notes: ['trim the ends in place'],
  };
}

/** A piece as a strip; null where it is none. */
function ruledDraft({
  id,
  draft,
  faceRings,
}: {
  readonly id: RuledStrip['piece'];
  readonly draft: PlainDraft;
  readonly faceRings: readonly Float64Array[];
}): RuledStrip | null {
  if (faceRings.length !== 1 || draft.lines.length > MOST_MARKS) return null;
  const corners = fourCorners(faceRings[0]);
  if (corners === null) return null;
  const begin = lowerSide(corners);
  if (begin === null) return null;
  const [a, b, c, d] = [0, 1, 2, 3].map((k) => corners[(begin + k) % 4]);
  const lowerMm = Math.hypot(b.x - a.x, b.y - a.y);
  const [ux, uy] = [(b.x - a.x) / lowerMm, (b.y - a.y) / lowerMm];
  const inStrip = ({ x, y }: Vec2): Vec2 => ({
    x: (x - a.x) * ux + (y - a.y) * uy,
    y: (y - a.y) * ux - (x - a.x) * uy,
  });
  const [right, left] = [inStrip(c), inStrip(d)];
  const leansDeg = leansOf(draft, [a, b, c, d]);
  const marks = draft.lines.map((line) => straightMark(line, inStrip));
  if (leansDeg === null || marks.includes(null)) return null;
  return {
    piece: id,
    widthMm: (right.y + left.y) / 2,
    lowerMm,
    upperFromMm: left.x,
    upperToMm: right.x,
    leansDeg,
    marks: marks.flatMap((mark) => (mark === null ? [] : [mark])).sort((one, other) => one.from.x - other.from.x),
    notes: [...draft.notes, ...grainNote(draft.grainRad, Math.atan2(uy, ux))],
  };
}

/** Corners of a ring of four straight sides, in its order; null where it is none. */
function fourCorners(ring: Float64Array): readonly Vec2[] | null {
  const all = Array.from({ length: ring.length / 2 }, (_, i) => ({ x: ring[2 * i], y: ring[2 * i + 1] }));
  const corners = [...all];
  for (let i = 0; i < corners.length && corners.length > 4;) {
    const [before, at, after] = [corners.at(i - 1), corners[i], corners[(i + 1) % corners.length]];
    if (before !== undefined && distanceToSegment(at.x, at.y, before.x, before.y, after.x, after.y) <= STRAIGHT_MM)
      corners.splice(i, 1);
    else i += 1;
  }
  if (corners.length !== 4) return null;
  const isOn = (p: Vec2): boolean => corners.some((from, k) => isBetween(p, from, corners[(k + 1) % 4]));
  return all.every(isOn) ? corners : null;
}

const isBetween = (p: Vec2, from: Vec2, to: Vec2): boolean =>
  distanceToSegment(p.x, p.y, from.x, from.y, to.x, to.y) <= STRAIGHT_MM;

/** Where the lower of two long parallel sides begins; null where the longest side has no parallel one. */
function lowerSide(corners: readonly Vec2[]): number | null {
  const way = (k: number): Vec2 => {
    const [from, to] = [corners[k % 4], corners[(k + 1) % 4]];
    return { x: to.x - from.x, y: to.y - from.y };
  };
  const lengths = [0, 1, 2, 3].map((k) => Math.hypot(way(k).x, way(k).y));
  const longest = lengths.indexOf(Math.max(...lengths));
  const [{ x, y }, from] = [way(longest), corners[longest]];
  const heights = [2, 3].map((k) => {
    const p = corners[(longest + k) % 4];
    return (x * (p.y - from.y) - y * (p.x - from.x)) / lengths[longest];
  });
  if (!(Math.abs(heights[0] - heights[1]) <= STRAIGHT_MM) || !(heights[0] > STRAIGHT_MM)) return null;
  // Of the two the one that runs to the right, or up.
  const runsRight = Math.abs(x) > Math.abs(y) ? x > 0 : y > 0;
  return runsRight ? longest : (longest + 2) % 4;
}

/** One lean for each side; null where a side has several, or its lean changes. */
function leansOf(draft: PlainDraft, corners: readonly Vec2[]): RuledStrip['leansDeg'] | null {
  const found = new Map<RuledSide, number>();
  // A leaning outline is drawn at another height than the face: which side an edge is on is told by its direction and its place among them.
  const reach = draft.thicknessMm * 2;
  for (const { segments, bevelDeg } of draft.outline) {
    if (
      Math.max(bevelDeg.from, bevelDeg.middle, bevelDeg.to) - Math.min(bevelDeg.from, bevelDeg.middle, bevelDeg.to) >=
      SQUARE_DEG
    )
      return null;
    const points = chainPoints(segments, CHORD_MM);
    const [from, to] = [points[0], points[points.length - 1]];
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const sides = RULED_SIDES.map((side, k) => ({ side, k, off: offSide(middle, corners[k], corners[(k + 1) % 4]) }));
    const parallel = sides.filter(({ k, off }) => off <= reach && isAlong(from, to, corners[k], corners[(k + 1) % 4]));
    const nearest = parallel.sort((one, other) => one.off - other.off)[0];
    if (nearest === undefined) return null;
    const known = found.get(nearest.side);
    if (known !== undefined && Math.abs(known - bevelDeg.middle) >= SQUARE_DEG) return null;
    found.set(nearest.side, bevelDeg.middle);
  }
  const [lower, right, upper, left] = RULED_SIDES.map((side) => found.get(side) ?? 0);
  return { lower, right, upper, left };
}

const offSide = (p: Vec2, from: Vec2, to: Vec2): number => distanceToSegment(p.x, p.y, from.x, from.y, to.x, to.y);

/** Whether one runs as the other does, to a thousandth: an end can never be taken for a side. */
function isAlong(from: Vec2, to: Vec2, a: Vec2, b: Vec2): boolean {
  const [ux, uy, vx, vy] = [to.x - from.x, to.y - from.y, b.x - a.x, b.y - a.y];
  return ux * vx + uy * vy > 0.999 * Math.hypot(ux, uy) * Math.hypot(vx, vy);
}

/** A line in the strip's own place; null where it is not straight. */
function straightMark(
  { points, closed, text }: PlainDraft['lines'][number],
  inStrip: (p: Vec2) => Vec2,
): RuledMark | null {
  const all = Array.from({ length: points.length / 2 }, (_, i) => inStrip({ x: points[2 * i], y: points[2 * i + 1] }));
  const [from, to] = [all[0], all[all.length - 1]];
  if (closed || from === undefined || !all.every((p) => isBetween(p, from, to))) return null;
  const [first, last] = from.x <= to.x ? [from, to] : [to, from];
  return { from: first, to: last, ...(text === undefined ? {} : { text }) };
}

/** How the sheet's length lies on it. @param alongRad  direction of its lower side. */
function grainNote(grainRad: number | undefined, alongRad: number): readonly string[] {
  if (grainRad === undefined) return [];
  const turn = ((deg(grainRad - alongRad) % 180) + 180) % 180;
  if (turn < SQUARE_DEG || turn > 180 - SQUARE_DEG) return ['the length of the sheet along it'];
  if (Math.abs(turn - 90) < SQUARE_DEG) return ['the length of the sheet across it'];
  return [`the length of the sheet turned ${formatAngle(turn)} from its lower side, counter-clockwise`];
}
