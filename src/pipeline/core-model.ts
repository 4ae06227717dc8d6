import { runWithPauses } from '../base/stepwise.ts';
import type { Work } from '../base/work.ts';
import { scale3, vec3 } from '../geom/vec.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { CoreFit, CoreModel } from '../model/clearance.ts';
import { MM_PER_UNIT, type SourceModel } from '../model/source-model.ts';
import { meshFromModel } from '../steps/read/size.ts';
import { modelOutlineSteps } from '../steps/wear/core-outline.ts';
import { modelClearanceSteps } from '../steps/wear/model-clearance.ts';
import { moveForModel, sizeForModel } from '../steps/wear/model-size.ts';
import { placeCoreSteps, type CorePlace } from '../steps/wear/place-core.ts';
import type { BackOfShell } from '../steps/wear/size-to-body.ts';

/** Corners of back and core together up to which a size and a move are looked for: each look measures all of them anew. */
const MOST_SEARCHED = 60_000;

/**
 * A core from a model file, in its place, held against the back of the foam.
 * @throws Cancelled when the work was called off.
 */
export async function coreModelFit(
  shell: BackOfShell,
  core: CoreModel,
  model: SourceModel,
  mmPerUnit: number,
  work: Work,
): Promise<CoreFit> {
  const pause = (): Promise<void> | undefined => work.pause(0.5, 'measuring the room round the core');
  const mesh = meshFromModel(model, core.unit === 'sculpt' ? mmPerUnit : MM_PER_UNIT[core.unit]);
  const [x, y, z] = core.pointInFile;
  const place: CorePlace = { point: scale3(vec3(x, y, z), mmPerUnit), turnDeg: core.turnDeg ?? [0, 0, 0] };
  const placed = await runWithPauses(placeCoreSteps(mesh, place), pause);
  const clearance = await runWithPauses(modelClearanceSteps(shell.back, placed.core), pause);
  const surface = { positions: placed.core.positions, triangles: mesh.triangles, topology: topologyOf(mesh) };
  const outline = await runWithPauses(modelOutlineSteps(surface), pause);
  const fit = { core, ...clearance, outline, openEdges: placed.openEdges, sizeFactor: null, moveMm: null };
  const now = clearance.tightest?.clearanceMm;
  const corners = (mesh.positions.length + shell.back.positions.length) / 3;
  if (now === undefined || clearance.stand === 'outside' || corners > MOST_SEARCHED) return fit;
  const wanted = core.roomMm ?? 0;
  return {
    ...fit,
    // What grows with the sculpt has no more room at another size.
    sizeFactor:
      core.unit === 'sculpt' ? null : await runWithPauses(sizeForModel(shell, mesh, place, now, wanted), pause),
    moveMm: await runWithPauses(moveForModel(shell, mesh, place, now, wanted), pause),
  };
}
