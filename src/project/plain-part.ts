import type { FoamId, PartId } from '../base/ids.ts';
import type { Hand } from '../model/placing.ts';
import type { ArtworkFields } from './artwork-part.ts';
import type { BuildUpFields } from './build-up-part.ts';
import type { EngravingFields } from './engraving-part.ts';
import type { InsertFields } from './insert-part.ts';
import type { StackFields } from './stack-part.ts';
import type { CoversFields, StrapFields, TrimFields } from './trim-part.ts';

/** A file that a part is made from; what kind it is, its bytes say. */
export interface PlainSource {
  /** SHA-256, 64 hex digits. */
  readonly hash: string;
  readonly fileName: string;
}

/** What every part has that no sculpt is parted for. */
interface PlainBase {
  readonly id: PartId;
  readonly name: string;
  /** Place in the assembly: 4 x 4, column by column, mm; turned, moved or mirrored, never another size. */
  readonly transform: readonly number[];
  /** How many of it the prop has, 1 or more. */
  readonly copies: number;
  /** How many of the copies are mirror images of it, and which hand it is itself; left out: none. */
  readonly mirrored?: { readonly count: number; readonly ownHand: Hand };
  /** What it is made of, the usual one first; where it takes sheets of several thicknesses, one foam for each. One or more. */
  readonly foams: readonly FoamId[];
  /** The file it is made from; left out where it is made of figures alone. */
  readonly source?: PlainSource;
}

/** A shape known by its sizes. */
export interface ShapePart extends PlainBase {
  readonly kind: 'shape';
  /** One of the names that `shape --list` gives. */
  readonly shape: string;
  /** Sizes as they were typed, with their units; those that are left out are as usual. Thickness and neutral fraction are those of its foam. */
  readonly sizes: Readonly<Record<string, string>>;
}

/** Made from the file of `source`, or from a turned profile. */
export interface StackPart extends PlainBase, StackFields {}

/** Made from the file of `source`. */
export interface ArtworkPart extends PlainBase, ArtworkFields {
  readonly source: PlainSource;
  /** The drawing that it is laid along or scattered over, where its craft does so. */
  readonly other?: PlainSource;
}

export interface BuildUpPart extends PlainBase, BuildUpFields {}

/** Strips along lines of a sculpt. */
export interface TrimPart extends PlainBase, TrimFields {}

/** Strips over all seams of a sculpt that are in view. */
export interface CoversPart extends PlainBase, CoversFields {}

/** A strap with a buckle. */
export interface StrapPart extends PlainBase, StrapFields {}

/** Artwork of the file of `source`, drawn on a sculpt. Nothing is cut from its foams. */
export interface EngravingPart extends PlainBase, EngravingFields {
  readonly source: PlainSource;
}

/** Something that is not foam, let into another part. */
export interface InsertPart extends PlainBase, InsertFields {}

/** Parts that are made from their own figures, each a kind of its own. */
export type PlainPart =
  ShapePart | StackPart | ArtworkPart | BuildUpPart | TrimPart | CoversPart | StrapPart | EngravingPart | InsertPart;
