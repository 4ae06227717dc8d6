import type { Ring } from '../../geom/ring.ts';
import type { StackPiece } from '../../model/stack.ts';

/** Corners nearer than this are one, mm: cuts of one prism at two heights differ by the rounding of doubles and of the polygon grid alone. */
const SAME_MM = 1e-6;

/** Whether two pieces are cut and marked alike, so that either serves for the other: outline, openings, holes and placing lines. */
export function areAlike(a: StackPiece, b: StackPiece): boolean {
  return (
    sameRing(a.outer, b.outer) &&
    sameLists(a.openings, b.openings, sameRing) &&
    sameLists(a.placing, b.placing, sameRing) &&
    sameLists(
      a.holes,
      b.holes,
      (p, q) => p.kind === q.kind && near(p.x, q.x) && near(p.y, q.y) && near(p.radiusMm, q.radiusMm),
    )
  );
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_MM;

function sameLists<T>(a: readonly T[], b: readonly T[], same: (one: T, other: T) => boolean): boolean {
  return a.length === b.length && a.every((one) => b.some((other) => same(one, other)));
}

/** The same corners one after the other, wherever each begins; corners on a straight side are none. */
function sameRing(first: Ring, second: Ring): boolean {
  const [a, b] = [bentCorners(first), bentCorners(second)];
  if (a.length !== b.length) return false;
  for (let shift = 0; shift < b.length; shift += 2) {
    if (!near(a[0], b[shift]) || !near(a[1], b[shift + 1])) continue;
    if (a.every((value, i) => near(value, b[(i + shift) % b.length]))) return true;
  }
  return a.length === 0;
}

/** Corners that lie off the line between the last one kept and the next: sections of a prism cut the diagonals of its walls. */
function bentCorners(ring: Ring): readonly number[] {
  const kept: number[] = [];
  const count = ring.length / 2;
  for (let i = 0; i < count; i += 1) {
    const [before, next] = [kept.length > 0 ? kept.length - 2 : -1, (i + 1) % count];
    const [px, py] = before >= 0 ? [kept[before], kept[before + 1]] : [ring[2 * count - 2], ring[2 * count - 1]];
    const [dx, dy] = [ring[2 * next] - px, ring[2 * next + 1] - py];
    const [ex, ey] = [ring[2 * i] - px, ring[2 * i + 1] - py];
    const long = Math.hypot(dx, dy);
    const off = long > 0 ? Math.abs(dx * ey - dy * ex) / long : Math.hypot(ex, ey);
    if (off > SAME_MM || dx * ex + dy * ey < 0) kept.push(ring[2 * i], ring[2 * i + 1]);
  }
  return kept;
}
