import type { ArtworkChoice, PictureChoice } from '../model/artwork-choice.ts';
import type { ArtworkCraft } from '../model/artwork-craft.ts';

/** What is done with the artwork; how thick the foam is and where it keeps its length, its foam says. */
export type PartCraft = ArtworkCraft extends infer C
  ? C extends ArtworkCraft
    ? Omit<C, 'thicknessMm' | 'neutralFraction'>
    : never
  : never;

/** Flat artwork, of a drawing or a picture in pixels, cut out of the first of its foams. */
export interface ArtworkFields {
  readonly kind: 'artwork';
  readonly drawing: Drawing;
  readonly craft: PartCraft;
}

/** How its file is read. */
export type Drawing =
  | { readonly from: 'svg'; readonly choice: ArtworkChoice }
  | { readonly from: 'picture'; readonly choice: PictureChoice };
