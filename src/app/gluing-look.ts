import type { Finding } from '../base/finding.ts';
import type { SeamId } from '../base/ids.ts';
import type { ShopView, StepPicture } from '../worker/shop-api.ts';

/** What the window knows of the work at the bench: of the last result, fetched when that is there. */
export interface GluingLook {
  readonly shop: ShopView | null;
  /** Of the chosen step, once it is drawn. */
  readonly picture: { readonly step: number; readonly drawn: StepPicture } | null;
  /** A move that cannot be: which step was to be moved, by the first seam of it, and why not. */
  readonly refused: { readonly seam: SeamId; readonly why: readonly Finding[] } | null;
  /** First seam of a step that was moved: it stays chosen where it comes to stand. */
  readonly moved: SeamId | null;
}

export const NO_GLUING: GluingLook = { shop: null, picture: null, refused: null, moved: null };
