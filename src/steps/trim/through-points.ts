import { arcBetween, line, type CurveSegment, type OutlineSegment } from '../../geom/outline.ts';
import { cross2, sub2, type Vec2 } from '../../geom/vec.ts';

/** Share of the deviation that thinning may use: the rest is for what lies between the dense points. */
const THIN_SHARE = 0.5;

/**
 * The segment through dense points of a smooth curve: a straight line or an arc where all of them keep to it within half the deviation, else a curve that
 * keeps so many of them as it needs. Length and area are those of the dense points, made better by what an arc through each three has beyond its chords.
 * @param points  at least 3.
 */
export function throughPoints(points: readonly Vec2[], deviationMm: number): OutlineSegment {
  const from = points[0];
  const to = points[points.length - 1];
  const most = THIN_SHARE * deviationMm;
  if (points.every((p) => distance(p, from, to) <= most)) return line(from, to);
  const arc = arcThrough(points, most);
  if (arc !== null) return arc;
  return { kind: 'curve', from, to, points: thinned(points, most), deviationMm, ...sumsOf(points) };
}

function arcThrough(points: readonly Vec2[], most: number): OutlineSegment | null {
  const [from, to] = [points[0], points[points.length - 1]];
  const middle = points[points.length >> 1];
  // Turn of an arc through three points: twice the angle that the chord's ends turn at the middle one.
  const half = (a: Vec2, b: Vec2, c: Vec2): number => {
    const [u, v] = [sub2(b, a), sub2(c, b)];
    return Math.atan2(cross2(u, v), u.x * v.x + u.y * v.y);
  };
  const turn = 2 * half(from, middle, to);
  if (!(Math.abs(turn) > 1e-9 && Math.abs(turn) < 2 * Math.PI * 0.98)) return null;
  const arc = arcBetween(from, to, turn);
  const isOn = points.every((p) => Math.abs(Math.hypot(p.x - arc.centre.x, p.y - arc.centre.y) - arc.radius) <= most);
  return isOn ? arc : null;
}

function sumsOf(points: readonly Vec2[]): Pick<CurveSegment, 'lengthMm' | 'sweptMm2'> {
  let [lengthMm, sweptMm2] = [0, 0];
  for (let i = 1; i < points.length; i += 1) {
    const [p, q] = [points[i - 1], points[i]];
    const chord = Math.hypot(q.x - p.x, q.y - p.y);
    // Curvature from the turns at both ends of the chord.
    const turn = (turnAt(points, i - 1) + turnAt(points, i)) / 2;
    lengthMm += chord * (1 + turn ** 2 / 24);
    sweptMm2 += cross2(p, q) / 2 + (chord * chord * turn) / 12;
  }
  return { lengthMm, sweptMm2 };
}

function turnAt(points: readonly Vec2[], i: number): number {
  const at = Math.min(points.length - 2, Math.max(1, i));
  const [u, v] = [sub2(points[at], points[at - 1]), sub2(points[at + 1], points[at])];
  return Math.atan2(cross2(u, v), u.x * v.x + u.y * v.y);
}

/** Fewer points, none of those left out farther than `most` from the chords (Douglas and Peucker, "Algorithms for the reduction of points", 1973). */
function thinned(points: readonly Vec2[], most: number): readonly Vec2[] {
  const isKept = new Uint8Array(points.length);
  isKept[0] = isKept[points.length - 1] = 1;
  const open: [number, number][] = [[0, points.length - 1]];
  while (open.length > 0) {
    const [from, to] = open.pop() as [number, number];
    let [worst, far] = [-1, most];
    for (let i = from + 1; i < to; i += 1) {
      const off = distance(points[i], points[from], points[to]);
      if (off > far) [worst, far] = [i, off];
    }
    if (worst < 0) continue;
    isKept[worst] = 1;
    open.push([from, worst], [worst, to]);
  }
  return points.filter((_, i) => isKept[i] === 1);
}

function distance(p: Vec2, a: Vec2, b: Vec2): number {
  const along = sub2(b, a);
  const square = along.x * along.x + along.y * along.y;
  const to = sub2(p, a);
  const share = square > 0 ? Math.min(1, Math.max(0, (to.x * along.x + to.y * along.y) / square)) : 0;
  return Math.hypot(to.x - share * along.x, to.y - share * along.y);
}
