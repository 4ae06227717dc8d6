import { runAtOnce } from '../../base/stepwise.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { composed4, move4, placedPoints4, turnUpTo4 } from '../../geom/matrix4.ts';
import { dot3, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { buildTopology } from '../../mesh/topology.ts';
import { surfaceOf } from '../../mesh/surface.ts';
import { vertexOffsetSteps } from '../../mesh/vertex-offset.ts';
import type { Entering, HoleWall } from './cut-holes.ts';

/** A round core: a point of its axis, its direction, and how far it reaches from that point both ways, mm. */
export interface RoundCore {
  readonly name: string;
  readonly point: Vec3;
  readonly direction: Vec3;
  readonly diameterMm: number;
  readonly fromMm: number;
  readonly toMm: number;
}

/** Flats round a core: their middles are nearer to the axis than its own surface by 0.004 % of the radius. */
export const CORE_FLATS = 360;

/**
 * A round core with room all round, without its ends: a hole where it ends is the maker's to place.
 * @returns fails with `assembly/core` where it has no size or direction.
 */
export function enteringCore(
  { name, point, direction, diameterMm, fromMm, toMm }: RoundCore,
  roomMm: number,
): Result<Entering> {
  const radius = diameterMm / 2 + roomMm;
  const numbers = [point.x, point.y, point.z, direction.x, direction.y, direction.z, diameterMm, fromMm, toMm, roomMm];
  const axis = unit3(direction);
  if (
    !numbers.every(Number.isFinite) ||
    !(diameterMm > 0) ||
    !(roomMm >= 0) ||
    !(toMm > fromMm) ||
    !(dot3(axis, axis) > 0.5)
  )
    return fail(
      'assembly/core',
      `${name} needs a diameter, a length and a direction, and room of 0 or more: give all of them.`,
    );
  const positions = new Float64Array(6 * CORE_FLATS);
  const triangles = new Uint32Array(6 * CORE_FLATS);
  for (let i = 0; i < CORE_FLATS; i += 1) {
    // Half a step on, so that corners do not lie in the planes that things are most often built along.
    const turn = (2 * Math.PI * (i + 0.5)) / CORE_FLATS;
    const [x, y] = [radius * Math.cos(turn), radius * Math.sin(turn)];
    positions.set([x, y, fromMm], 3 * i);
    positions.set([x, y, toMm], 3 * (CORE_FLATS + i));
    const next = (i + 1) % CORE_FLATS;
    triangles.set([i, next, CORE_FLATS + next, i, CORE_FLATS + next, CORE_FLATS + i], 6 * i);
  }
  return ok({
    name,
    surface: {
      positions: placedPoints4(composed4(move4(point), turnUpTo4(axis)), positions),
      triangles,
      topology: buildTopology(triangles, 2 * CORE_FLATS),
    },
    normalAt(place) {
      const away = sub3(place, point);
      return unit3(sub3(away, scale3(axis, dot3(away, axis))));
    },
    wall: { kind: 'surface' },
  });
}

/**
 * Any part with room all round: each face moved out by it, meeting its neighbours as before, so that corners keep more room than faces.
 * @param mesh  where it stands, faces outward.
 */
export function enteringPart(
  name: string,
  mesh: Mesh,
  roomMm: number,
  wall: HoleWall = { kind: 'surface' },
): Result<Entering> {
  if (!(roomMm >= 0) || !Number.isFinite(roomMm))
    return fail('assembly/core', `The room round ${name} must be 0 or more.`);
  const surface = surfaceOf(mesh);
  if (roomMm === 0) return ok({ name, surface, wall });
  const { directions } = runAtOnce(vertexOffsetSteps(mesh.positions, mesh.triangles));
  const positions = mesh.positions.map((value, i) => value + roomMm * directions[i]);
  return ok({ name, surface: { ...surface, positions }, wall });
}
