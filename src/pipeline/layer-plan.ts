import type { Region } from '../model/flatten-settings.ts';
import { PLACE_IN_WALL } from '../steps/shell/make-shell-layer.ts';
import type { LayerChoice, SculptPart } from '../project/project.ts';

/** One sheet of foam a part is made of, and where it lies. */
export interface LayerPlan {
  readonly choice: LayerChoice;
  /** 1 for the outermost sheet of the wall, whose seams are seen; 2, 3 … farther in; 0 for one that is laid on it. */
  readonly sheet: number;
  /** Where its back lies, counted outward from the sculpt, mm; undefined where it is the whole wall. */
  readonly backMm: number | undefined;
  /** The area it is laid on, and which of the raised sheets it is, from 1; left out in a sheet of the wall. */
  readonly raised?: { readonly area: Region; readonly number: number };
}

/**
 * The sheets of a part, the outermost first: it is the one that is seen. Layers of the wall lie one on the other, from the back outward, and
 * the sculpt at its place in the whole of them (foam model 5), or that place off the sculpt where the maker moved it.
 */
export function layerPlans({
  layers,
  modelIs,
  offMm = 0,
}: Pick<SculptPart, 'layers' | 'modelIs' | 'offMm'>): readonly LayerPlan[] {
  let below = wallSpan({ layers, modelIs, offMm }).backMm;
  const plans = layers.map((choice, i): LayerPlan => {
    const backMm = layers.length === 1 ? undefined : below;
    below += choice.thicknessMm;
    return { choice, sheet: layers.length - i, backMm };
  });
  return plans.reverse();
}

/** Where the wall begins and ends, counted outward from the sculpt, mm. */
export function wallSpan({ layers, modelIs, offMm = 0 }: Pick<SculptPart, 'layers' | 'modelIs' | 'offMm'>): {
  readonly backMm: number;
  readonly faceMm: number;
} {
  const wallMm = layers.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0);
  // Not `-`: what lies on the sculpt lies at 0, not at -0.
  const backMm = offMm - PLACE_IN_WALL[modelIs] * wallMm;
  return { backMm, faceMm: backMm + wallMm };
}

/** What stands behind the letters of a sheet's seams, so that `A2` is told from the `A` that is seen; nothing for the outermost. */
export const letterSuffix = ({ sheet, raised }: LayerPlan): string =>
  raised !== undefined ? `r${raised.number}` : sheet === 1 ? '' : String(sheet);

/** What stands behind the names of a sheet's pieces. */
export const nameSuffix = ({ sheet, raised }: LayerPlan): string =>
  raised !== undefined ? ', raised' : sheet === 1 ? '' : `, sheet ${sheet}`;
