import type { Stepwise } from '../../base/stepwise.ts';
import { orient2d } from '../../geom/predicates.ts';
import type { Stroke } from '../../geom/svg-path.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { Surface } from '../surface.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';
import {
  distanceInSpace,
  isSamePoint,
  placeOf,
  pointInTriangle,
  pointOnHalfedge,
  sharedTriangle,
  withoutDoubles,
  type Weights,
} from './mesh-point.ts';
import { SeenGrid } from './seen-grid.ts';
import { seeSurface, shareOnSurface, weightsOnSurface, type DrawingView, type SeenSurface } from './view-projection.ts';

/** A stroke brought onto the surface. */
export interface ProjectedStroke {
  /** The parts of it that meet the surface, in order; each is unbroken. */
  readonly lines: readonly MeshLine[];
  /** Share of the stroke's length, as it is drawn, that met nothing. */
  readonly missedShare: number;
}

/** One triangle under a straight piece of the stroke: from `start` to `end`, shares of the piece. */
interface Span {
  readonly triangle: number;
  readonly start: number;
  readonly end: number;
  readonly startPoint: SeenEnd;
  readonly endPoint: SeenEnd;
}

/** Where a span begins or ends: on a side of its triangle, or inside it at an end of the piece. */
interface SeenEnd {
  readonly depth: number;
  readonly point: MeshPoint;
  readonly seen: Weights;
}

/** Distance in space, as a share of how far out it is, under which two ends are one: the rounding of projection and back. */
const SAME_SHARE = 1e-8;

/**
 * Brings a stroke of a drawing onto the surface along the lines of sight, on the first surface each of them meets: what lies behind is not
 * drawn on. Each straight piece of the stroke is cut exactly with the triangles it is seen over; a corner of the surface on the piece counts
 * as on its left, so both triangles at a side agree. Where the surface turns away and another one shows behind it, the line breaks off and goes on there.
 */
export function* projectStrokeSteps(
  surface: Surface,
  view: DrawingView,
  strokes: readonly Stroke[],
): Stepwise<readonly ProjectedStroke[]> {
  const seen = seeSurface(surface, view);
  yield;
  const grid = yield* SeenGrid.steps(surface, seen);
  const projected: ProjectedStroke[] = [];
  for (const stroke of strokes) {
    const builder = new LineBuilder(surface);
    const count = stroke.closed ? stroke.points.length : stroke.points.length - 1;
    let [met, length] = [0, 0];
    for (let i = 0; i < count; i += 1) {
      const [a, b] = [stroke.points[i], stroke.points[(i + 1) % stroke.points.length]];
      const size = Math.hypot(b.x - a.x, b.y - a.y);
      length += size;
      const spans = grid.along(a.x, a.y, b.x, b.y).flatMap((t) => spanOver(surface, seen, t, a, b));
      for (const { span, start, end } of nearestSpans(spans)) {
        met += size * (end - start);
        builder.add(pointOf(surface, seen, span, start), pointOf(surface, seen, span, end));
      }
      yield;
    }
    const missedShare = length > 0 ? Math.max(0, 1 - met / length) : 1;
    projected.push({ lines: builder.lines(stroke.closed), missedShare: missedShare < SAME_SHARE ? 0 : missedShare });
  }
  return projected;
}

/** The part of a piece from a to b that is seen over a triangle; none where it passes by or only touches. */
function spanOver(surface: Surface, seen: SeenSurface, triangle: number, a: Vec2, b: Vec2): Span[] {
  const { x, y } = seen;
  const corners = [...surface.triangles.subarray(3 * triangle, 3 * triangle + 3)];
  const side = corners.map((v) => orient2d(a.x, a.y, b.x, b.y, x[v], y[v]));
  const cuts: { at: number; end: SeenEnd }[] = [];
  for (let k = 0; k < 3; k += 1) {
    const j = (k + 1) % 3;
    if (side[k] >= 0 !== side[j] >= 0) cuts.push(cutSide(surface, seen, 3 * triangle + k, side[k], side[j], a, b));
  }
  if (cuts.length !== 2) return [];
  const [first, last] = cuts[0].at <= cuts[1].at ? cuts : [cuts[1], cuts[0]];
  const [start, end] = [Math.max(0, first.at), Math.min(1, last.at)];
  if (!(end > start)) return [];
  const at = (p: Vec2): SeenEnd => endInside(surface, seen, triangle, corners, p);
  return [
    {
      triangle,
      start,
      end,
      startPoint: first.at >= 0 ? first.end : at(a),
      endPoint: last.at <= 1 ? last.end : at(b),
    },
  ];
}

/** Where the line through a and b goes over a side: worked out from the side's lower vertex, so that both triangles beside it agree. */
function cutSide(
  surface: Surface,
  seen: SeenSurface,
  h: number,
  fromSide: number,
  toSide: number,
  a: Vec2,
  b: Vec2,
): { at: number; end: SeenEnd } {
  const [k, j] = [h % 3, (h + 1) % 3];
  const [v, w] = [surface.triangles[h], surface.triangles[h - k + j]];
  const isUp = v < w;
  const [low, high] = isUp ? [v, w] : [w, v];
  const [lowSide, highSide] = isUp ? [fromSide, toSide] : [toSide, fromSide];
  const share = lowSide / (lowSide - highSide);
  const mix = (values: Float64Array): number =>
    share === 1 ? values[high] : values[low] + share * (values[high] - values[low]);
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const at = ((mix(seen.x) - a.x) * dx + (mix(seen.y) - a.y) * dy) / (dx * dx + dy * dy);
  const onSurface = shareOnSurface(seen, low, high, share);
  const weights: [number, number, number] = [0, 0, 0];
  weights[k] = isUp ? 1 - share : share;
  weights[j] = isUp ? share : 1 - share;
  const point = pointOnHalfedge(surface, h, isUp ? onSurface : 1 - onSurface);
  return { at, end: { depth: mix(seen.depth), point, seen: weights } };
}

