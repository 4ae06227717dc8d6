import type { SeamId } from '../base/ids.ts';

/** What it would cost to join the foam along one seam. */
export interface SeamCost {
  readonly seam: SeamId;
  /** Indices of the patches on both sides now; one patch twice where the seam closes it on itself or is a dart. */
  readonly patches: readonly [number, number];
  readonly lengthMm: number;
  /** Of the piece that would come of it, 99th percentile, per cent; null where it could not be laid flat at all. */
  readonly stretchPct: number | null;
  readonly squashPct: number | null;
  /** Places where it would lie over itself. */
  readonly overlaps: number;
  /** Its size over that of the sheet; 1 just fits. */
  readonly sheetShare: number;
  /** Whether it would keep every limit. */
  readonly isFeasible: boolean;
  /** How far it fails, 0 where it does not: what the list is ordered by. */
  readonly badness: number;
}
