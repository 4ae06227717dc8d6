import { fail, ok, type Result } from '../base/result.ts';
import type { Stepwise } from '../base/stepwise.ts';
import type { Stroke } from '../geom/svg-path.ts';
import { cross3, dot3, length3, scale3, sub3, vec3, type Vec3 } from '../geom/vec.ts';
import { headingTowards, type Heading } from '../mesh/lines/heading.ts';
import { lineThrough } from '../mesh/lines/line-through.ts';
import type { MeshLine, MeshPoint } from '../mesh/lines/mesh-line.ts';
import {
  distanceInSpace,
  lineLength,
  placeOf,
  pointAtPlace,
  sharedTriangle,
  trianglesAt,
  withoutDoubles,
} from '../mesh/lines/mesh-point.ts';
import { projectStrokeSteps } from '../mesh/lines/projected-line.ts';
import { wrapStrokeSteps } from '../mesh/lines/wrapped-line.ts';
import { triangleNormal } from '../mesh/measure.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { MirrorPlane } from '../mesh/mirror/mirror-plane.ts';
import { surfaceOf, type Surface } from '../mesh/surface.ts';
import { surfaceTreeOf } from '../mesh/surface-tree.ts';
import type { LayWish } from './drawing-api.ts';

/** Where a drawing breaks over an outline, scraps shorter than this part nothing, mm. */
const SCRAP_MM = 0.5;
/** An outline whose ends come this near is closed without another piece, mm: a tenth of a cut. */
const CLOSED_MM = 0.05;
/** Share of a direction that must lie in the surface for it to show a way there: within 6 degrees of square it says nothing. */
const LEAST_SLANT = 0.1;

/** A drawing in its size and turn, to be laid on the mesh itself. */
export interface MeshLay {
  readonly strokes: readonly Stroke[];
  readonly start: MeshPoint;
  readonly way:
    | { readonly by: 'seen'; readonly right: Vec3; readonly up: Vec3 }
    | { readonly by: 'round'; readonly ups: readonly Vec3[] };
}

export interface LaidLines {
  readonly lines: readonly MeshLine[];
  readonly missedShare: number;
  readonly closedByMm: number;
}

/** @param start  where the place lies on the mesh. */
export function layOnMesh({ strokes, size, turnRad, shiftMm, way }: LayWish, start: MeshPoint): MeshLay {
  const [c, s] = [size * Math.cos(turnRad), size * Math.sin(turnRad)];
  const moved = strokes.map(({ points, closed }) => ({
    points: points.map(({ x, y }) => ({ x: c * x - s * y + shiftMm[0], y: s * x + c * y + shiftMm[1] })),
    closed,
  }));
  return {
    strokes: moved,
    start,
    way:
      way.by === 'seen'
        ? { by: 'seen', right: vec3(...way.right), up: vec3(...way.up) }
        : { by: 'round', ups: way.ups.map((up) => vec3(...up)) },
  };
}

/** The same beyond the mirror, the drawing turned over with it. */
export function mirroredLay(mesh: Mesh, { normal, at }: MirrorPlane, { strokes, start, way }: MeshLay): MeshLay {
  const surface = surfaceOf(mesh);
  const turned = (d: Vec3): Vec3 => sub3(d, scale3(normal, 2 * dot3(normal, d)));
  const place = placeOf(surface, start);
  const hit = surfaceTreeOf(mesh).nearest(sub3(place, scale3(normal, 2 * (dot3(normal, place) - at))));
  return {
    strokes: strokes.map(({ points, closed }) => ({ points: points.map(({ x, y }) => ({ x: -x, y })), closed })),
    start: hit === null ? start : pointAtPlace(surface, hit.triangle, hit.point),
    // The drawing is turned over already: its right must point so that it is still looked at from outside.
    way:
      way.by === 'seen'
        ? { by: 'seen', right: scale3(turned(way.right), -1), up: turned(way.up) }
        : { by: 'round', ups: way.ups.map(turned) },
  };
}

