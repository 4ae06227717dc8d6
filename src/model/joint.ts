import type { Vec3 } from '../geom/vec.ts';
import type { Triple } from './girth.ts';

/** A joint of the body between pieces of a part: an elbow between bracer and arm guard. Its place is kept in the numbers of the model file. */
export interface BodyJoint {
  readonly id: string;
  readonly name: string;
  /** A point of the axis it turns about, in the numbers of the file. */
  readonly pointInFile: Triple;
  /** Along that axis; any length but 0. */
  readonly axis: Triple;
  /** From the joint towards what is turned; any length but 0. */
  readonly towards: Triple;
  /** How far it bends, degrees, counter-clockwise about the axis; clockwise negative. Not 0. */
  readonly bendDeg: number;
}

/** What a joint at its full bend leaves between what is turned and what stays. */
export interface JointFit {
  readonly joint: BodyJoint;
  /** Null where all foam lies on one side of the joint, or hangs together across it. */
  readonly bent: {
    /** How far it bends before foam meets foam, degrees of its bend: all of it where it never does. */
    readonly freeDeg: number;
    /** Least room between both at the full bend, mm; 0 where they meet on the way. */
    readonly roomMm: number;
    /** Where that is, on what stays, mm: the first place to meet, where they do. */
    readonly point: Vec3;
  } | null;
}
