import type { RestShapes } from './rest-shapes.ts';

/**
 * The patch seen along its mean normal: a start that costs nothing and lies close to the best for a gently domed piece. Its triangles turn
 * over where the surface looks more than a right angle away from the mean: ask before using it.
 * @returns x y per local vertex, mm, seen from outside; null where the patch has no mean normal (it closes on itself).
 */
export function planeStart({ corners, points, vertexCount, count }: RestShapes): Float64Array | null {
  let nx = 0;
  let ny = 0;
  let nz = 0;
  let total = 0;
  for (let t = 0; t < count; t += 1) {
    const a = 3 * corners[3 * t];
    const b = 3 * corners[3 * t + 1];
    const c = 3 * corners[3 * t + 2];
    const px = points[b] - points[a];
    const py = points[b + 1] - points[a + 1];
    const pz = points[b + 2] - points[a + 2];
    const qx = points[c] - points[a];
    const qy = points[c + 1] - points[a + 1];
    const qz = points[c + 2] - points[a + 2];
    const x = py * qz - pz * qy;
    const y = pz * qx - px * qz;
    const z = px * qy - py * qx;
    nx += x;
    ny += y;
    nz += z;
    total += Math.sqrt(x * x + y * y + z * z);
  }
  const size = Math.hypot(nx, ny, nz);
  if (!(size > LEAST_LEAN * total)) return null;
  nx /= size;
  ny /= size;
  nz /= size;
  // Any pair of axes will do, as long as they turn the right way round: u from the model's axis that lies flattest, v = n x u.
  const [ax, ay, az] =
    Math.abs(nx) <= Math.abs(ny) && Math.abs(nx) <= Math.abs(nz)
      ? [1, 0, 0]
      : Math.abs(ny) <= Math.abs(nz)
        ? [0, 1, 0]
        : [0, 0, 1];
  const along = ax * nx + ay * ny + az * nz;
  const inPlane = Math.sqrt(1 - along * along);
  const [ux, uy, uz] = [(ax - along * nx) / inPlane, (ay - along * ny) / inPlane, (az - along * nz) / inPlane];
  const [vx, vy, vz] = [ny * uz - nz * uy, nz * ux - nx * uz, nx * uy - ny * ux];
  const flat = new Float64Array(2 * vertexCount);
  for (let v = 0; v < vertexCount; v += 1) {
    const [x, y, z] = [points[3 * v], points[3 * v + 1], points[3 * v + 2]];
    flat[2 * v] = ux * x + uy * y + uz * z;
    flat[2 * v + 1] = vx * x + vy * y + vz * z;
  }
  return flat;
}

/** Least share of a patch's area that must look one way: below it the mean normal means nothing. */
const LEAST_LEAN = 0.3;
