import type { PartId } from '../base/ids.ts';
import type { Triple } from '../model/girth.ts';
import type { JointKind, WholeStretch } from '../model/travel.ts';

/** Room all round what goes through a hole, mm [J]: a handle slides in, glue fills it. */
export const ROOM_MM = 0.5;

interface JoinBase {
  /** Its own among all joins: `join-1`. */
  readonly id: string;
}

/** One part goes through another. */
export interface HoleJoin extends JoinBase {
  readonly kind: 'hole';
  readonly part: PartId;
  readonly through: PartId;
  /** Room all round, mm. Missing: {@link ROOM_MM}. */
  readonly roomMm?: number;
  /** Direction in which it is pushed in, in the space of the prop: the wall of the hole runs along it. Missing: along the surface of the part. */
  readonly along?: Triple;
}

/** One part is glued on another. */
export interface SeatJoin extends JoinBase {
  readonly kind: 'seat';
  readonly part: PartId;
  readonly on: PartId;
  /** Of the other part. Missing: the face. */
  readonly side?: 'face' | 'back';
  /** Direction in which it is set down, in the space of the prop. Missing: against its own z. */
  readonly along?: Triple;
}

/** The prop comes apart to travel. */
export interface TravelJoin extends JoinBase {
  readonly kind: 'travel';
  /** What comes apart. Missing: everything. */
  readonly parts?: readonly PartId[];
  /** From its foot to its top, in the space of the prop. */
  readonly along: Triple;
  /** Longest that goes into the bag, mm. */
  readonly bagMm: number;
  readonly whole?: readonly WholeStretch[];
  readonly joint: JointKind;
  /** Of the whole prop, kg. Needed for magnets. */
  readonly massKg?: number;
  /** Where it is held, mm from the foot. Missing: in the middle. */
  readonly gripMm?: number;
}

/** How parts of a prop have to do with each other. JSON-ready. */
export type PartJoin = HoleJoin | SeatJoin | TravelJoin;
