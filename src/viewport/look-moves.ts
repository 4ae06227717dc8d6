import type { LookMove } from './bench-contract.ts';
import { turned, type Orbit } from './orbit.ts';

/** One press of a key turns by an eighth of a right angle and comes a fifth nearer. */
const TURN = Math.PI / 16;
const NEARER = 0.8;

/** Yaw and pitch of the six sides, radians. */
const SIDES: Readonly<Partial<Record<LookMove, readonly [number, number]>>> = {
  front: [0, 0.12],
  back: [Math.PI, 0.12],
  left: [-Math.PI / 2, 0.12],
  right: [Math.PI / 2, 0.12],
  top: [0, Math.PI / 2 - 0.001],
  bottom: [0, -(Math.PI / 2 - 0.001)],
};

/** From where a side is seen, radians; null where the move is to no side. */
export function sideOf(move: LookMove): { readonly yaw: number; readonly pitch: number } | null {
  const side = SIDES[move];
  return side === undefined ? null : { yaw: side[0], pitch: side[1] };
}

/** The view after a move by key. `up` and `down` turn the eye over or under; sides keep target and distance. */
export function looked(orbit: Orbit, move: LookMove): Orbit {
  const side = sideOf(move);
  if (side !== null) return { ...orbit, ...side };
  switch (move) {
    case 'turn-left':
      return turned(orbit, -TURN, 0);
    case 'turn-right':
      return turned(orbit, TURN, 0);
    case 'up':
      return turned(orbit, 0, TURN);
    case 'down':
      return turned(orbit, 0, -TURN);
    case 'nearer':
      return { ...orbit, distance: orbit.distance * NEARER };
    default:
      return { ...orbit, distance: orbit.distance / NEARER };
  }
}
