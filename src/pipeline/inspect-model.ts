import type { Finding } from '../base/finding.ts';
import { ok, type Result } from '../base/result.ts';
import { shareOfWork, type Work } from '../base/work.ts';
import type { ModelFacts } from '../model/model-facts.ts';
import type { SourceModel } from '../model/source-model.ts';
import { factsOf } from '../steps/read/facts.ts';
import { findFaults } from '../steps/read/faults.ts';
import { readModel } from '../steps/read/read-model.ts';
import { meshFromModel } from '../steps/read/size.ts';
import { mirrorOfSculpt } from './mirror-of-sculpt.ts';

/** The plane in which a model mirrors itself: all points with `normal . x = at`; lengths in the file's own unit. */
export interface MirrorFacts {
  readonly normal: readonly [number, number, number];
  readonly at: number;
  /** Share of the area whose mirror image lies on the surface within `tolerance`, 0 to 1. */
  readonly share: number;
  readonly tolerance: number;
  /** Share of the triangles that have one opposite, 0 to 1. */
  readonly pairedShare: number;
}

/** Reads a model and looks it over, without a size: figures are in the file's own unit. */
export async function inspectModel(
  bytes: Uint8Array,
  fileName: string,
  work: Work,
): Promise<
  Result<{ model: SourceModel; facts: ModelFacts; findings: readonly Finding[]; mirror: MirrorFacts | null }>
> {
  const read = await readModel(bytes, fileName, shareOfWork(work, 0, 0.6));
  if (!read.ok) return read;
  const model = read.value;
  const mesh = meshFromModel(model, 1);
  const faults = await findFaults(model, mesh, shareOfWork(work, 0.6, 0.8));
  const mirror = await mirrorOfSculpt(mesh, { upAxis: 'y' }, 1, shareOfWork(work, 0.8, 1));
  const found =
    mirror === null
      ? null
      : {
          normal: [mirror.plane.normal.x, mirror.plane.normal.y, mirror.plane.normal.z] as const,
          at: mirror.plane.at,
          share: mirror.share,
          tolerance: mirror.toleranceMm,
          pairedShare: mirror.pairedShare,
        };
  return ok({ model, facts: factsOf(model), findings: [...model.findings, ...faults], mirror: found });
}
