import type { PieceId } from '../../base/ids.ts';
import { DRY_FIT_MM } from '../../base/tolerance.ts';
import { add3, dot3, length3, pointAt3, scale3, sub3, unit3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import { depthInEachOther, isHollow, through, type CornerWedge, type HalfSpace } from './corner-wedge.ts';
import type { Skin } from './cut-edge.ts';
import { cornersByVertex, haveSeamInCommon, type PieceCorner } from './piece-corners.ts';
import type { SeamEnd } from './seam-ends.ts';
import { MOST_CORNERS, wedgesOf } from './shared-corners.ts';

/** Corners of panels no deeper in each other than this are left as they are, mm: foam gives that much, and no hand cuts it. */
export const LEFT_TO_FOAM_MM = 0.02;

/** A corner of a piece that is cut back so that another finds room. */
export interface CutCorner {
  readonly before: PieceCorner;
  readonly after: PieceCorner;
  /** How far the tip came off, mm: the greatest way from it to the new line, on face or back. */
  readonly cutMm: number;
  /** Length of the new line, the longer of face and back, mm: no hole that is left is wider. */
  readonly wideMm: number;
}

/**
 * Frees corners that run into each other and share no seam (`sharedCorners`): each pair is parted by a plane, and what lies beyond it is cut
 * off. Of the planes that part them the one that takes least is chosen: the one on which both have gone equally far from the sculpt, as in
 * a seam; the one that halves the way from one to the other; or one the other piece ends on, and then one piece alone is cut.
 *
 *     face   a \    / b         equally far from the sculpt:  (n_a - n_b) . (x - v) = 0
 *             --\--/--
 *     back       \/             Cuts only take away, so that a pair that is free stays free.
 *
 * @param positions  of the sculpt's vertices, x y z.
 * @param isBent     whether a piece is bent: it gives with what closes under glue, and its long slivers are not worth a cut.
 */
export function cornerCuts(
  ends: readonly SeamEnd[],
  positions: Float64Array,
  isBent: (piece: PieceId) => boolean,
): readonly CutCorner[] {
  const cuts: CutCorner[] = [];
  for (const [vertex, corners] of cornersByVertex(ends)) {
    if (corners.length < 4 || corners.length > MOST_CORNERS) continue;
    const cut = freed(corners, pointAt3(positions, vertex), isBent);
    corners.forEach((before, i) => {
      if (cut[i] !== before) cuts.push({ before, after: cut[i], ...sizeOf(before, cut[i]) });
    });
  }
  return cuts;
}

/** A corner cut twice ends on a face that is not quite plane, and may need a third cut: pairs are gone through so often at most. */
const MOST_ROUNDS = 4;

function freed(corners: readonly PieceCorner[], v: Vec3, isBent: (piece: PieceId) => boolean): readonly PieceCorner[] {
  const cut = [...corners];
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    let isDone = true;
    for (const [i, j] of collidingPairs(cut, isBent)) {
      const parted = part(cut[i], cut[j], v);
      if (parted === null) continue;
      [cut[i], cut[j]] = parted;
      isDone = false;
    }
    if (isDone) break;
  }
  return cut;
}

/** The deepest first. */
function collidingPairs(
  corners: readonly PieceCorner[],
  isBent: (piece: PieceId) => boolean,
): readonly (readonly [number, number])[] {
  const pairs = corners.flatMap((a, i) =>
    corners.flatMap((b, j) => {
      if (j <= i || haveSeamInCommon(a, b)) return [];
      const overlapMm = depthInEachOther(...wedgesOf(a, b));
      const leftMm = [a, b].some(({ arriving }) => isBent(arriving.piece)) ? DRY_FIT_MM : LEFT_TO_FOAM_MM;
      return overlapMm > leftMm ? [{ i, j, overlapMm }] : [];
    }),
  );
  return pairs.sort((p, q) => q.overlapMm - p.overlapMm).map(({ i, j }) => [i, j]);
}

