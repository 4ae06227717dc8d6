import type { Matrix4 } from '../geom/matrix4.ts';
import type { Triple } from './girth.ts';

/** Which one of a pair. */
export type Hand = 'left' | 'right';

/**
 * Where a part stands: its own zero at a point, its own z along a direction (brought there by the shortest turn), then turned about that direction.
 * JSON-ready.
 */
export interface Placing {
  /** mm, in the space of the prop. */
  readonly at: Triple;
  /** Any length but 0. Missing: as it is, z up. */
  readonly facing?: Triple;
  /** Counter-clockwise as seen from where it faces, degrees. Missing: 0. */
  readonly turnDeg?: number;
  /** Rules by which it is repeated, one on what the other gave. None, or missing: it stands there once. */
  readonly copies?: readonly CopyRule[];
  /** Which hand the part itself is, where it is mirrored. Missing: left. */
  readonly ownHand?: Hand;
}

/** How what stands there is repeated. */
export type CopyRule =
  | { readonly kind: 'once' }
  /** `count` in all, each `stepMm` from the one before. */
  | { readonly kind: 'line'; readonly count: number; readonly stepMm: Triple }
  /** `count` in all round an axis, `stepDeg` from one to the next, counter-clockwise as seen from where the axis points to; missing: even round the whole turn. */
  | {
      readonly kind: 'round';
      readonly count: number;
      readonly point: Triple;
      readonly axis: Triple;
      readonly stepDeg?: number;
    }
  /** Itself, and its mirror image in a plane. */
  | { readonly kind: 'mirror'; readonly point: Triple; readonly normal: Triple };

/** One of the copies of a part, in its place. */
export interface Standing {
  /** 1, 2, 3 … */
  readonly number: number;
  /** From the part's own frame to the prop, mm. */
  readonly matrix: Matrix4;
  /** Turned over against the part as it is made. */
  readonly isMirrored: boolean;
  /** Which hand it is; left out where no copy is mirrored. */
  readonly hand?: Hand;
}
