import { fail, ok, type Result } from '../../base/result.ts';
import { runningIntegral } from '../../geom/integrate.ts';
import { curveThrough, line, type OutlineSegment } from '../../geom/outline.ts';
import { vec2, type Vec2 } from '../../geom/vec.ts';
import type { WindingPath } from './winding-path.ts';

/** Edges are followed by chords that stand off by no more than this, mm, as far as so many points serve. */
const DEVIATION_MM = 0.01;
const MOST_POINTS = 4000;

/** Laid flat it may turn by less than this, radians, or it would lie over itself. */
const MOST_HEADING = 1.8 * Math.PI;

/**
 * A strip in its true flat shape: its middle line with the curvature it has on the surface, one heading after the other, its edges half a width to
 * either side. On a cone that is exact; elsewhere the strip gives by what its own width is bent. Its ends are cut along the circles round the core.
 * @returns lower edge, end, upper edge, start; fails with `core/winding` where it would lie over itself.
 */
export function flatStrip(path: WindingPath, width: number): Result<readonly OutlineSegment[]> {
  const { parts, stripMm } = path;
  const middle: { readonly at: Vec2; readonly heading: number; readonly run: number }[] = [];
  let [x, y, heading] = [0, 0, 0];
  let mostCurve = 0;
  for (const part of parts)
    for (let i = 0; i <= 16; i += 1)
      mostCurve = Math.max(mostCurve, Math.abs(part.at(part.from + ((part.to - part.from) * i) / 16).curvature));
  const step = Math.sqrt((8 * DEVIATION_MM) / mostCurve);
  const [least, most] = [{ heading: 0 }, { heading: 0 }];
  for (const [k, part] of parts.entries()) {
    const long = part.run(part.to);
    const count = Math.min(MOST_POINTS, Math.max(16, Math.ceil(long / step)));
    const turn = runningIntegral((u) => part.at(u).curvature * part.at(u).stripPerMm, part.from, part.to, count);
    if (k > 0) heading += part.at(part.from).lead - parts[k - 1].at(parts[k - 1].to).lead;
    const [h0, x0, y0] = [heading, x, y];
    const along = (f: (angle: number) => number) =>
      runningIntegral((u) => f(h0 + turn(u)) * part.at(u).stripPerMm, part.from, part.to, count);
    const [right, up] = [along(Math.cos), along(Math.sin)];
    for (let i = k === 0 ? 0 : 1; i <= count; i += 1) {
      const u = i === count ? part.to : part.from + ((part.to - part.from) * i) / count;
      heading = h0 + turn(u);
      [x, y] = [x0 + right(u), y0 + up(u)];
      middle.push({ at: vec2(x, y), heading, run: part.runBefore + part.run(u) });
      least.heading = Math.min(least.heading, heading);
      most.heading = Math.max(most.heading, heading);
    }
  }
  if (most.heading - least.heading > MOST_HEADING)
    return fail(
      'core/winding',
      `Laid flat the strip of ${stripMm.toFixed(0)} mm curls over itself: cut it straight, keep it straight, or wind in parts.`,
    );
  const half = width / 2;
  const [first, last] = [middle[0], middle[middle.length - 1]];
  const aside = ({ at, heading: h }: (typeof middle)[number], off: number, ahead = 0): Vec2 =>
    vec2(at.x - off * Math.sin(h) + ahead * Math.cos(h), at.y + off * Math.cos(h) + ahead * Math.sin(h));
  const skew = (lead: number): number => half / Math.tan(lead);
  const [a, b] = [
    skew(parts[0].at(parts[0].from).lead),
    skew(parts[parts.length - 1].at(parts[parts.length - 1].to).lead),
  ];
  // Ends run on straight, or stop short, to where the circle round the core cuts the edge.
  const edge = (off: number, from: number, to: number): readonly Vec2[] => {
    const inner = middle.filter(({ run }) => run > Math.max(0, from) && run < stripMm + Math.min(0, to));
    return [aside(first, off, from), ...inner.map((one) => aside(one, off)), aside(last, off, to)];
  };
  const lower = edge(-half, a, b);
  const upper = [...edge(half, -a, -b)].reverse();
  const [l0, l1, u0, u1] = [lower[0], lower[lower.length - 1], upper[0], upper[upper.length - 1]];
  return ok([curveThrough(lower, DEVIATION_MM), line(l1, u0), curveThrough(upper, DEVIATION_MM), line(u1, l0)]);
}
