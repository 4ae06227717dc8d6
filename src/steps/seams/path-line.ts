import { fail, ok, type Fail, type Result } from '../../base/result.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { isSamePoint, sharedTriangle, withoutDoubles } from '../../mesh/lines/mesh-point.ts';
import { nearShortestLine, readyForLinesSteps } from '../../mesh/lines/shortest-line.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { surfaceOf } from '../../mesh/surface.ts';
import type { SeamPath, SurfacePoint } from '../../model/seams.ts';
import type { MeshPoint, SurfaceLine } from '../../model/surface-line.ts';
import { meshPointOf, type FacePolygons } from './surface-points.ts';

/**
 * The line that a path draws on the sculpt. Points that share no triangle are joined by a shortest line on the surface; a path that ends where
 * it begins is closed.
 * @param number  of the path, from 1, for what is said of it.
 * @returns fails with `seams/path-short`, `seams/path-point` or `seams/no-path`, and says which path and which of its points.
 */
export function* pathLineSteps(
  mesh: Mesh,
  polygons: FacePolygons,
  { points }: Pick<SeamPath, 'points'>,
  number: number,
): Stepwise<Result<SurfaceLine>> {
  if (points.length < 2)
    return fail('seams/path-short', `Path ${number} has fewer than two points: give it two or more, or take it out.`);
  const placed: MeshPoint[] = [];
  for (const [i, point] of points.entries()) {
    const place = meshPointOf(mesh, polygons, point);
    if (place === null) return wrongPoint(mesh, polygons, point, number, i + 1);
    placed.push(place);
  }
  const surface = surfaceOf(mesh);
  const line: MeshPoint[] = [placed[0]];
  for (let i = 1; i < placed.length; i += 1) {
    const [from, to] = [placed[i - 1], placed[i]];
    if (sharedTriangle(surface, from, to) >= 0) {
      line.push(to);
      continue;
    }
    yield* readyForLinesSteps(surface);
    const way = nearShortestLine(surface, from, to);
    yield;
    if (!way.ok)
      return fail(
        'seams/no-path',
        `Points ${i} and ${i + 1} of path ${number} lie on separate surfaces, so no line leads from one to the other: draw it on one surface.`,
        way.problem.where,
      );
    line.push(...way.value.line.points.slice(1));
  }
  const closed = placed.length > 2 && isSamePoint(placed[0], placed[placed.length - 1]);
  return ok({ points: withoutDoubles(line, closed), closed });
}

function wrongPoint(mesh: Mesh, polygons: FacePolygons, point: SurfacePoint, path: number, place: number): Fail {
  const wrong = (how: string): Fail => fail('seams/path-point', `Point ${place} of path ${path} ${how}.`);
  if ('vertex' in point) {
    const last = mesh.vertexOfFile.length - 1;
    return wrong(`is corner ${point.vertex}, which no face of the model uses (corners are counted from 0 to ${last})`);
  }
  const { face, bary } = point;
  const { length } = polygons.cornersOf(face);
  if (length === 0)
    return wrong(
      `lies on face ${face}, which the model does not have (faces are counted from 0 to ${mesh.faceCount - 1})`,
    );
  return bary.length === length
    ? wrong(`has weights that are not all 0 or more and 1 together: give each corner of face ${face} its share`)
    : wrong(`has ${bary.length} weights for the ${length} corners of face ${face}: give each corner one`);
}
