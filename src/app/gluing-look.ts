import type { Finding } from '../base/finding.ts';
import type { SeamId } from '../base/ids.ts';
import type { Bench } from './bench-state.ts';
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

/** True where there is no telling how it is glued: the chain stopped, or a piece cannot be laid flat yet. */
export const isUnfinished = ({ stopped, pieces, findings }: Bench): boolean =>
  stopped !== null ||
  pieces?.patches.some(({ piece }) => piece < 0) === true ||
  findings.some(({ severity, code }) => severity === 'error' && /^(cut|flatten)\//.test(code));

export const NO_GLUING: GluingLook = { shop: null, picture: null, refused: null, moved: null };
