import { Matrix4, type Quaternion, type Vector3 } from 'three';
import { shareOff } from './taken-apart.ts';

/** From where to where a piece travels; directions and places in the scene (y up), mm. */
export interface Journey {
  /** Middle of the piece and its turn (flat piece, face up = +z, to scene) while it is part of the sculpt. */
  readonly sculptCentre: Vector3;
  readonly sculptTurn: Quaternion;
  /** How far it comes off when the sculpt is taken apart. */
  readonly apart: Vector3;
  /** Its place in the order of gluing, from 0, among how many: what is glued last comes off first. */
  readonly glued: { readonly place: number; readonly of: number };
  /** Middle and turn where it lies in the end. */
  readonly benchCentre: Vector3;
  readonly benchTurn: Quaternion;
  /** Height above its place while it is flat but not yet down. */
  readonly lift: number;
  /** Pieces set off one after the other: 0 first, 1 last. */
  readonly turnTaken: number;
}

/** Where a piece is at some stage. */
export interface Whereabouts {
  /** 0 bent as on the sculpt, 1 flat. */
  readonly roll: number;
  readonly centre: Vector3;
  readonly turn: Quaternion;
}

/** How far pieces come off, as a share of the sculpt's diagonal. */
export const APART_SHARE = 0.14;

/** Share of the way from apart to flat by which the last piece sets off later than the first. */
const STAGGER = 0.35;

/**
 * @param stage 0 whole, 1 apart, 2 flat above its place, 3 down.
 */
export function whereabouts(journey: Journey, stage: number): Whereabouts {
  const apart = shareOff(journey.glued.place, journey.glued.of, clamp(stage));
  const roll = smooth(clamp((clamp(stage - 1) - STAGGER * journey.turnTaken) / (1 - STAGGER)));
  const down = smooth(clamp(stage - 2));
  const from = journey.sculptCentre.clone().addScaledVector(journey.apart, apart);
  const above = journey.benchCentre.clone().setY(journey.benchCentre.y + journey.lift * (1 - down));
  const centre = from.clone().lerp(above, roll);
  // A little arc, so that a piece clears the sculpt and the pieces already down.
  centre.y += Math.sin(Math.PI * roll) * 0.12 * from.distanceTo(above);
  return { roll, centre, turn: journey.sculptTurn.clone().slerp(journey.benchTurn, roll) };
}

/**
 * The way a piece comes off the sculpt: along its mean outward normal; what faces down comes forward instead, because the bench is there.
 * @param normal   mean outward normal, any length; near zero for pieces that wrap all round.
 * @param centre   middle of the piece, `middle` that of the sculpt.
 * @param distance how far pieces come off.
 */
export function apartArrow(normal: Vector3, centre: Vector3, middle: Vector3, distance: number): Vector3 {
  const way = normal.lengthSq() > 0.04 ? normal.clone() : centre.clone().sub(middle);
  if (way.lengthSq() < 1e-12) way.set(0, 1, 0);
  way.normalize();
  if (way.y < 0) {
    way.y = 0;
    if (way.lengthSq() < 0.1) way.z += 1;
    way.normalize();
  }
  return way.multiplyScalar(distance);
}

/** Places a template lying on a sheet or the bench: drawing x to scene x, drawing y away from the viewer. */
export function benchFromDrawing(x: number, y: number, z: number): Matrix4 {
  return new Matrix4().makeTranslation(x, y, z).multiply(new Matrix4().makeRotationX(-Math.PI / 2));
}

const clamp = (x: number): number => Math.max(0, Math.min(1, x));
const smooth = (x: number): number => x * x * (3 - 2 * x);
