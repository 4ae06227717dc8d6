import type { Result } from '../base/result.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { Patch } from '../model/patch.ts';
import type { FlattenOptions } from '../steps/flatten/flatten-options.ts';
import type { FlattenTask } from './flatten-crew.ts';

/** What a hand of the crew is told. It does one task at a time. */
export type ToHand =
  | {
      readonly kind: 'solve';
      readonly task: number;
      /** Number under which the hand keeps the patch, with what it found out about it. */
      readonly number: number;
      /** The patch in its own numbers; left out when the hand has it. */
      readonly patch?: Patch;
      /** Neutral surface, x y z per local vertex, mm. */
      readonly positions: Float64Array;
      readonly options: FlattenOptions;
      /** Whether a first shape is to be told on the way. */
      readonly wantsFirst: boolean;
    }
  | { readonly kind: 'stop'; readonly task: number }
  | { readonly kind: 'forget'; readonly number: number };

/** What a hand of the crew says. */
export type FromHand =
  | { readonly kind: 'progress'; readonly task: number; readonly done: number }
  | { readonly kind: 'first'; readonly task: number; readonly flat: FlatPiece }
  | { readonly kind: 'done'; readonly task: number; readonly result: Result<FlatPiece> }
  | { readonly kind: 'stopped'; readonly task: number }
  /** Its code threw: our own mistake, or no memory is left. */
  | { readonly kind: 'broke'; readonly task: number };

/** A patch that needs nothing of its mesh: the vertices of the mesh are its own. Its triangles keep their names, for findings. */
export function patchAlone(patch: Patch): Patch {
  return { ...patch, meshVertices: Uint32Array.from(patch.meshVertices, (_, v) => v), findings: [] };
}

/** Positions of the vertices of a patch, x y z in its local order, mm. */
export function positionsOf({ patch, positions }: Pick<FlattenTask, 'patch' | 'positions'>): Float64Array {
  const { meshVertices } = patch;
  const own = new Float64Array(3 * meshVertices.length);
  for (let v = 0; v < meshVertices.length; v += 1) {
    const at = 3 * meshVertices[v];
    own[3 * v] = positions[at];
    own[3 * v + 1] = positions[at + 1];
    own[3 * v + 2] = positions[at + 2];
  }
  return own;
}

/** Memory of a flat piece that its maker needs no longer and may hand over whole. */
export const memoryOf = ({ uv, major, minor, majorAngle }: FlatPiece): ArrayBuffer[] => [
  ...new Set([uv, major, minor, majorAngle].map(({ buffer }) => buffer as ArrayBuffer)),
];