/** Two corners cut so that they are apart, by the least there is; null where they are apart or nothing parts them. */
function part(a: PieceCorner, b: PieceCorner, v: Vec3): readonly [PieceCorner, PieceCorner] | null {
  const [wedgeA, wedgeB] = wedgesOf(a, b);
  if (depthInEachOther(wedgeA, wedgeB) <= LEFT_TO_FOAM_MM) return null;
  let best: readonly [PieceCorner, PieceCorner] | null = null;
  let least = Infinity;
  const tryCut = (cutA: PieceCorner | null, cutB: PieceCorner | null): void => {
    if (cutA === null || cutB === null) return;
    const taken = sizeOf(a, cutA).cutMm + sizeOf(b, cutB).cutMm;
    if (taken >= least || depthInEachOther(...wedgesOf(cutA, cutB)) > LEFT_TO_FOAM_MM) return;
    [best, least] = [[cutA, cutB], taken];
  };
  for (const way of [sub3(normalOf(a), normalOf(b)), sub3(inwardOf(a), inwardOf(b))]) {
    if (length3(way) < LEAST_TURN) continue;
    for (const turn of [1, -1]) {
      const plane = through(scale3(unit3(way), turn), v);
      tryCut(cutBack(a, plane), cutBack(b, beyond(plane)));
    }
  }
  for (const plane of endsOf(a, wedgeA)) tryCut(a, cutBack(b, beyond(plane)));
  for (const plane of endsOf(b, wedgeB)) tryCut(cutBack(a, beyond(plane)), b);
  return best;
}

/** Two ways no longer apart than this tell no plane between them. */
const LEAST_TURN = 1e-6;

const beyond = ({ normal, at }: HalfSpace): HalfSpace => ({ normal: scale3(normal, -1), at: -at });

/** Planes with all foam of a corner on one side: of a hollow one only its skins, which come first. */
const endsOf = (corner: PieceCorner, { parts }: CornerWedge): readonly HalfSpace[] =>
  isHollow(corner.arriving, corner.leaving) ? parts[0].slice(0, 2) : parts[0];

const normalOf = ({ arriving, leaving }: PieceCorner): Vec3 => unit3(add3(arriving.normal, leaving.normal));

/** The way into the piece, between its two edges. */
function inwardOf({ arriving, leaving }: PieceCorner): Vec3 {
  const [p, q] = [arriving, leaving].map(({ corner, next }) => unit3(sub3(next.face, corner.face)));
  return scale3(add3(p, q), isHollow(arriving, leaving) ? -1 : 1);
}

const SKINS = ['face', 'back'] as const;

/** A place nearer to a plane than this lies on it, mm. */
const ON_PLANE_MM = 1e-9;

/** What is left of a corner within a half space; null where the cut would run on past the edges beside the corner. */
function cutBack({ arriving, leaving }: PieceCorner, { normal, at }: HalfSpace): PieceCorner | null {
  const outside = (p: Vec3): number => dot3(normal, p) - at;
  let [first, last] = [arriving, leaving];
  for (const skin of SKINS) {
    const ends = [first, last];
    if (ends.some(({ next }) => outside(next[skin]) > -ON_PLANE_MM)) return null;
    [first, last] = ends.map((end) => {
      const [here, there] = [outside(end.corner[skin]), outside(end.next[skin])];
      return here <= ON_PLANE_MM ? end : shortened(end, skin, here / (here - there));
    });
  }
  return { arriving: first, leaving: last };
}

/** An end whose line on one skin begins a share farther on. */
function shortened(end: SeamEnd, skin: Skin, share: number): SeamEnd {
  const { corner, next, flat } = end;
  const inSpace = add3(corner[skin], scale3(sub3(next[skin], corner[skin]), share));
  const [p, q] = [flat.corner[skin], flat.next[skin]];
  const onFlat = { x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y) };
  return {
    ...end,
    corner: { ...corner, [skin]: inSpace },
    flat: { ...flat, corner: { ...flat.corner, [skin]: onFlat } },
  };
}

function sizeOf(before: PieceCorner, after: PieceCorner): { readonly cutMm: number; readonly wideMm: number } {
  let [cutMm, wideMm] = [0, 0];
  for (const skin of SKINS) {
    const [p, q] = [after.arriving, after.leaving].map(({ flat }) => flat.corner[skin]);
    const tips = [before.arriving, before.leaving].map(({ flat }) => flat.corner[skin]);
    if (tips[0] === p && tips[1] === q) continue;
    cutMm = Math.max(cutMm, ...tips.map((tip) => awayFrom(tip, p, q)));
    wideMm = Math.max(wideMm, Math.hypot(q.x - p.x, q.y - p.y));
  }
  return { cutMm, wideMm };
}

/** From a point to the line between two others, mm. */
function awayFrom({ x, y }: Vec2, p: Vec2, q: Vec2): number {
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  const square = dx * dx + dy * dy;
  const f = square > 0 ? Math.min(1, Math.max(0, ((x - p.x) * dx + (y - p.y) * dy) / square)) : 0;
  return Math.hypot(x - p.x - f * dx, y - p.y - f * dy);
}
