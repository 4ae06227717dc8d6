import type { FoamId } from '../base/ids.ts';
import type { BuildUpWish } from '../model/build-up.ts';

/** A core with what is built up on it, in sheets of its foams. */
export interface BuildUpFields {
  readonly kind: 'build-up';
  readonly wish: Omit<BuildUpWish, 'sheets'>;
  /** Those of its foams that wraps are made of; left out: all of them. */
  readonly wraps?: readonly FoamId[];
}
