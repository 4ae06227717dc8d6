import type { GivenScale } from '../model/source-model.ts';
import type { StackWish } from '../model/stack.ts';
import type { ProfilePoint } from '../mesh/turned-mesh.ts';

/**
 * A solid in layers of sheet: that of its file, or one that is turned round its axis, z. The sheets are those of its foams, each thickness once.
 */
export interface StackFields {
  readonly kind: 'stack';
  /** Radius against length, by ascending length; left out where it is made from a file. */
  readonly turned?: readonly ProfilePoint[];
  /** Of the file; left out, its numbers are mm, which is told. */
  readonly scale?: GivenScale;
  readonly wish: Omit<StackWish, 'sheetsMm' | 'cover'>;
}
