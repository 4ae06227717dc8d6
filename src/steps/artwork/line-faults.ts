import { fail, ok, type Result } from '../../base/result.ts';
import { orient2d } from '../../geom/predicates.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { EdgeNet } from './edge-net.ts';

/** Two lines that cross, or one that crosses itself: how often, and the first place. */
export interface Crossing {
  readonly lines: readonly [number, number];
  readonly count: number;
  readonly at: Vec2;
}

/** Two lines that lie over each other, or one over itself: how far, mm, and the first place. */
export interface Doubling {
  readonly lines: readonly [number, number];
  readonly lengthMm: number;
  readonly at: Vec2;
}

/** More crossings than any drawing that is meant to be cut. */
const MOST_CROSSINGS = 20_000;
/** Pairs of edges that are compared at most. */
const MOST_PAIRS = 30_000_000;
/** Pairs of lines that lie over each other at most: six hundred copies of one line. Each is remembered, and their number grows with the square. */
const MOST_DOUBLED = 200_000;

const tangled = (): Result<never> =>
  fail(
    'artwork/tangled',
    'Lines cross or lie beside each other too often to be followed: take hatching and patterns out of the drawing.',
  );

/** All proper crossings: each line passes from one side of the other to the other side. Exact signs. Fails with `artwork/tangled`. */
export function findCrossings(net: EdgeNet): Result<readonly Crossing[]> {
  const found = new Map<string, { lines: [number, number]; count: number; at: Vec2 }>();
  let [crossings, pairs] = [0, 0];
  for (let e = 0; e < net.count; e += 1) {
    const seen = new Set<number>();
    net.near(net.boxOf(e), (f) => {
      pairs += 1;
      if (f <= e || seen.has(f)) return;
      seen.add(f);
      const at = crossingOf(net.ends, e, f);
      if (at === null) return;
      crossings += 1;
      const [a, b] = [Math.min(net.lineOf[e], net.lineOf[f]), Math.max(net.lineOf[e], net.lineOf[f])];
      const known = found.get(`${a} ${b}`);
      if (known === undefined) found.set(`${a} ${b}`, { lines: [a, b], count: 1, at });
      else known.count += 1;
    });
    if (crossings > MOST_CROSSINGS || pairs > MOST_PAIRS) return tangled();
  }
  return ok([...found.values()]);
}

function crossingOf(ends: Float64Array, e: number, f: number): Vec2 | null {
  const [ax, ay, bx, by] = ends.subarray(4 * e, 4 * e + 4);
  const [cx, cy, dx, dy] = ends.subarray(4 * f, 4 * f + 4);
  if (Math.max(ax, bx) < Math.min(cx, dx) || Math.max(cx, dx) < Math.min(ax, bx)) return null;
  if (Math.max(ay, by) < Math.min(cy, dy) || Math.max(cy, dy) < Math.min(ay, by)) return null;
  const [c, d] = [orient2d(ax, ay, bx, by, cx, cy), orient2d(ax, ay, bx, by, dx, dy)];
  if (!((c > 0 && d < 0) || (c < 0 && d > 0))) return null;
  const [a, b] = [orient2d(cx, cy, dx, dy, ax, ay), orient2d(cx, cy, dx, dy, bx, by)];
  if (!((a > 0 && b < 0) || (a < 0 && b > 0))) return null;
  const share = c / (c - d);
  return { x: cx + share * (dx - cx), y: cy + share * (dy - cy) };
}

/** A doubled stretch is told from this length on, mm, or from this share of the shorter line: where curves only touch they run side by side a little. */
const LEAST_DOUBLED_MM = 1;
const LEAST_DOUBLED_SHARE = 0.1;

/**
 * Stretches along which two lines, or two parts of one, lie over each other. Looked at in places along each line: where another line lies no
 * farther than `withinMm`, and, on the same line, is far away along it. Fails with `artwork/tangled`.
 * @param withinMm  above twice the deviation of straight parts from their curves, > 0.
 */
export function findDoubled(net: EdgeNet, withinMm: number): Result<readonly Doubling[]> {
  const found = new Map<string, { lines: [number, number]; sums: [number, number]; at: Vec2 }>();
  let pairs = 0;
  for (let e = 0; e < net.count; e += 1) {
    const [ax, ay, bx, by] = net.ends.subarray(4 * e, 4 * e + 4);
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) continue;
    const line = net.lineOf[e];
    const others = new Set<number>();
    net.near(net.boxOf(e, withinMm), (f) => {
      pairs += 1;
      if (f !== e) others.add(f);
    });
    if (pairs > MOST_PAIRS) return tangled();
    const parts = Math.min(64, Math.max(4, Math.ceil(length / 2)));
    for (let k = 0; k < parts; k += 1) {
      const share = (k + 0.5) / parts;
      const p = { x: ax + share * (bx - ax), y: ay + share * (by - ay) };
      const along = net.before[e] + share * length;
      const partners = new Set<number>();
      for (const f of others) {
        pairs += 1;
        const other = net.lineOf[f];
        if (partners.has(other)) continue;
        const [cx, cy, dx, dy] = net.ends.subarray(4 * f, 4 * f + 4);
        const near = nearestOn(p, cx, cy, dx, dy);
        if (near.distance > withinMm) continue;
        if (other === line) {
          const apart = Math.abs(net.before[f] + near.share * Math.hypot(dx - cx, dy - cy) - along);
          if (Math.min(apart, net.lengths[line] - apart) < 4 * withinMm) continue;
        }
        partners.add(other);
      }
      for (const other of partners) {
        const [a, b] = [Math.min(line, other), Math.max(line, other)];
        const known = found.get(`${a} ${b}`) ?? { lines: [a, b], sums: [0, 0], at: p };
        found.set(`${a} ${b}`, known);
        known.sums[line === a ? 0 : 1] += length / parts;
      }
    }
    if (found.size > MOST_DOUBLED) return tangled();
  }
  const doubled: Doubling[] = [];
  for (const { lines, sums, at } of found.values()) {
    const [a, b] = lines;
    // Along one line both stretches were counted.
    const lengthMm = a === b ? sums[0] / 2 : Math.min(...sums);
    const least = Math.max(LEAST_DOUBLED_MM, LEAST_DOUBLED_SHARE * Math.min(net.lengths[a], net.lengths[b]));
    if (lengthMm >= least) doubled.push({ lines, lengthMm, at });
  }
  return ok(doubled);
}

/** Distance of a point from a straight part, and the share of it at which it is nearest. */
function nearestOn(p: Vec2, ax: number, ay: number, bx: number, by: number): { distance: number; share: number } {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const share = square > 0 ? Math.min(1, Math.max(0, ((p.x - ax) * dx + (p.y - ay) * dy) / square)) : 0;
  return { distance: Math.hypot(p.x - ax - share * dx, p.y - ay - share * dy), share };
}
