import { ringArea, type Ring } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { CutCorner } from './corner-cuts.ts';
import type { Skin } from './cut-edge.ts';

/** A corner of a cut line is found within this of where it is put together, mm: what rounding leaves. */
const SAME_PLACE_MM = 1e-6;

/** A corner of a line has no more points than this: its own, and those it was trimmed to. */
const MOST_POINTS = 4;

/**
 * Cuts corners off a piece's lines, on both skins.
 * @returns the same piece where none of them is its own. Corners that were cleaned away from its lines are left as they are.
 */
export function withCornersCut(piece: FoamPiece, cuts: readonly CutCorner[]): FoamPiece {
  let [traced, other] = [
    [piece.outline, ...piece.holes],
    [piece.otherOutline, ...piece.otherHoles],
  ];
  const done: CutCorner[] = [];
  for (const cut of cuts) {
    if (cut.before.arriving.piece !== piece.id) continue;
    const [skin, otherSkin]: readonly Skin[] = piece.tracedSide === 'face' ? ['face', 'back'] : ['back', 'face'];
    const [newTraced, newOther] = [cutOff(traced, cut, skin), cutOff(other, cut, otherSkin)];
    if (newTraced === null || newOther === null) continue;
    [traced, other] = [newTraced, newOther];
    done.push(cut);
  }
  if (done.length === 0) return piece;
  return {
    ...piece,
    outline: traced[0],
    holes: traced.slice(1),
    otherOutline: other[0],
    otherHoles: other.slice(1),
    areaMm2: traced.reduce((sum, ring) => sum + ringArea(ring), 0),
    cornerCuts: done.map(({ before: { arriving }, cutMm, wideMm }) => ({ vertex: arriving.vertex, cutMm, wideMm })),
  };
}

/** Rings with one corner replaced by its cut; null where no ring has the corner. */
function cutOff(rings: readonly Ring[], { before, after }: CutCorner, skin: Skin): Ring[] | null {
  const [from, to, newFrom, newTo] = [before.arriving, before.leaving, after.arriving, after.leaving].map(
    ({ flat }) => flat.corner[skin],
  );
  for (const [r, ring] of rings.entries()) {
    const count = ring.length / 2;
    const first = placeOf(ring, from);
    if (first < 0) continue;
    const between = Array.from({ length: Math.min(MOST_POINTS, count) }, (_, k) => k);
    const steps = between.find((k) => isAt(ring, (first + k) % count, to));
    if (steps === undefined) return null;
    if (newFrom === from && newTo === to) return [...rings];
    const kept = Array.from({ length: count - steps - 1 }, (_, k) => (first + steps + 1 + k) % count);
    const points = [...kept.map((i) => ({ x: ring[2 * i], y: ring[2 * i + 1] })), newFrom, newTo];
    return rings.with(r, Float64Array.from(points.flatMap(({ x, y }) => [x, y])));
  }
  return null;
}

function placeOf(ring: Ring, p: Vec2): number {
  for (let i = 0; i < ring.length / 2; i += 1) if (isAt(ring, i, p)) return i;
  return -1;
}

const isAt = (ring: Ring, i: number, { x, y }: Vec2): boolean =>
  Math.hypot(ring[2 * i] - x, ring[2 * i + 1] - y) < SAME_PLACE_MM;
