import type { EdgePair } from '../project/commands.ts';
import { onBothSides } from '../project/mirror-commands.ts';
import { edgeIndexOf } from './edge-index.ts';
import type { Workbench } from './workbench.ts';

/** Edges in file numbers, with those opposite to them while marks are mirrored. */
export function onBoth({ bench, view }: Workbench, pairs: readonly EdgePair[]): readonly EdgePair[] {
  const { mirror, sculpt } = bench;
  if (!view.isMirrored || mirror === null || sculpt === null) return pairs;
  const cornerOf = new Map(Array.from(sculpt.fileVertex, (file, corner) => [file, corner]));
  const index = edgeIndexOf(sculpt);
  const isEdge = ([a, b]: EdgePair): boolean => index.between(cornerOf.get(a) ?? -1, cornerOf.get(b) ?? -1) >= 0;
  return onBothSides(pairs, mirror.partnerOfFile, isEdge);
}
