import { fail, ok, type Result } from '../base/result.ts';
import { runWithPauses, type Stepwise } from '../base/stepwise.ts';
import { length3, sub3 } from '../geom/vec.ts';
import type { MeshLine } from '../mesh/lines/mesh-line.ts';
import { placeOf } from '../mesh/lines/mesh-point.ts';
import { surfaceOf } from '../mesh/surface.ts';
import type { Outcome, SizedSculpt } from '../pipeline/outcome.ts';
import { facePolygons, surfacePointOf } from '../steps/seams/surface-points.ts';
import { drawWishSteps, isAmong, mirroredWish, wishOnMesh, type AcrossMeshLine } from './across-lines.ts';
import type { AcrossLine, AcrossWish, Drawing } from './drawing-api.ts';
import { PoliteWork } from './polite-work.ts';
import { placeAt } from './spot-place.ts';

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
