import { FLATTEN_WISHES, MOST_SEAM_PRICE, MOST_SHRINKAGE_PCT, MOST_SQUASH_PRICE } from '../model/flatten-settings.ts';

/** Least, most and usual of what a maker can ask for when pieces are laid flat: the same for the project's file, the window and the command line. */
export const WISH_LIMITS = {
  seamPrice: { least: 0, most: MOST_SEAM_PRICE, usual: FLATTEN_WISHES.seamPrice },
  squashPrice: { least: 1, most: MOST_SQUASH_PRICE, usual: FLATTEN_WISHES.squashPrice },
  /** Shrinkage either way stays under this, per cent. */
  shrinkagePct: MOST_SHRINKAGE_PCT,
} as const;
