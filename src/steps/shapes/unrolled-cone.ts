import type { Vec2, Vec3 } from '../../geom/vec.ts';
import { cross3, length3, sub3 } from '../../geom/vec.ts';
import { runningIntegral } from '../../geom/integrate.ts';

/** A cone over any curve, laid flat about its apex: places of the curve in the plane, exact but for an integral taken to about 1e-13. */
export interface UnrolledCone {
  /** Distance of the curve from the apex, mm. */
  readonly reach: (t: number) => number;
  /** Angle in the plane from the curve's start, radians. */
  readonly turn: (t: number) => number;
  /** Area between the start and t, mm². */
  readonly area: (t: number) => number;
}

/** Steps over which the running integral is tabled. */
const STEPS = 720;

/**
 * Every generator keeps its length and its angle from the next: d turn = |(P - A) × P'| / |P - A|² dt (development of a general cone,
 * any text on developable surfaces; the triangulation of sheet-metal books with endless many triangles).
 * @param at     the curve P(t), mm.
 * @param speed  P'(t).
 */
export function unrolledCone(
  apex: Vec3,
  at: (t: number) => Vec3,
  speed: (t: number) => Vec3,
  from: number,
  to: number,
): UnrolledCone {
  const arm = (t: number): Vec3 => sub3(at(t), apex);
  const swept = (t: number): number => length3(cross3(arm(t), speed(t)));
  const turn = runningIntegral((t) => swept(t) / length3(arm(t)) ** 2, from, to, STEPS);
  const area = runningIntegral((t) => swept(t) / 2, from, to, STEPS);
  return { reach: (t) => length3(arm(t)), turn, area };
}

/** A place at a share of the reach from the apex, turned counter-clockwise by `first` and moved to `origin`. */
export function conePlace(cone: UnrolledCone, t: number, share = 1, first = 0, origin: Vec2 = { x: 0, y: 0 }): Vec2 {
  const [reach, angle] = [cone.reach(t) * share, first + cone.turn(t)];
  return { x: origin.x + reach * Math.cos(angle), y: origin.y + reach * Math.sin(angle) };
}
