import { fail, ok, type Result } from '../base/result.ts';
import type { Stepwise } from '../base/stepwise.ts';
import { dot3, scale3, sub3, vec3, type Vec3 } from '../geom/vec.ts';
import { fairLineSteps } from '../mesh/lines/fair-line.ts';
import { distanceToLine } from '../mesh/lines/line-distance.ts';
import { lineThrough } from '../mesh/lines/line-through.ts';
import type { MeshLine, MeshPoint } from '../mesh/lines/mesh-line.ts';
import { isSamePoint, placeOf, pointAtPlace } from '../mesh/lines/mesh-point.ts';
import { sectionLines, spacedSectionSteps } from '../mesh/lines/section-lines.ts';
import { smoothCurveSteps } from '../mesh/lines/smooth-curve.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { MirrorPlane } from '../mesh/mirror/mirror-plane.ts';
import { surfaceOf, type Plane, type Surface } from '../mesh/surface.ts';
import { surfaceTreeOf } from '../mesh/surface-tree.ts';
import type { AcrossWish, Spot } from './drawing-api.ts';

/** How far a drawn curve may be from the true one, mm: less than a pencil line is wide. */
const CURVE_MM = 0.1;

/** Two lines are one that lie this near each other everywhere, mm. */
const SAME_MM = 0.05;

/** What is to be drawn, on the mesh itself. */
export type MeshWish =
  | { readonly by: 'straight' | 'curve'; readonly points: readonly MeshPoint[] }
  | { readonly by: 'plane'; readonly plane: Plane; readonly spacingMm: number | undefined }
  | { readonly by: 'taut'; readonly points: readonly MeshPoint[]; readonly withinMm: number };

export interface AcrossMeshLine {
  readonly line: MeshLine;
  readonly farthestMm?: number;
}

/** @param place where a picked place lies on the mesh. */
export function wishOnMesh(wish: AcrossWish, place: (spot: Spot) => MeshPoint): MeshWish {
  switch (wish.by) {
    case 'straight':
    case 'curve':
      return { by: wish.by, points: wish.spots.map(place) };
    case 'plane':
      return {
        by: 'plane',
        plane: { point: vec3(...wish.point), normal: vec3(...wish.normal) },
        spacingMm: wish.spacingMm,
      };
    case 'taut':
      return { by: 'taut', points: wish.corners.map((corner) => place({ corner })), withinMm: wish.withinMm };
  }
}

/** The same beyond the mirror: places are the nearest of the surface, however it is cut into triangles there. */
export function mirroredWish(mesh: Mesh, mirror: MirrorPlane, wish: MeshWish): MeshWish {
  const surface = surfaceOf(mesh);
  const beyond = (p: Vec3): Vec3 => sub3(p, scale3(mirror.normal, 2 * (dot3(mirror.normal, p) - mirror.at)));
  if (wish.by === 'plane') {
    const { point, normal } = wish.plane;
    const turned = sub3(normal, scale3(mirror.normal, 2 * dot3(mirror.normal, normal)));
    return { ...wish, plane: { point: beyond(point), normal: turned } };
  }
  const points = wish.points.map((p) => {
    const place = beyond(placeOf(surface, p));
    const hit = surfaceTreeOf(mesh).nearest(place);
    return hit === null ? p : pointAtPlace(surface, hit.triangle, hit.point);
  });
  return { ...wish, points };
}

/** Fails with `seams/no-path`, `seams/too-many-planes` or `seams/missed`. */
export function* drawWishSteps(surface: Surface, wish: MeshWish): Stepwise<Result<readonly AcrossMeshLine[]>> {
  switch (wish.by) {
    case 'straight':
      return one(straight(surface, wish.points));
    case 'curve':
      return one(yield* smoothCurveSteps(surface, wish.points, isRound(wish.points), CURVE_MM));
    case 'plane':
      return yield* sectionSteps(surface, wish.plane, wish.spacingMm);
    case 'taut': {
      const whole = straight(surface, wish.points);
      if (!whole.ok) return whole;
      const { line, farthestMm } = yield* fairLineSteps(surface, whole.value, wish.withinMm);
      return ok([{ line, farthestMm }]);
    }
  }
}

const one = (line: Result<MeshLine>): Result<readonly AcrossMeshLine[]> =>
  line.ok ? ok([{ line: line.value }]) : line;

const straight = (surface: Surface, points: readonly MeshPoint[]): Result<MeshLine> =>
  isRound(points) ? lineThrough(surface, points.slice(0, -1), true) : lineThrough(surface, points, false);

/** A line that ends where it begins, with something between. */
const isRound = (points: readonly MeshPoint[]): boolean =>
  points.length > 3 && isSamePoint(points[0], points[points.length - 1]);

function* sectionSteps(
  surface: Surface,
  plane: Plane,
  spacingMm: number | undefined,
): Stepwise<Result<readonly AcrossMeshLine[]>> {
  const spaced =
    spacingMm === undefined
      ? ok([{ lines: sectionLines(surface, plane) }])
      : yield* spacedSectionSteps(surface, plane, spacingMm);
  if (!spaced.ok) return spaced;
  const lines = spaced.value.flatMap((section) => section.lines).filter(({ points }) => points.length > 1);
  if (lines.length === 0)
    return fail('seams/missed', 'The plane does not cut the sculpt there: move it onto the sculpt.');
  return ok(lines.map((line) => ({ line })));
}

/** Whether every point of a line lies on one of others. */
export function isAmong(surface: Surface, { points }: MeshLine, others: readonly MeshLine[]): boolean {
  const places = others.map((other) => other.points.map((p) => placeOf(surface, p)));
  return others.some(({ closed }, k) =>
    points.every((p) => distanceToLine(placeOf(surface, p), places[k], closed) <= SAME_MM),
  );
}
