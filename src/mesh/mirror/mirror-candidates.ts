import type { Stepwise } from '../../base/stepwise.ts';
import { eigen3 } from '../../geom/symmetric-3x3.ts';
import { add3, dot3, pointAt3, scale3, sub3, vec3, type Vec3 } from '../../geom/vec.ts';
import { boxOfPoints3, triangleArea, triangleCentre } from '../measure.ts';
import type { Mesh } from '../mesh.ts';
import { mirrorPlane, reflect, type MirrorPlane } from './mirror-plane.ts';
import { NearField } from './near-field.ts';
import { samplesOf, type SurfaceSamples } from './surface-samples.ts';

/** Directions looked at on half the ball: neighbours are 6 degrees apart. */
const DIRECTIONS = 700;

/** Kept of them: more than any form has planes that are worth a closer look. */
const KEPT = 10;

/** Directions closer than this are one, cosine of 15 degrees. */
const SAME_DIRECTION = Math.cos(Math.PI / 12);

/** Points that fill the field's cells on triangles larger than a cell. */
const FILLING = 4000;

/** Where to begin: the best of all directions, the principal axes of the surface and the file's, through the surface's middle. */
export function* candidateSteps(mesh: Mesh, left: Vec3, rough: SurfaceSamples): Stepwise<readonly MirrorPlane[]> {
  const { min, max } = boxOfPoints3(mesh.positions);
  const { middle, axes } = principalAxes(mesh);
  const cloud: Vec3[] = [];
  for (let t = 0; t < mesh.triangles.length / 3; t += 1) cloud.push(vec3(...triangleCentre(mesh, t)));
  for (let v = 0; v < mesh.positions.length / 3; v += 1) cloud.push(pointAt3(mesh.positions, v));
  cloud.push(...samplesOf(mesh, FILLING).points);
  yield;
  const field = new NearField(cloud, min, max);
  yield;
  const through = (normal: Vec3): MirrorPlane => mirrorPlane(normal, dot3(normal, middle));
  const scored: { plane: MirrorPlane; score: number }[] = [];
  for (let i = 0; i < DIRECTIONS; i += 1) {
    if (i % 20 === 19) yield;
    const plane = through(directionOfHalfBall(i, DIRECTIONS));
    let score = 0;
    rough.points.forEach((p, k) => (score += rough.areas[k] * field.distance(reflect(plane, p)) ** 2));
    scored.push({ plane, score });
  }
  scored.sort((a, b) => a.score - b.score);
  const best: MirrorPlane[] = [];
  for (const { plane } of scored) {
    if (best.length >= KEPT) break;
    if (best.every((other) => Math.abs(dot3(other.normal, plane.normal)) < SAME_DIRECTION)) best.push(plane);
  }
  return [...[left, ...axes, vec3(1, 0, 0), vec3(0, 1, 0), vec3(0, 0, 1)].map(through), ...best];
}

/** Direction `i` of `count` spread evenly on half the ball, along a spiral of the golden angle. */
function directionOfHalfBall(i: number, count: number): Vec3 {
  const z = (i + 0.5) / count;
  const r = Math.sqrt(1 - z * z);
  const turn = i * Math.PI * (3 - Math.sqrt(5));
  return vec3(r * Math.cos(turn), r * Math.sin(turn), z);
}

/** Middle of the surface and the axes about which its area lies (exact for triangles: corners and the middle weigh 1 and 9 of 12). */
function principalAxes(mesh: Mesh): { readonly middle: Vec3; readonly axes: readonly Vec3[] } {
  const { positions, triangles } = mesh;
  let [middle, area] = [vec3(0, 0, 0), 0];
  const each = (use: (p: Vec3, weight: number) => void): void => {
    for (let t = 0; t < triangles.length / 3; t += 1) {
      const own = triangleArea(positions, triangles, t) / 12;
      for (let k = 0; k < 3; k += 1) use(pointAt3(positions, triangles[3 * t + k]), own);
      use(vec3(...triangleCentre(mesh, t)), 9 * own);
    }
  };
  each((p, weight) => {
    middle = add3(middle, scale3(p, weight));
    area += weight;
  });
  middle = scale3(middle, 1 / area);
  const m = new Float64Array(6);
  each((p, weight) => {
    const { x, y, z } = sub3(p, middle);
    [x * x, x * y, x * z, y * y, y * z, z * z].forEach((value, i) => (m[i] += weight * value));
  });
  return { middle, axes: eigen3(m).vectors.map(([x, y, z]) => vec3(x, y, z)) };
}
