import type { PartId } from '../base/ids.ts';
import { PLAIN_TRIM, type StrapWish, type TrimAlong, type TrimWish } from '../model/trim.ts';

/** What a strip is like; thickness and neutral fraction are those of its foam. */
export type StripWish = Omit<TrimWish, 'along' | 'thicknessMm' | 'neutralFraction'>;

const { thicknessMm: _, neutralFraction: __, ...plainStrip } = PLAIN_TRIM;

/** A plain cover strip. */
export const PLAIN_STRIP: StripWish = plainStrip;

/**
 * What a strip on a sculpt follows: as in {@link TrimAlong}, where a seam may also be named by its letter, or seams and open edges that run through
 * edges of the sculpt (file numbers), so that they are found again when other seams change.
 */
export type StripAlong = TrimAlong | { readonly by: 'edges'; readonly edges: readonly (readonly [number, number])[] };

/** Strips along lines of a sculpt. */
export interface TrimFields {
  readonly kind: 'trim';
  /** The sculpt it lies on. */
  readonly on: PartId;
  readonly along: StripAlong;
  readonly strip: StripWish;
}

/** The shortest set of strips over all seams of a sculpt that are in view. */
export interface CoversFields {
  readonly kind: 'covers';
  readonly on: PartId;
  readonly strip: StripWish;
  /** A strip runs on over a node of seams where it turns by no more, degrees, 0 to 150. */
  readonly mostTurnDeg: number;
  /** Seams that stay without, each by an edge it runs through (file numbers). Missing: none but those on the hidden side. */
  readonly without?: readonly (readonly [number, number])[];
}

/** A strap with a buckle. */
export interface StrapFields {
  readonly kind: 'strap';
  /** Its thickness is that of its foam. */
  readonly strap: Omit<StrapWish, 'thicknessMm'>;
}