/** A place of the drawing inside a triangle as it is seen: the same whichever piece of the stroke asks. */
function endInside(
  surface: Surface,
  seen: SeenSurface,
  triangle: number,
  corners: readonly number[],
  p: Vec2,
): SeenEnd {
  const { x, y, depth } = seen;
  const [a, b, c] = corners;
  const [ofA, ofB, ofC] = [
    orient2d(x[b], y[b], x[c], y[c], p.x, p.y),
    orient2d(x[c], y[c], x[a], y[a], p.x, p.y),
    orient2d(x[a], y[a], x[b], y[b], p.x, p.y),
  ];
  const sum = ofA + ofB + ofC;
  // A triangle seen edge on has no inside: its middle is as good a place as any.
  const share = (part: number): number => Math.max(0, sum === 0 ? 1 / 3 : part / sum);
  const weights: Weights = [share(ofA), share(ofB), share(ofC)];
  return {
    depth: weights[0] * depth[a] + weights[1] * depth[b] + weights[2] * depth[c],
    point: pointInTriangle(surface, triangle, weightsOnSurface(seen, corners, weights)),
    seen: weights,
  };
}

/** The point of a span at a share of the piece: its ends as they are, else between them as it is seen. */
function pointOf(surface: Surface, seen: SeenSurface, span: Span, at: number): MeshPoint {
  if (at === span.start) return span.startPoint.point;
  if (at === span.end) return span.endPoint.point;
  const share = (at - span.start) / (span.end - span.start);
  const [from, to] = [span.startPoint.seen, span.endPoint.seen];
  const mix = (k: number): number => from[k] + share * (to[k] - from[k]);
  const corners = [...surface.triangles.subarray(3 * span.triangle, 3 * span.triangle + 3)];
  return pointInTriangle(surface, span.triangle, weightsOnSurface(seen, corners, [mix(0), mix(1), mix(2)]));
}

/** What is seen of the spans of one piece: at every place the nearest, as stretches in order. */
function nearestSpans(spans: readonly Span[]): { span: Span; start: number; end: number }[] {
  const cuts = [...new Set(spans.flatMap(({ start, end }) => [start, end]))].sort((a, b) => a - b);
  const byStart = [...spans].sort((a, b) => a.start - b.start || a.triangle - b.triangle);
  const parts: { span: Span; start: number; end: number }[] = [];
  let active: Span[] = [];
  let next = 0;
  for (let i = 0; i + 1 < cuts.length; i += 1) {
    const [from, to] = [cuts[i], cuts[i + 1]];
    while (next < byStart.length && byStart[next].start <= from) active.push(byStart[next++]);
    active = active.filter(({ end }) => end >= to);
    let best: Span | null = null;
    let least = Infinity;
    for (const span of active) {
      const share = ((from + to) / 2 - span.start) / (span.end - span.start);
      const depth = span.startPoint.depth + share * (span.endPoint.depth - span.startPoint.depth);
      if (depth < least) [best, least] = [span, depth];
    }
    if (best === null) continue;
    const last = parts[parts.length - 1];
    if (last !== undefined && last.span === best && last.end === from) last.end = to;
    else parts.push({ span: best, start: from, end: to });
  }
  return parts;
}

/** Joins straight pieces, each within one triangle, into unbroken lines. */
class LineBuilder {
  readonly #surface: Surface;
  readonly #lines: MeshPoint[][] = [];

  constructor(surface: Surface) {
    this.#surface = surface;
  }

  add(from: MeshPoint, to: MeshPoint): void {
    const line = this.#lines[this.#lines.length - 1];
    if (line !== undefined && this.#joins(line[line.length - 1], from)) line.push(...this.#from(line, from, to));
    else this.#lines.push([from, to]);
  }

  /** @param closed  whether the stroke is: then the last line may go on in the first. */
  lines(closed: boolean): MeshLine[] {
    const lines = this.#lines.map((points) => withoutDoubles(points, false)).filter((points) => points.length > 1);
    const [first, last] = [lines[0], lines[lines.length - 1]];
    if (!closed || first === undefined || !this.#joins(last[last.length - 1], first[0]))
      return lines.map((points) => ({ points, closed: false }));
    if (lines.length === 1) {
      // The last point lies on the first, or so near it that it may go where the one before it leads there as well.
      const before = first[first.length - 2];
      const isSpare =
        isSamePoint(first[0], last[last.length - 1]) || sharedTriangle(this.#surface, before, first[0]) >= 0;
      const points = withoutDoubles(isSpare ? first.slice(0, -1) : first, true);
      return [{ points, closed: points.length > 2 }];
    }
    const joined = withoutDoubles([...last, ...this.#from(last, first[0], first[1]), ...first.slice(2)], false);
    return [joined, ...lines.slice(1, -1)].map((points) => ({ points, closed: false }));
  }

  #joins(p: MeshPoint, q: MeshPoint): boolean {
    if (isSamePoint(p, q)) return true;
    const { x, y, z } = placeOf(this.#surface, p);
    const size = Math.max(1, Math.abs(x), Math.abs(y), Math.abs(z));
    return distanceInSpace(this.#surface, p, q) < SAME_SHARE * size && sharedTriangle(this.#surface, p, q) >= 0;
  }

  /** What is added to a line so that consecutive points share a triangle. */
  #from(line: readonly MeshPoint[], from: MeshPoint, to: MeshPoint): MeshPoint[] {
    const last = line[line.length - 1];
    return isSamePoint(last, from) || sharedTriangle(this.#surface, last, to) >= 0 ? [to] : [from, to];
  }
}
