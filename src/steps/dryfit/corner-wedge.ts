import { add3, cross3, dot3, length3, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { SeamEnd } from './seam-ends.ts';

/** The foam on one side of a plane: `normal . p <= at`, normal outward with length 1. */
export interface HalfSpace {
  readonly normal: Vec3;
  readonly at: number;
}

/** The foam at a corner of a piece: between its skins and the cuts of its two edges. */
export interface CornerWedge {
  /** What together is the foam there; two parts where the corner is hollow, one on the inside of either edge. */
  readonly parts: readonly (readonly HalfSpace[])[];
  /** The straight lines that bound it, as far as the cuts beside the corner run. */
  readonly lines: readonly (readonly [Vec3, Vec3])[];
}

/** Corners of a skin farther apart than this are two, and the piece is trimmed between them, mm. */
const TWO_POINTS_MM = 1e-6;

/**
 * @param arriving, leaving  of one corner of a piece, in the order of its ring.
 * @param reachMm            how far lines run on from the corner at most.
 */
export function cornerWedge(arriving: SeamEnd, leaving: SeamEnd, reachMm: number): CornerWedge {
  const ends = [arriving, leaving];
  const normal = unit3(add3(arriving.normal, leaving.normal));
  const [face, back] = (['face', 'back'] as const).map((skin) => middle(arriving.corner[skin], leaving.corner[skin]));
  const skins = [through(normal, face), through(scale3(normal, -1), back)];
  const cuts = ends.map(cutOf);
  const lines = [
    ...ends.flatMap(({ corner, next }) => [
      [corner.face, corner.back] as const,
      towards(corner.face, next.face, reachMm),
      towards(corner.back, next.back, reachMm),
    ]),
    [arriving.corner.face, leaving.corner.face] as const,
    [arriving.corner.back, leaving.corner.back] as const,
  ];
  if (isHollow(arriving, leaving)) return { parts: cuts.map((cut) => [...skins, cut]), lines };
  return { parts: [[...skins, ...cuts, ...trimOf(arriving, leaving)]], lines };
}

/** Whether a corner goes more than half round. */
export function isHollow(arriving: SeamEnd, leaving: SeamEnd): boolean {
  const [into, outOf] = [arriving, leaving].map(({ corner, next }) => sub3(next.face, corner.face));
  return dot3(add3(arriving.normal, leaving.normal), cross3(scale3(into, -1), outOf)) < 0;
}

/** The plane of a cut, through its line on the face and its corner on the back. */
function cutOf({ corner, next, outward }: SeamEnd): HalfSpace {
  const normal = unit3(cross3(sub3(next.face, corner.face), sub3(corner.back, corner.face)));
  return through(scale3(normal, dot3(normal, outward) < 0 ? -1 : 1), corner.face);
}

/** The plane that trims a corner whose edges do not meet on both skins. */
function trimOf(arriving: SeamEnd, leaving: SeamEnd): readonly HalfSpace[] {
  const across = (['face', 'back'] as const).map((skin) => sub3(leaving.corner[skin], arriving.corner[skin]));
  if (across.every((way) => length3(way) < TWO_POINTS_MM)) return [];
  const face = middle(arriving.corner.face, leaving.corner.face);
  const down = sub3(middle(arriving.corner.back, leaving.corner.back), face);
  const normal = unit3(cross3(add3(across[0], across[1]), down));
  const ways = [arriving, leaving].map(({ corner, next, outward }) =>
    sub3(outward, unit3(sub3(next.face, corner.face))),
  );
  return [through(scale3(normal, dot3(normal, add3(ways[0], ways[1])) < 0 ? -1 : 1), face)];
}

/** Corners that lie against each other are apart by what rounding leaves, mm. */
const TOUCHING_MM = 1e-9;

/** How deep the foam of two corners runs into each other, mm, 0 where it does not: the deepest point of a line of one within the other. */
export function depthInEachOther(a: CornerWedge, b: CornerWedge): number {
  const depth = Math.max(deepest(a, b), deepest(b, a));
  return depth > TOUCHING_MM ? depth : 0;
}

const deepest = ({ lines }: CornerWedge, { parts }: CornerWedge): number =>
  lines.reduce((most, line) => parts.reduce((deep, part) => Math.max(deep, deepestOn(line, part)), most), 0);

/**
 * The greatest depth of a line within half spaces. The depth in each goes straight along the line, so that the least of them is greatest at an end
 * or where two of them are equal.
 */
function deepestOn([from, to]: readonly [Vec3, Vec3], part: readonly HalfSpace[]): number {
  const depths = part.map(({ normal, at }) => [at - dot3(normal, from), at - dot3(normal, to)] as const);
  const stops = [0, 1];
  depths.forEach(([p0, p1], i) => {
    for (const [q0, q1] of depths.slice(i + 1)) {
      const f = (q0 - p0) / (p1 - p0 - (q1 - q0));
      if (f > 0 && f < 1) stops.push(f);
    }
  });
  return Math.max(...stops.map((f) => Math.min(...depths.map(([d0, d1]) => d0 + f * (d1 - d0)))));
}

export const through = (normal: Vec3, p: Vec3): HalfSpace => ({ normal, at: dot3(normal, p) });

const middle = (p: Vec3, q: Vec3): Vec3 => scale3(add3(p, q), 0.5);

/** The line from `p` towards `q`, no longer than `reachMm`. */
function towards(p: Vec3, q: Vec3, reachMm: number): readonly [Vec3, Vec3] {
  const way = sub3(q, p);
  return [p, add3(p, scale3(way, Math.min(1, reachMm / length3(way))))];
}
