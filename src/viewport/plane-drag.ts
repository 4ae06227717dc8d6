import { type Vector3 } from 'three';
import type { Sight } from './aim.ts';
import type { PlaneFrame } from './plane-frame.ts';

/** What a grip of the handle does: `shift` along the normal, `turn-u` and `turn-v` about that axis of the frame. */
export type Grip = 'shift' | 'turn-u' | 'turn-v';

/** A line of sight this near to the wheel a plane turns in says nothing about how far it is turned (sine). */
const LEAST_SLOPE = 0.05;

/** A line of sight nearer to the normal than this cosine says nothing about how far along it one points. */
const ALONG_COSINE = 0.995;

/**
 * How far along the frame's normal from `from` one points: the place of the normal through `from` nearest to the line of sight.
 * @returns mm, or null where one looks along the normal.
 */
export function alongNormal(frame: PlaneFrame, from: Vector3, { origin, direction }: Sight): number | null {
  const slant = direction.dot(frame.normal);
  if (Math.abs(slant) > ALONG_COSINE) return null;
  const way = origin.clone().sub(from);
  return (way.dot(frame.normal) - slant * way.dot(direction)) / (1 - slant * slant);
}

/**
 * How far the frame must turn about one of its axes so that its plane holds what is pointed at.
 * @returns the normal then, or null where the line of sight lies along the wheel it turns in.
 */
export function turnedTowards(
  frame: PlaneFrame,
  grip: 'turn-u' | 'turn-v',
  { origin, direction }: Sight,
): Vector3 | null {
  const [axis, arm] = grip === 'turn-u' ? [frame.u, frame.v] : [frame.v, frame.u];
  const slope = direction.dot(axis);
  if (Math.abs(slope) < LEAST_SLOPE) return null;
  const hit = origin.clone().addScaledVector(direction, frame.centre.clone().sub(origin).dot(axis) / slope);
  const way = hit.sub(frame.centre);
  const [across, along] = [way.dot(frame.normal), way.dot(arm)];
  if (Math.hypot(across, along) < 1e-6) return null;
  const isForth = axis.clone().cross(arm).dot(frame.normal) > 0;
  return frame.normal.clone().applyAxisAngle(axis, Math.atan2(across, along) * (isForth ? 1 : -1));
}
