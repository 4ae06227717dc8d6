import type { Vec2, Vec3 } from '../../geom/vec.ts';
import { add3, cross3, dot3, length3, scale3, sub3 } from '../../geom/vec.ts';
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

/** The surface that lies beside a cone by one distance all over, laid flat. Places are told by the generator, t, and by how far along it, mm from the apex of the cone itself. */
export interface OffsetCone {
  readonly solid: (t: number, along: number) => Vec3;
  readonly flat: (t: number, along: number) => Vec2;
  /** Where neighbouring generators meet, along them: short of it the surface would fold over itself. 0 where the distance is 0. */
  readonly pinch: (t: number) => number;
}

/**
 * A cone moved along its normals: every generator keeps its direction e and moves by d n. With w = n × e the way round, e' = turn' w and n' = nu w,
 * so neighbouring generators part by (along turn' + d nu) w: the surface is developable with the same turns, its generators begin on the curve
 * Q' = d nu w instead of in one point, and meet where along = -d nu / turn' (parallel surfaces of developable surfaces; any text on the differential
 * geometry of ruled surfaces).
 * @param cone       the same cone laid flat about its apex.
 * @param at         the curve P(t), mm, counter-clockwise seen from the apex's side, so that normals point outward.
 * @param distance   d, mm, outward > 0.
 * @param first      angle of the first generator in the plane, radians.
 */
export function offsetCone(
  cone: Pick<UnrolledCone, 'turn'>,
  apex: Vec3,
  at: (t: number) => Vec3,
  speed: (t: number) => Vec3,
  acceleration: (t: number) => Vec3,
  {
    from,
    to,
    distance,
    first,
  }: { readonly from: number; readonly to: number; readonly distance: number; readonly first: number },
): OffsetCone {
  const frame = (t: number) => {
    const arm = sub3(at(t), apex);
    const reach = length3(arm);
    const e = scale3(arm, 1 / reach);
    const across = cross3(arm, speed(t));
    const size = length3(across);
    const n = scale3(across, 1 / size);
    const w = cross3(n, e);
    // Of the normal's own turn only what lies along w is left after it is made a unit.
    const nu = dot3(cross3(arm, acceleration(t)), w) / size;
    return { e, n, nu, turnRate: size / reach ** 2 };
  };
  const begins = [Math.sin, Math.cos].map((of, k) =>
    distance === 0
      ? () => 0
      : runningIntegral((t) => (k === 0 ? -1 : 1) * distance * frame(t).nu * of(first + cone.turn(t)), from, to, STEPS),
  );
  return {
    solid: (t, along) => {
      const { e, n } = frame(t);
      return add3(apex, add3(scale3(e, along), scale3(n, distance)));
    },
    flat: (t, along) => {
      const angle = first + cone.turn(t);
      return { x: begins[0](t) + along * Math.cos(angle), y: begins[1](t) + along * Math.sin(angle) };
    },
    pinch: (t) => {
      const { nu, turnRate } = frame(t);
      return distance === 0 ? 0 : (-distance * nu) / turnRate;
    },
  };
}
