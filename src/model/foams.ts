import { foamId } from '../base/ids.ts';
import data from '../../shared/foam-stock.json';
import type { FoamSheet } from './foam-stock.ts';

/** Sheets a project starts with: generic EVA in four thicknesses and two sizes. */
export const DEFAULT_FOAMS: readonly FoamSheet[] = checkFoams(
  data.foams.map((foam) => ({ ...foam, id: foamId(foam.id) })),
);

/** To be said wherever a default density is shown or used. */
export const DENSITY_NOTE: string = data.densityNote;

/** Every size positive, k between 0 and 1, limits in order, ids unique. @throws Error: a broken list is our mistake. */
export function checkFoams(foams: readonly FoamSheet[]): readonly FoamSheet[] {
  const ids = new Set<string>();
  for (const foam of foams) {
    const sizes = [
      foam.thicknessMm,
      foam.sheetWidthMm,
      foam.sheetHeightMm,
      foam.densityKgM3,
      foam.stretchLimits.noticePct,
    ];
    if (!sizes.every((size) => Number.isFinite(size) && size > 0))
      throw new Error(`foam ${foam.id}: a size is not positive`);
    if (!(foam.neutralFraction >= 0 && foam.neutralFraction <= 1))
      throw new Error(`foam ${foam.id}: k ${foam.neutralFraction}`);
    if (!(foam.stretchLimits.tooMuchPct >= foam.stretchLimits.noticePct))
      throw new Error(`foam ${foam.id}: stretch limits out of order`);
    if (ids.has(foam.id)) throw new Error(`foam ${foam.id} is listed twice`);
    ids.add(foam.id);
  }
  return foams;
}
