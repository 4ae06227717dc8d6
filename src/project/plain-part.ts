import type { FoamId, PartId } from '../base/ids.ts';

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

/** Parts that are made from their own figures, each a kind of its own. */
export type PlainPart = ShapePart;
