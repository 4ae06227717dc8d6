import type { Finding } from '../base/finding.ts';
import type { CoreFit } from './clearance.ts';
import type { JointFit } from './joint.ts';
import type { PuttingOn, TapeFit } from './girth.ts';

/** A part's foam against the body and the core it is made for. */
export interface BodyFit {
  readonly tapes: readonly TapeFit[];
  readonly cores: readonly CoreFit[];
  readonly joints: readonly JointFit[];
  /** Null where the part is not said to be worn. */
  readonly puttingOn: PuttingOn | null;
  readonly findings: readonly Finding[];
}
