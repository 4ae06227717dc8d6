import { clipPlaces } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { cross3, dot3, length3, pointAt3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { Surface } from '../../mesh/surface.ts';
import { originOf, targetOf, topologyOf, type Topology } from '../../mesh/topology.ts';
import type { StackFrame } from '../../model/stack.ts';

/** A solid in the frame of its stack: z runs along the axis. */
export interface Solid {
  readonly frame: StackFrame;
  readonly surface: Surface;
  /** Signed volume, mm³, > 0. */
  readonly volumeMm3: number;
  /** Box across and along, mm. */
  readonly min: Vec3;
  readonly max: Vec3;
  /** Corners so near a cutting plane lie in it, mm. */
  readonly snapMm: number;
}

/**
 * Share of the largest coordinate within which a corner lies in a plane: four steps of single precision. A flat face of a file written
 * in it, or one turned to an oblique axis, is flat no better than that; 0.02 µm on a prop of 100 mm.
 */
const SNAP_SHARE = 2.4e-7;

/**
 * Turns a closed mesh into the frame of its stack. Axes of the model keep their coordinates to the last bit.
 * @returns fails with `stack/open` where the surface has a rim, with `stack/empty` where it holds no volume, with `stack/axis` where the
 *   axis has no direction.
 */
export function solidInFrame(mesh: Mesh, axis: Vec3): Result<Solid> {
  if (!(length3(axis) > 0 && Number.isFinite(length3(axis))))
    return fail('stack/axis', 'The axis has no direction: give x, y, z or three numbers that are not all 0.');
  const topology = topologyOf(mesh);
  const open = openSides(mesh, topology);
  if (open.length > 0) {
    const [v] = open[0];
    const { x, y, z } = pointAt3(mesh.positions, v);
    const place = [x, y, z].map((one) => String(Number(one.toFixed(1)) + 0)).join(', ');
    return fail(
      'stack/open',
      `The surface is not closed: ${open.length} ${open.length === 1 ? 'side of a triangle has' : 'sides of triangles have'} no neighbour, the first at ${place} mm, so that inside and outside cannot be told; close the holes first.`,
      { edges: clipPlaces(open), point: [x, y, z] },
    );
  }
  const frame = frameAlong(axis);
  const positions = new Float64Array(mesh.positions.length);
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  let largest = 0;
  for (let v = 0; v < positions.length / 3; v += 1) {
    const p = pointAt3(mesh.positions, v);
    const at = [along(p, frame.x), along(p, frame.y), along(p, frame.z)];
    for (let k = 0; k < 3; k += 1) {
      positions[3 * v + k] = at[k];
      min[k] = Math.min(min[k], at[k]);
      max[k] = Math.max(max[k], at[k]);
      largest = Math.max(largest, Math.abs(at[k]));
    }
  }
  const signed = volumeOf(positions, mesh.triangles, vec3(min[0], min[1], min[2]));
  const size = Math.max(max[0] - min[0], max[1] - min[1], max[2] - min[2]);
  if (!(Math.abs(signed) > 1e-12 * size ** 3))
    return fail('stack/empty', 'The surface holds no volume: a stack needs a solid.');
  if (signed < 0)
    return fail('stack/inside-out', 'The surface is inside out: turn its faces round, so that they look outward.');
  return ok({
    frame,
    surface: { positions, triangles: mesh.triangles, topology },
    volumeMm3: signed,
    min: vec3(min[0], min[1], min[2]),
    max: vec3(max[0], max[1], max[2]),
    snapMm: SNAP_SHARE * largest,
  });
}

/** Sides of triangles with nothing across, as pairs of vertices. */
function openSides({ triangles }: Mesh, { twin }: Topology): readonly (readonly [number, number])[] {
  const open: [number, number][] = [];
  for (let h = 0; h < twin.length; h += 1) if (twin[h] < 0) open.push([originOf(triangles, h), targetOf(triangles, h)]);
  return open;
}

/** A coordinate of the frame; along an axis of the model it is that coordinate, or the same with a minus. */
function along(p: Vec3, direction: Vec3): number {
  const { x, y, z } = direction;
  if (y === 0 && z === 0) return x * p.x;
  if (x === 0 && z === 0) return y * p.y;
  if (x === 0 && y === 0) return z * p.z;
  return dot3(p, direction);
}

/** Right-handed, z along the axis; x is the next axis of the model for one of its own axes. */
export function frameAlong(axis: Vec3): StackFrame {
  const z = unit3(axis);
  const [ax, ay, az] = [Math.abs(z.x), Math.abs(z.y), Math.abs(z.z)];
  const own = az >= ax && az >= ay ? vec3(1, 0, 0) : ax >= ay ? vec3(0, 1, 0) : vec3(0, 0, 1);
  const x = unit3(plain(cross3(cross3(z, own), z)));
  return { x, y: plain(cross3(z, x)), z: plain(z) };
}

/** No minus before a nought. */
const plain = (a: Vec3): Vec3 => vec3(a.x + 0, a.y + 0, a.z + 0);

/** Signed volume within a closed surface, mm³, summed about a point near it. */
function volumeOf(positions: Float64Array, triangles: Uint32Array, about: Vec3): number {
  let six = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => {
      const p = pointAt3(positions, triangles[t + k]);
      return vec3(p.x - about.x, p.y - about.y, p.z - about.z);
    });
    six += dot3(a, cross3(b, c));
  }
  return six / 6;
}
