import type { Vec2 } from '../geom/vec.ts';

/** Strain of the skins by bending alone, per cent, from which the program speaks up: a shop rule, because no published limit of EVA was found. */
export interface BendLimits {
  readonly noticePct: number;
  readonly tooMuchPct: number;
}

/** What holds where a foam names no limits of its own [J]. */
export const BEND_LIMITS: BendLimits = { noticePct: 10, tooMuchPct: 25 };

/** What bending does to the skins of a rolled piece where it is bent most (foam model 3). */
export interface BendStrain {
  /** The outside of the bend is stretched by `(1 - k) t / R`, per cent. */
  readonly outsidePct: number;
  /** The inside is squashed by `k t / R`, per cent. */
  readonly insidePct: number;
  /** R, radius of the neutral surface, mm, > 0. */
  readonly radiusMm: number;
  /** In the flat piece. */
  readonly at: Vec2;
  /** The same place on the neutral surface, mm. */
  readonly point: readonly [number, number, number];
}
