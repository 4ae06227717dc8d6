import type { FoamId } from '../../base/ids.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';

/** Sheets whose thicknesses differ by less are one, mm: no calliper tells them apart in foam. */
const SAME_MM = 0.05;

/** The first foam of a thickness, or null where none is of it. */
export const foamForThickness = (foams: readonly FoamSheet[], thicknessMm: number): FoamId | null =>
  foams.find((foam) => Math.abs(foam.thicknessMm - thicknessMm) < SAME_MM)?.id ?? null;
