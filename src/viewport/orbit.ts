import { Vector3, type Box3 } from 'three';

/**
 * Where the eye stands: on a sphere round what it looks at. Angles in radians, lengths in mm of the scene (y up, front towards +z).
 * Yaw 0 looks from the front, growing to the right (+x); pitch 0 is level, growing upwards.
 */
export interface Orbit {
  readonly target: Vector3;
  readonly yaw: number;
  readonly pitch: number;
  readonly distance: number;
}

/** How far the view may stray, so that it never gets lost. */
export interface OrbitBounds {
  readonly box: Box3;
  readonly nearest: number;
  readonly farthest: number;
}

/** Height of the picture as an angle, radians: a long lens, so that true sizes read true. */
export const FIELD_OF_VIEW = (26 * Math.PI) / 180;

/** Straight up and down would leave no front: stay a little short of it. */
const STEEPEST = Math.PI / 2 - 0.001;

/** The way from the target to the eye, length 1. */
export function eyeDirection({ yaw, pitch }: Pick<Orbit, 'yaw' | 'pitch'>): Vector3 {
  return new Vector3(Math.sin(yaw) * Math.cos(pitch), Math.sin(pitch), Math.cos(yaw) * Math.cos(pitch));
}

export const eyeOf = (orbit: Orbit): Vector3 => eyeDirection(orbit).multiplyScalar(orbit.distance).add(orbit.target);

/** Right, up and towards the eye, each of length 1. */
export function axesOf(orbit: Pick<Orbit, 'yaw' | 'pitch'>): { right: Vector3; up: Vector3; back: Vector3 } {
  const back = eyeDirection(orbit);
  const right = new Vector3(Math.cos(orbit.yaw), 0, -Math.sin(orbit.yaw));
  return { right, up: back.clone().cross(right), back };
}

/** Seen from so high, as far as there is a front. */
export const pitched = (orbit: Orbit, pitch: number): Orbit => ({
  ...orbit,
  pitch: Math.max(-STEEPEST, Math.min(STEEPEST, pitch)),
});

/** Turned by these angles; pitch stops at straight up and down. */
export const turned = (orbit: Orbit, yaw: number, pitch: number): Orbit =>
  pitched({ ...orbit, yaw: orbit.yaw + yaw }, orbit.pitch + pitch);

/** Moved so that what lies at the target's depth follows the pointer by `dx`, `dy` pixels of a picture `heightPx` high. */
export function panned(orbit: Orbit, dx: number, dy: number, heightPx: number): Orbit {
  const perPx = (2 * orbit.distance * Math.tan(FIELD_OF_VIEW / 2)) / heightPx;
  const { right, up } = axesOf(orbit);
  const target = orbit.target
    .clone()
    .addScaledVector(right, -dx * perPx)
    .addScaledVector(up, dy * perPx);
  return { ...orbit, target };
}

/** Distance times `factor`, with `point` staying where it is in the picture. */
export function zoomed(orbit: Orbit, factor: number, point: Vector3, bounds: OrbitBounds): Orbit {
  const distance = Math.max(bounds.nearest, Math.min(bounds.farthest, orbit.distance * factor));
  const target = point.clone().lerp(orbit.target, distance / orbit.distance);
  return { ...orbit, target, distance };
}

/** Brought back within its bounds. */
export function held(orbit: Orbit, bounds: OrbitBounds): Orbit {
  return {
    ...orbit,
    target: bounds.box.clampPoint(orbit.target, new Vector3()),
    distance: Math.max(bounds.nearest, Math.min(bounds.farthest, orbit.distance)),
  };
}

/**
 * The view from this side that just holds all boxes, at least one.
 * @param aspect width of the picture over its height.
 * @param margin share of the picture left free round them, 0 to 1.
 */
export function framed(boxes: readonly Box3[], yaw: number, pitch: number, aspect: number, margin: number): Orbit {
  const { right, up, back } = axesOf({ yaw, pitch });
  const tanY = Math.tan(FIELD_OF_VIEW / 2) * (1 - margin);
  const tanX = tanY * aspect;
  const corners = boxes.flatMap(cornersOf);
  const target = boxes[0].getCenter(new Vector3());
  let distance = 1;
  // A near corner looks farther out than a far one, so the middle of the picture is not the middle of the box: a few rounds settle it.
  for (let round = 0; round < 8; round += 1) {
    const seen = corners.map((corner) => {
      const from = corner.clone().sub(target);
      return { x: from.dot(right), y: from.dot(up), z: from.dot(back) };
    });
    distance = Math.max(...seen.map(({ x, y, z }) => z + Math.max(Math.abs(x) / tanX, Math.abs(y) / tanY)));
    const across = seen.map(({ x, z }) => x / (distance - z));
    const along = seen.map(({ y, z }) => y / (distance - z));
    target.addScaledVector(right, (distance * (Math.min(...across) + Math.max(...across))) / 2);
    target.addScaledVector(up, (distance * (Math.min(...along) + Math.max(...along))) / 2);
  }
  return { target, yaw, pitch, distance };
}

/** Whether any of these boxes' middles or corners is in the picture. @param aspect  width of the picture over its height. */
export function isInSight(boxes: readonly Box3[], orbit: Orbit, aspect: number): boolean {
  const { right, up, back } = axesOf(orbit);
  const tanY = Math.tan(FIELD_OF_VIEW / 2);
  return boxes
    .flatMap((box) => [box.getCenter(new Vector3()), ...cornersOf(box)])
    .some((point) => {
      const from = point.sub(orbit.target);
      const depth = orbit.distance - from.dot(back);
      return depth > 0 && Math.abs(from.dot(up)) <= depth * tanY && Math.abs(from.dot(right)) <= depth * tanY * aspect;
    });
}

/** Whether two views are one, but for rounding. */
export const isSameView = (a: Orbit, b: Orbit): boolean =>
  a.target.distanceTo(b.target) <= 1e-6 * a.distance &&
  Math.abs(a.distance - b.distance) <= 1e-6 * a.distance &&
  Math.abs(a.yaw - b.yaw) + Math.abs(a.pitch - b.pitch) <= 1e-6;

function cornersOf({ min, max }: Box3): Vector3[] {
  return [0, 1, 2, 3, 4, 5, 6, 7].map(
    (i) => new Vector3(i & 1 ? max.x : min.x, i & 2 ? max.y : min.y, i & 4 ? max.z : min.z),
  );
}

/** On the way from one view to another; yaw takes the short way round, distance grows by equal factors. */
export function between(from: Orbit, to: Orbit, share: number): Orbit {
  const turn = Math.atan2(Math.sin(to.yaw - from.yaw), Math.cos(to.yaw - from.yaw));
  return {
    target: from.target.clone().lerp(to.target, share),
    yaw: share === 1 ? to.yaw : from.yaw + turn * share,
    pitch: from.pitch + (to.pitch - from.pitch) * share,
    distance: from.distance * (to.distance / from.distance) ** share,
  };
}
