import type { Stepwise } from '../base/stepwise.ts';
import type { BendField, PatchBendField } from '../model/bend-field.ts';
import { bendPlaces } from '../steps/foam/bend-places.ts';
import type { LayerOutcome } from './outcome.ts';

/** What bending does to the skins all over one sheet of the wall; null before it is cut. */
export function* bendFieldSteps({
  cut,
  bends,
  pieces,
}: Pick<LayerOutcome, 'cut' | 'bends' | 'pieces'>): Stepwise<BendField | null> {
  if (cut === null || bends === null || pieces === null) return null;
  const uvOf = new Map(pieces.map(({ patch, uv }) => [patch, uv]));
  const patches: (PatchBendField | null)[] = [];
  for (const i of cut.patches.keys()) {
    yield;
    const uv = uvOf.get(i);
    patches.push(uv === undefined ? null : bendPlaces(bends.patches[i], cut.shells[i], uv));
  }
  return { patches };
}
