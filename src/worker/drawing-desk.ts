import { fail, ok, type Result } from '../base/result.ts';
import { runWithPauses, type Stepwise } from '../base/stepwise.ts';
import { readSvgDrawing, type FlatDrawing } from '../geom/svg-drawing.ts';
import { add3, dot3, length3, scale3, sub3, vec3, type Vec3 } from '../geom/vec.ts';
import type { SurfaceHit } from '../geom/bvh.ts';
import { triangleNormal } from '../mesh/measure.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { MeshLine } from '../mesh/lines/mesh-line.ts';
import { placeOf, pointAtPlace } from '../mesh/lines/mesh-point.ts';
import { movedLineSteps } from '../mesh/lines/moved-line.ts';
import { surfaceOf } from '../mesh/surface.ts';
import { surfaceTreeOf } from '../mesh/surface-tree.ts';
import type { Outcome, SizedSculpt } from '../pipeline/outcome.ts';
import { pathLineSteps } from '../steps/seams/path-line.ts';
import { facePolygons, surfacePointOf } from '../steps/seams/surface-points.ts';
import { drawWishSteps, isAmong, mirroredWish, wishOnMesh, type AcrossMeshLine } from './across-lines.ts';
import type { AcrossLine, AcrossWish, Drawing, LaidDrawing, LayWish, MovedLine, MoveWish } from './drawing-api.ts';
import { layOnMesh, laySteps, mirroredLay, type LaidLines } from './laid-drawing.ts';
import { PoliteWork } from './polite-work.ts';
import { placeAt } from './spot-place.ts';

/** How far the straight pieces of a drawing may be from its curves, mm: less than a pencil line is wide, also when it is laid larger. */
const DRAWN_MM = 0.05;

/** Draws lines across the faces of the last outcome's sculpt. */
export class DrawingDesk implements Drawing {
  readonly #outcome: () => Outcome | null;

  constructor(outcome: () => Outcome | null) {
    this.#outcome = outcome;
  }

  async drawAcross(wish: AcrossWish, isMirrored = false): Promise<Result<readonly AcrossLine[]>> {
    const outcome = this.#outcome();
    const sculpt = outcome?.sculpt;
    if (outcome === null || sculpt == null) return fail('seams/no-sculpt', 'Open a sculpt first.');
    const work = new PoliteWork(() => undefined);
    const lines = await runWithPauses(lineSteps(outcome, sculpt, wish, isMirrored), () => work.pause(0));
    return lines.ok ? ok(lines.value.map(({ line, farthestMm }) => told(sculpt, line, farthestMm))) : lines;
  }

  async moveLine(wish: MoveWish): Promise<Result<MovedLine>> {
    const sculpt = this.#outcome()?.sculpt;
    if (sculpt == null) return fail('seams/no-sculpt', 'Open a sculpt first.');
    const work = new PoliteWork(() => undefined);
    return await runWithPauses(movedSteps(sculpt, wish), () => work.pause(0));
  }

  readDrawing(text: string): Promise<Result<FlatDrawing>> {
    return Promise.resolve(readSvgDrawing(text, DRAWN_MM));
  }

  async layDrawing(wish: LayWish, isMirrored = false): Promise<Result<LaidDrawing>> {
    const outcome = this.#outcome();
    const sculpt = outcome?.sculpt;
    if (outcome === null || sculpt == null) return fail('seams/no-sculpt', 'Open a sculpt first.');
    const work = new PoliteWork(() => undefined);
    const laid = await runWithPauses(laidSteps(outcome, sculpt, wish, isMirrored), () => work.pause(0));
    if (!laid.ok) return laid;
    return ok({ ...laid.value, lines: laid.value.lines.map((line) => told(sculpt, line, undefined)) });
  }
}

/** The lines and, where they are mirrored, those opposite: a line that lies on the mirror, or on its like, is drawn once. */
function* lineSteps(
  outcome: Outcome,
  { mesh }: SizedSculpt,
  wish: AcrossWish,
  isMirrored: boolean,
): Stepwise<Result<readonly AcrossMeshLine[]>> {
  const surface = surfaceOf(mesh);
  const onMesh = wishOnMesh(wish, (spot) => placeAt(outcome, mesh, spot));
  const own = yield* drawWishSteps(surface, onMesh);
  if (!own.ok || !isMirrored || outcome.mirror === null) return own;
  const beyond = yield* drawWishSteps(surface, mirroredWish(mesh, outcome.mirror.plane, onMesh));
  if (!beyond.ok) return beyond;
  const lines = own.value.map(({ line }) => line);
  return ok([...own.value, ...beyond.value.filter(({ line }) => !isAmong(surface, line, lines))]);
}

function* laidSteps(
  outcome: Outcome,
  { mesh }: SizedSculpt,
  wish: LayWish,
  isMirrored: boolean,
): Stepwise<Result<LaidLines>> {
  const surface = surfaceOf(mesh);
  const lay = layOnMesh(wish, placeAt(outcome, mesh, wish.spot));
  const own = yield* laySteps(surface, lay);
  if (!own.ok || !isMirrored || outcome.mirror === null) return own;
  const beyond = yield* laySteps(surface, mirroredLay(mesh, outcome.mirror.plane, lay));
  if (!beyond.ok) return beyond;
  const { lines } = own.value;
  return ok({
    ...own.value,
    lines: [...lines, ...beyond.value.lines.filter((line) => !isAmong(surface, line, lines))],
  });
}

function* movedSteps(
  sculpt: SizedSculpt,
  { points, from, to, push = [0, 0, 0] }: MoveWish,
): Stepwise<Result<MovedLine>> {
  const { mesh, model } = sculpt;
  const surface = surfaceOf(mesh);
  const line = yield* pathLineSteps(mesh, facePolygons(model), { points }, 1);
  if (!line.ok) return line;
  const hit = pushedOn(mesh, vec3(...to), vec3(...push));
  if (hit === null) return fail('seams/no-sculpt', 'Open a sculpt first.');
  const wanted = pointAtPlace(surface, hit.triangle, hit.point);
  const moved = yield* movedLineSteps(surface, line.value, vec3(...from), wanted);
  if (!moved.ok) return moved;
  const { x, y, z } = placeOf(surface, moved.value.at);
  return ok({ ...told(sculpt, moved.value.line, undefined), at: [x, y, z] });
}

/** The place of the surface nearest to another, pushed on along it. */
function pushedOn(mesh: Mesh, to: Vec3, push: Vec3): SurfaceHit | null {
  const tree = surfaceTreeOf(mesh);
  const hit = tree.nearest(to);
  if (hit === null || length3(push) === 0) return hit;
  const normal = triangleNormal(mesh.positions, mesh.triangles, hit.triangle);
  const along = sub3(push, scale3(normal, dot3(push, normal)));
  const size = length3(along);
  return size === 0 ? hit : tree.nearest(add3(hit.point, scale3(along, length3(push) / size)));
}

function told({ mesh, model }: SizedSculpt, { points, closed }: MeshLine, farthestMm: number | undefined): AcrossLine {
  const surface = surfaceOf(mesh);
  const polygons = facePolygons(model);
  const all = closed ? [...points, points[0]] : points;
  const places = all.map((p) => placeOf(surface, p));
  const xyz = Float32Array.from(places.flatMap(({ x, y, z }) => [x, y, z]));
  const lengthMm = places.slice(1).reduce((sum, p, i) => sum + length3(sub3(p, places[i])), 0);
  return {
    points: all.map((p) => surfacePointOf(mesh, polygons, p)),
    xyz,
    lengthMm,
    ...(farthestMm === undefined ? {} : { farthestMm }),
  };
}
