import { cross3, dot3, length3, pointAt3, scale3, sub3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import { coveredRegions } from '../../geom/polygon-boolean.ts';
import { ringArea, type Ring } from '../../geom/ring.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { buildTopology } from '../../mesh/topology.ts';
import type { Surface } from '../../mesh/surface.ts';

/** Two directions square to one and to each other, right-handed with it. */
function acrossOf(axis: Vec3): readonly [Vec3, Vec3] {
  const other = Math.abs(axis.x) < 0.6 ? vec3(1, 0, 0) : vec3(0, 1, 0);
  const u = unit3(cross3(other, axis));
  return [u, cross3(axis, u)];
}

/**
 * The outline of a part as seen along a direction, run along it as a wall without ends, faces outward.
 * @param direction  any length but 0.
 * @param fromMm, toMm  how far the wall reaches along the direction, counted as the coordinates of the part are.
 */
export function outlineRunThrough(mesh: Mesh, direction: Vec3, fromMm: number, toMm: number): Surface {
  const axis = unit3(direction);
  const [u, w] = acrossOf(axis);
  const rings: Ring[] = [];
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const points = [0, 1, 2].map((k) => pointAt3(mesh.positions, mesh.triangles[t + k]));
    const ring = Float64Array.from(points.flatMap((p) => [dot3(p, u), dot3(p, w)]));
    // Seen from behind a face is the face in front of it once more.
    if (ringArea(ring) > 0) rings.push(ring);
  }
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const { outer } of coveredRegions(rings)) {
    const [first, count] = [positions.length / 3, outer.length / 2];
    for (const along of [fromMm, toMm])
      for (let i = 0; i < count; i += 1) {
        const p = sum3(scale3(u, outer[2 * i]), scale3(w, outer[2 * i + 1]), scale3(axis, along));
        positions.push(p.x, p.y, p.z);
      }
    for (let i = 0; i < count; i += 1) {
      const next = (i + 1) % count;
      triangles.push(first + i, first + next, first + count + next, first + i, first + count + next, first + count + i);
    }
  }
  return surfaceFrom(positions, triangles);
}

const sum3 = (a: Vec3, b: Vec3, c: Vec3): Vec3 => ({ x: a.x + b.x + c.x, y: a.y + b.y + c.y, z: a.z + b.z + c.z });

const surfaceFrom = (positions: readonly number[], triangles: readonly number[]): Surface => {
  const packed = Uint32Array.from(triangles);
  return {
    positions: Float64Array.from(positions),
    triangles: packed,
    topology: buildTopology(packed, positions.length / 3),
  };
};

/**
 * A flat surface across everything within a distance, as a saw cuts through a prop.
 * @param normal  any length but 0.
 */
export function planeAcross(point: Vec3, normal: Vec3, reachMm: number): Surface {
  const axis = unit3(normal);
  if (!(length3(axis) > 0.5)) throw new RangeError('a plane without a direction');
  const [u, w] = acrossOf(axis);
  // Turned off the axes, so that its one diagonal lies in no plane that things are built along.
  const corners = [0.4, 1.9, 3.6, 5.1].map((turn) =>
    sum3(point, scale3(u, 2 * reachMm * Math.cos(turn)), scale3(w, 2 * reachMm * Math.sin(turn))),
  );
  return surfaceFrom(
    corners.flatMap(({ x, y, z }) => [x, y, z]),
    [0, 1, 2, 0, 2, 3],
  );
}

/** How far the farthest of packed points lies from a place, mm. */
export function reachFrom(point: Vec3, positions: ArrayLike<number>): number {
  let most = 0;
  for (let v = 0; v < positions.length / 3; v += 1) most = Math.max(most, length3(sub3(pointAt3(positions, v), point)));
  return most;
}
