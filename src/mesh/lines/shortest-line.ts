import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import type { Surface } from '../surface.ts';
import type { Leg } from './leg.ts';
import { distanceInSpace, isSamePoint, sharedTriangle, trianglesAt, withoutDoubles } from './mesh-point.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';
import { finderSteps, routeLegs } from './route.ts';
import { straightenLeg } from './straighten-leg.ts';
import { shortestWaySteps } from './window-search.ts';

/** A line on the surface and its length, mm. From a point to itself it is that one point, 0 mm long. */
export interface MeasuredLine {
  readonly line: MeshLine;
  readonly lengthMm: number;
}

/**
 * A locally shortest line between two points of a surface: no way near it is shorter, which is exact to rounding. It begins from the shortest
 * way from corner to corner, so it nearly always is the shortest of all; fast enough to follow the pointer.
 * @param most  no way longer than this is looked for, mm; saves time where the points are near each other.
 * @returns `seams/no-path` where the points lie on surfaces that do not touch, or every way is longer.
 */
export function nearShortestLine(
  surface: Surface,
  from: MeshPoint,
  to: MeshPoint,
  most = Infinity,
): Result<MeasuredLine> {
  // Most of all lines that are asked for are short pieces of another one.
  if (sharedTriangle(surface, from, to) >= 0) {
    const points = isSamePoint(from, to) ? [from] : [from, to];
    return ok({ line: { points, closed: false }, lengthMm: distanceInSpace(surface, from, to) });
  }
  const legs = routeLegs(surface, from, to, most);
  return legs === null ? noPath(surface, from, to) : ok(lineOf(surface, legs));
}

/** Makes ready for lines on a surface in stretches, so that the first line under the pointer does not wait for it (a tenth of a second at 20k triangles). */
export function* readyForLinesSteps(surface: Surface): Stepwise<void> {
  yield* finderSteps(surface);
}

/**
 * The shortest of all lines between two points of a surface, exact to rounding. Where that would take more windows than there is room for, the
 * locally shortest one, with the note `seams/not-proven-shortest`.
 * @returns `seams/no-path` where the points lie on surfaces that do not touch.
 */
export function* shortestLineSteps(
  surface: Surface,
  from: MeshPoint,
  to: MeshPoint,
  mostWindows?: number,
): Stepwise<Result<MeasuredLine>> {
  yield* readyForLinesSteps(surface);
  const near = nearShortestLine(surface, from, to);
  if (!near.ok || near.value.lengthMm === 0) return near;
  const way = yield* shortestWaySteps(surface, from, to, near.value.lengthMm * (1 - LEAST_GAIN), mostWindows);
  const line = way.legs.length === 0 ? near.value : lineOf(surface, way.legs);
  const best = line.lengthMm < near.value.lengthMm ? line : near.value;
  return ok(best, way.isComplete ? [] : [NOT_PROVEN]);
}

const NOT_PROVEN: Finding = {
  code: 'seams/not-proven-shortest',
  severity: 'note',
  text: 'This line is shorter than all near it; the sculpt has too many triangles to tell whether it is the shortest of all.',
  where: {},
};

/** Share by which a way must be shorter to be another one: rounding of a long row of triangles. */
const LEAST_GAIN = 1e-12;

/** The line along legs, each made straight. */
export function lineOf(surface: Surface, legs: readonly Leg[]): MeasuredLine {
  const taut = legs.map((leg) => straightenLeg(surface, leg).line);
  const points = withoutDoubles(
    taut.flatMap((line) => line.points),
    false,
  );
  return { line: { points, closed: false }, lengthMm: taut.reduce((sum, { length }) => sum + length, 0) };
}

function noPath(surface: Surface, from: MeshPoint, to: MeshPoint): Result<MeasuredLine> {
  return fail('seams/no-path', 'No line leads from one place to the other: they lie on separate surfaces.', {
    triangles: [from, to].map((p) => trianglesAt(surface, p)[0]),
  });
}
