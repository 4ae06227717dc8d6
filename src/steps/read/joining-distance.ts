import { FAR_SHARE_OF_DIAGONAL, JOIN_FLOAT32_STEPS, JOIN_SHARE_OF_DIAGONAL } from '../../base/tolerance.ts';
import { length3, sub3 } from '../../geom/vec.ts';
import { boxOfPoints3 } from '../../mesh/measure.ts';

/** How near two corners are one, unit of the positions. */
export interface JoiningDistance {
  readonly diagonal: number;
  /** The steps of single precision at the largest coordinate. */
  readonly step: number;
  /** The larger of the share of the diagonal and `step`; 0 where `isFar`. */
  readonly distance: number;
  /** True where `step` is too coarse to join by. */
  readonly isFar: boolean;
}

/** @param positions packed x y z, at least one point. */
export function joiningDistance(positions: Float64Array): JoiningDistance {
  const { min, max } = boxOfPoints3(positions);
  const largest = Math.max(-min.x, -min.y, -min.z, max.x, max.y, max.z);
  const diagonal = length3(sub3(max, min));
  const step = JOIN_FLOAT32_STEPS * float32Step(largest);
  const isFar = step > FAR_SHARE_OF_DIAGONAL * diagonal;
  return { diagonal, step, distance: isFar ? 0 : Math.max(step, JOIN_SHARE_OF_DIAGONAL * diagonal), isFar };
}

/** Distance between neighbouring single-precision numbers at a value >= 0: 24 bits of significand (IEEE 754 binary32). */
const float32Step = (value: number): number => 2 ** (Math.max(-126, Math.floor(Math.log2(value))) - 23);
