import type { FoamId } from '../base/ids.ts';
import { SEAM_PRICE } from '../base/tolerance.ts';
import type { AreaInClay } from './clay-core.ts';
import type { ClayShape } from './clay.ts';

/** What is dear and what is cheap when the pieces of a part are laid flat. The same for all its pieces. */
export interface FlattenWishes {
  /** Price of a wrong seam length against stretch inside the piece, 0 to 10 000; 0 is the plain minimum. See {@link SEAM_PRICE}. */
  readonly seamPrice: number;
  /** Price of squash against the same stretch, 1 to 20: foam pulls longer far more easily than it gathers. 1 holds both alike. */
  readonly squashPrice: number;
  /** True to ease the worst spot at a small rise of the mean. */
  readonly evenOut: boolean;
  /** True to keep the edges of a piece from lying over each other, at the price of stretch. */
  readonly keepApart: boolean;
}

/**
 * Price of squash a new part begins with. Greatest stretch / squash on the samples at 6 mm, per cent, by price (`npm run bench:flatten`):
 *
 *                     1            2            3            5            10
 *     helm            4.87 / 2.78  5.07 / 1.81  5.19 / 1.54  5.34 / 1.22  5.52 / 0.85
 *     shoulder plate  2.93 / 5.67  3.47 / 4.57  3.77 / 3.90  4.14 / 3.00  4.67 / 1.96
 *     bracer          2.39 / 3.78  2.74 / 2.82  2.92 / 2.33  3.11 / 1.81  3.33 / 1.24
 *
 * At 3 the greater of the two is about at its least, and what must be gathered is nearly halved.
 */
export const SQUASH_PRICE = 3;

export const MOST_SEAM_PRICE = 10_000;
export const MOST_SQUASH_PRICE = 20;

/** What a new part begins with. */
export const FLATTEN_WISHES: FlattenWishes = {
  seamPrice: SEAM_PRICE,
  squashPrice: SQUASH_PRICE,
  evenOut: false,
  keepApart: false,
};

/** How willingly an area of the sculpt is stretched: a printed motif is `stiff`, a place that will be warmed is `soft`, the rest is `normal`. */
export type Give = 'stiff' | 'soft' | 'normal';

/** Stiffness of such an area beside the rest, which has 1 (shop judgement). */
export const STIFFNESS: Readonly<Record<Give, number>> = { stiff: 100, soft: 0.1, normal: 1 };

/** `clear`: no seam is proposed inside, as on the face of a helm. `prefer`: seams cost less, as under a belt or an edge trim. */
export type SeamPaint = 'clear' | 'prefer';

/** An area of the sculpt that the maker named: polygons of the file. */
export interface Region {
  /** Unique in its part. */
  readonly id: string;
  readonly name: string;
  /** Numbers of polygons of the file, ascending. */
  readonly faces: readonly number[];
  readonly give: Give;
  /** What is said of seams there; missing: nothing. */
  readonly seams?: SeamPaint;
  /** The sheet that is laid on the face of the wall there; missing: none. */
  readonly raised?: RaisedSheet;
  /** Id of the colour it is painted in (`ShopChoices.colours`); missing: as the rest. */
  readonly colour?: string;
  /** The shape that is built up in clay there; missing: none. */
  readonly clay?: ClayShape;
  /** How it is modelled in clay over a core of sheet, and so is of no foam; missing: it is of foam. */
  readonly clayCore?: AreaInClay;
}

/** A sheet that stands out of the face over one area: a pattern, a rim, a badge. It follows the area and makes the wall no thicker elsewhere. */
export interface RaisedSheet {
  readonly foam: FoamId;
  /** mm. */
  readonly thicknessMm: number;
  /** k, 0 to 1. */
  readonly neutralFraction: number;
}

/** Wishes for one edge of the foam, tied to an edge of the sculpt it runs through (file numbers). */
export interface EdgeWish {
  readonly edge: readonly [number, number];
  /** An open edge that must keep its length: a brim, an arm hole. Seams are held anyway. */
  readonly holdLength?: boolean;
  /** The edge is to be straight on the flat piece: a hem, the fold of a mirrored piece. */
  readonly straight?: boolean;
}

/** The direction of a textured or printed sheet on a piece, and how the stretch is to lie to it. */
export interface GrainWish {
  /** Direction of the grain on the finished piece, degrees counter-clockwise from its up arrow, seen from the face; -180 to 180. */
  readonly angleDeg: number;
  /** Where the largest stretch is asked to lie; `any` only lays the piece along the sheet. */
  readonly stretch: 'any' | 'across' | 'along';
}

/** How much a foam shrinks under the hot-air gun, measured on a 100 mm square: 2 mm lost is 2 per cent. Negative where it grows. */
export interface HeatShrinkage {
  /** Along the sheet's length, per cent, under {@link MOST_SHRINKAGE_PCT} either way. */
  readonly alongPct: number;
  /** Across it. */
  readonly acrossPct: number;
}

/** Shrinkage either way stays under this, per cent. */
export const MOST_SHRINKAGE_PCT = 20;
