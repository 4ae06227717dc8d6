import type { SurfaceTree } from '../../geom/bvh.ts';
import { add3, cross3, dot3, scale3, sub3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import { triangleNormal } from '../measure.ts';
import type { Mesh } from '../mesh.ts';
import { mirrorPlane, reflect, type MirrorPlane } from './mirror-plane.ts';
import type { SurfaceSamples } from './surface-samples.ts';

/**
 * Moves a plane so that the surface mirrored in it comes to lie on the surface: one step of least squares on the distances of mirrored
 * places from the plane of the triangle nearest to each (Mitra, Guibas and Pauly 2006, section 4, with the distance of Chen and Medioni
 * 1992). Places that come to lie farther off than `reach` do not pull.
 * @param reach mm, > 0.
 * @returns the plane, the root mean square of the distances that pulled, mm, Infinity where none did, and the share of the area that pulled.
 */
export function fitPlane(
  mesh: Mesh,
  tree: SurfaceTree,
  { points, areas }: SurfaceSamples,
  plane: MirrorPlane,
  reach: number,
): { readonly plane: MirrorPlane; readonly rms: number; readonly share: number } {
  const { normal, at } = plane;
  const u = unit3(cross3(normal, Math.abs(normal.x) < 0.7 ? vec3(1, 0, 0) : vec3(0, 1, 0)));
  const v = cross3(normal, u);
  // Turned by a and b about the foot of the samples' middle, so that turning and moving hardly depend on each other.
  const middle = middleOf(points, areas);
  const rows = new Float64Array(6);
  const right = [0, 0, 0];
  let weight = 0;
  let squares = 0;
  let [within, area] = [0, 0];
  points.forEach((p, i) => {
    const image = reflect(plane, p);
    const hit = tree.nearest(image, reach);
    area += areas[i];
    if (hit === null) return;
    within += areas[i];
    const m = triangleNormal(mesh.positions, mesh.triangles, hit.triangle);
    const off = dot3(m, sub3(image, hit.point));
    const height = dot3(normal, p) - at;
    const along = sub3(p, middle);
    const across = dot3(m, normal);
    const g = [
      -2 * (dot3(u, along) * across + height * dot3(m, u)),
      -2 * (dot3(v, along) * across + height * dot3(m, v)),
      2 * across,
    ];
    // Far places pull less, those at the end of the reach not at all (Tukey's biweight).
    const w = areas[i] * (1 - (hit.distance / reach) ** 2) ** 2;
    weight += w;
    squares += w * hit.distance * hit.distance;
    for (let r = 0, k = 0; r < 3; r += 1) {
      right[r] -= w * g[r] * off;
      for (let c = r; c < 3; c += 1, k += 1) rows[k] += w * g[r] * g[c];
    }
  });
  if (!(weight > 0)) return { plane, rms: Infinity, share: 0 };
  const [a, b, h] = solve3(rows, right);
  const turned = unit3(add3(normal, add3(scale3(u, a), scale3(v, b))));
  const foot = sub3(middle, scale3(normal, dot3(normal, middle) - at - h));
  return { plane: mirrorPlane(turned, dot3(turned, foot)), rms: Math.sqrt(squares / weight), share: within / area };
}

function middleOf(points: readonly Vec3[], areas: readonly number[]): Vec3 {
  let [sum, area] = [vec3(0, 0, 0), 0];
  points.forEach((p, i) => {
    sum = add3(sum, scale3(p, areas[i]));
    area += areas[i];
  });
  return scale3(sum, 1 / area);
}

/** Share of the largest diagonal value added to all: a ball or a tube leaves a turn of the plane open, and then it stays as it is. */
const SHIFT = 1e-9;

/** Solves a symmetric system of three by Cholesky's way. @param m xx, xy, xz, yy, yz, zz. */
function solve3(m: ArrayLike<number>, right: readonly number[]): readonly [number, number, number] {
  const shift = SHIFT * Math.max(m[0], m[3], m[5]) + Number.MIN_VALUE;
  const a = Math.sqrt(m[0] + shift);
  const [b, c] = [m[1] / a, m[2] / a];
  const d = Math.sqrt(Math.max(m[3] + shift - b * b, shift));
  const e = (m[4] - b * c) / d;
  const f = Math.sqrt(Math.max(m[5] + shift - c * c - e * e, shift));
  const y0 = right[0] / a;
  const y1 = (right[1] - b * y0) / d;
  const y2 = (right[2] - c * y0 - e * y1) / f;
  const x2 = y2 / f;
  const x1 = (y1 - e * x2) / d;
  return [(y0 - b * x1 - c * x2) / a, x1, x2];
}
