import type { Finding } from '../../base/finding.ts';
import type { Result } from '../../base/result.ts';
import type { ShapeFaces, ShapeMeasure, ShapePatch, ShapePiece } from '../../model/shape.ts';
import type { SizeField } from '../../model/shape-size.ts';
import type { Sizes } from './sizes.ts';

/** What a kind of shape works out; seams follow from the edges of the pieces. */
export interface Development {
  readonly measures: readonly ShapeMeasure[];
  readonly pieces?: readonly ShapePiece[];
  readonly warnings?: readonly Finding[];
  readonly patches?: readonly ShapePatch[];
  readonly solid?: ShapeFaces;
}

/** A kind of shape: its name, its sizes and how it is developed. */
export interface ShapeKind {
  /** Trade or textbook term, words joined by `_`. */
  readonly name: string;
  /** Other names of the trade for it. */
  readonly also?: readonly string[];
  /** One sentence. */
  readonly says: string;
  readonly sizes: readonly SizeField[];
  /** Fails with `shape/…` where the sizes do not go together, in one sentence that says what to change. */
  readonly develop: (sizes: Sizes) => Result<Development>;
}
