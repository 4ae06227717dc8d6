/** What a size of a shape measures. `number` is a figure whose unit no other kind has, for example a density. */
export type SizeKind = 'length' | 'angle' | 'count' | 'ratio' | 'number' | 'choice';

/** Another name a size goes by, and what else it then says: an outside diameter says that the size is of the outside. */
export interface SizeAlias {
  readonly name: string;
  readonly sets?: Readonly<Record<string, string>>;
}

/**
 * One size of a shape as a field: lengths in mm, angles in degrees (their names end in `_deg`), ratios as plain numbers.
 * A size without a default is left out unless it is given; the shape says which it needs.
 */
export interface SizeField {
  /** Trade or textbook term, words joined by `_`. */
  readonly name: string;
  /** What it is, one short phrase. */
  readonly means: string;
  readonly kind: SizeKind;
  /** `mm`, `deg`, or the unit of a plain number; empty where there is none. */
  readonly unit: string;
  readonly default?: number | string | readonly number[];
  /** Least and most of each number; `over` where the least itself is refused. */
  readonly least?: number;
  readonly over?: number;
  readonly most?: number;
  /** Words a choice takes. */
  readonly choices?: readonly string[];
  /** True where it is a row of numbers. */
  readonly isList?: boolean;
  readonly also?: readonly SizeAlias[];
}

/** Sizes as read: numbers in the unit of their field. What was not given and has no default is left out. */
export type SizeValues = Readonly<Record<string, number | string | readonly number[]>>;
