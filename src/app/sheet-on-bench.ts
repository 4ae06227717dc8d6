import { sculptAtWork } from '../project/at-work.ts';
import type { FoamSheet, StretchLimits } from '../model/foam-stock.ts';
import type { LayerChoice, Project } from '../project/project.ts';

/** Which sheet of a wall lies on the bench, 1 the outermost: the view may still name one that was taken away. */
export const sheetOnBench = (layers: readonly LayerChoice[], sheet: number): number =>
  sheet <= layers.length ? sheet : 1;

/** The same as it was chosen; undefined before there is a sculpt. */
export const layerOnBench = (layers: readonly LayerChoice[], sheet: number): LayerChoice | undefined =>
  layers.at(-sheetOnBench(layers, sheet));

/** The foam of the sheet on the bench; undefined before there is one. */
export function foamOnBench(project: Project | null, sheet: number): FoamSheet | undefined {
  const part = project === null ? null : sculptAtWork(project);
  const layer = layerOnBench(part?.layers ?? [], sheet);
  return project?.foams.find(({ id }) => id === layer?.foam);
}

/** How far the foam of the sheet on the bench may be stretched, per cent; of the usual foam before there is one. */
export const limitsOnBench = (project: Project | null, sheet: number): StretchLimits =>
  foamOnBench(project, sheet)?.stretchLimits ?? { noticePct: 3, tooMuchPct: 8 };