/** Fails with `drawing/missed` where nothing of it lies on the sculpt. */
export function* laySteps(surface: Surface, { strokes, start, way }: MeshLay): Stepwise<Result<LaidLines>> {
  const laid =
    way.by === 'seen'
      ? yield* seenSteps(surface, strokes, placeOf(surface, start), way.right, way.up)
      : yield* roundSteps(surface, strokes, start, way.ups);
  return laid.lines.length > 0
    ? ok(laid)
    : fail('drawing/missed', 'Nothing of the drawing lies on the sculpt there: move it, or make it smaller.');
}

function* seenSteps(surface: Surface, strokes: readonly Stroke[], origin: Vec3, u: Vec3, v: Vec3): Stepwise<LaidLines> {
  const projected = yield* projectStrokeSteps(surface, { origin, u, v }, strokes);
  const lines = projected.flatMap(({ lines: parts }) =>
    parts.filter((line) => parts.length === 1 || lineLength(surface, line) >= SCRAP_MM),
  );
  const lengths = strokes.map(lengthOf);
  const missed = projected.reduce((sum, { missedShare }, i) => sum + missedShare * lengths[i], 0);
  return { lines, missedShare: shareOf(missed, lengths), closedByMm: 0 };
}

function* roundSteps(
  surface: Surface,
  strokes: readonly Stroke[],
  start: MeshPoint,
  ups: readonly Vec3[],
): Stepwise<LaidLines> {
  const heading = headingOf(surface, start, ups);
  const lines: MeshLine[] = [];
  let [laidMm, closedByMm] = [0, 0];
  for (const stroke of heading === null ? [] : strokes) {
    const wrapped = yield* wrapStrokeSteps(surface, start, heading as Heading, stroke, { x: 0, y: 0 });
    laidMm += wrapped.lengthMm;
    if (wrapped.line.points.length > 1) {
      const { line, byMm } =
        stroke.closed && !wrapped.isAtOpenEdge ? closed(surface, wrapped.line) : { ...wrapped, byMm: 0 };
      lines.push(line);
      closedByMm = Math.max(closedByMm, byMm);
    }
    yield;
  }
  const lengths = strokes.map(lengthOf);
  return {
    lines,
    missedShare: shareOf(
      lengths.reduce((sum, one) => sum + one, -laidMm),
      lengths,
    ),
    closedByMm,
  };
}

/** Where the drawing's x points at a place so that its y goes up. */
function headingOf(surface: Surface, start: MeshPoint, ups: readonly Vec3[]): Heading | null {
  const normal = triangleNormal(surface.positions, surface.triangles, trianglesAt(surface, start)[0]);
  const right = ups.map((up) => cross3(up, normal)).find((way) => length3(way) >= LEAST_SLANT);
  return right === undefined ? null : headingTowards(surface, start, right);
}

/** An outline closed again, and how far its ends stood apart, mm. Laid over a dome they do; a shortest line joins them. */
function closed(surface: Surface, line: MeshLine): { line: MeshLine; byMm: number } {
  const { points } = line;
  const [first, last] = [points[0], points[points.length - 1]];
  const byMm = distanceInSpace(surface, first, last);
  if (byMm < CLOSED_MM && points.length > 3 && sharedTriangle(surface, points[points.length - 2], first) >= 0)
    return { line: { points: withoutDoubles(points.slice(0, -1), true), closed: true }, byMm: 0 };
  const join = lineThrough(surface, [last, first], false);
  if (!join.ok) return { line, byMm: 0 };
  const all = withoutDoubles([...points, ...join.value.points.slice(1, -1)], true);
  return { line: { points: all, closed: all.length > 2 }, byMm: byMm < CLOSED_MM ? 0 : byMm };
}

function lengthOf({ points, closed: isClosed }: Stroke): number {
  const all = isClosed ? [...points, points[0]] : points;
  return all.slice(1).reduce((sum, p, i) => sum + Math.hypot(p.x - all[i].x, p.y - all[i].y), 0);
}

/** Rounding of lengths laid piece by piece. */
const SAME_SHARE = 1e-6;

function shareOf(part: number, lengths: readonly number[]): number {
  const share =
    part /
    Math.max(
      lengths.reduce((sum, one) => sum + one, 0),
      Number.MIN_VALUE,
    );
  return share < SAME_SHARE ? 0 : Math.min(1, share);
}
