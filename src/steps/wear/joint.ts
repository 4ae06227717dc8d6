import { DisjointSets } from '../../base/disjoint-sets.ts';
import { shareOfWork, type Work } from '../../base/work.ts';
import { buildTree, type SurfaceTree } from '../../geom/bvh.ts';
import { dot3, pointAt3, rad, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { JointFit } from '../../model/joint.ts';

/** A joint in space, mm: a point of its axis, the axis and the way to what is turned, of any length but 0, and its bend in degrees. */
export interface Hinge {
  readonly point: Vec3;
  readonly axis: Vec3;
  readonly towards: Vec3;
  readonly bendDeg: number;
}

/** Bends tried on the way to the full one, degrees apart; and how near the first meeting is found. */
const STEP_DEG = 3;
const NEAR_DEG = 0.05;

/** Surfaces this near each other meet, mm. */
const MEETS_MM = 1e-6;

/**
 * Bends a joint and looks how near what is turned comes to what stays. Pieces of the part that hang together are turned as one, where more of
 * their corners lie beyond the joint than before it.
 * @param skins      face and back of the foam, x y z per vertex, mm.
 * @param triangles  of either.
 * @throws Cancelled when the work was called off.
 */
export async function bendJoint(
  skins: readonly [Float64Array, Float64Array],
  triangles: Uint32Array,
  hinge: Hinge,
  work: Work,
): Promise<JointFit['bent']> {
  const isTurned = turnedTriangles(skins[0], triangles, hinge);
  const [still, turned] = [false, true].map((which) => treeOf(skins, triangles, (t) => isTurned[t] === which));
  if (still === null || turned === null) return null;
  const at = (deg: number): { readonly mm: number; readonly point: Vec3 } => {
    const hit = still.nearestTo(turned, turnAbout(hinge, rad(deg)));
    if (hit === null) throw new Error('bendJoint: a side without triangles');
    return { mm: hit.distance, point: hit.point };
  };
  const full = Math.abs(hinge.bendDeg);
  const way = Math.sign(hinge.bendDeg);
  const steps = Math.ceil(full / STEP_DEG);
  let free = 0;
  for (let i = 0; i <= steps; i += 1) {
    await shareOfWork(work, i / (steps + 1), 1).pause(0);
    const deg = (full * i) / steps;
    const here = at(way * deg);
    if (here.mm > MEETS_MM) {
      free = deg;
      if (i === steps) return { freeDeg: full, roomMm: here.mm, point: here.point };
      continue;
    }
    let [low, high, meets] = [free, deg, here];
    while (high - low > NEAR_DEG) {
      await work.pause(1);
      const middle = (low + high) / 2;
      const between = at(way * middle);
      if (between.mm > MEETS_MM) low = middle;
      else [high, meets] = [middle, between];
    }
    return { freeDeg: low, roomMm: 0, point: meets.point };
  }
  throw new Error('bendJoint: no bend');
}

/** For each triangle whether it is turned. */
function turnedTriangles(
  positions: Float64Array,
  triangles: Uint32Array,
  { point, towards }: Hinge,
): readonly boolean[] {
  const count = positions.length / 3;
  const sets = new DisjointSets(count);
  for (let t = 0; t < triangles.length; t += 3) {
    sets.join(triangles[t], triangles[t + 1]);
    sets.join(triangles[t], triangles[t + 2]);
  }
  const balance = new Float64Array(count);
  for (let v = 0; v < count; v += 1)
    balance[sets.find(v)] += dot3(sub3(pointAt3(positions, v), point), towards) > 0 ? 1 : -1;
  return Array.from({ length: triangles.length / 3 }, (_, t) => balance[sets.find(triangles[3 * t])] > 0);
}

/** Both skins of some of the triangles; null where there are none. */
function treeOf(
  [face, back]: readonly [Float64Array, Float64Array],
  triangles: Uint32Array,
  isIn: (t: number) => boolean,
): SurfaceTree | null {
  const corners = triangles.filter((_, h) => isIn(Math.floor(h / 3)));
  if (corners.length === 0) return null;
  const positions = new Float64Array(face.length + back.length);
  positions.set(face);
  positions.set(back, face.length);
  const both = new Uint32Array(2 * corners.length);
  both.set(corners);
  both.set(
    corners.map((v) => v + face.length / 3),
    corners.length,
  );
  return buildTree(positions, both);
}

/** A turn about an axis in space as a 4 x 4 matrix, column by column (Rodrigues). */
function turnAbout({ point, axis }: Hinge, angle: number): readonly number[] {
  const { x, y, z } = unit3(axis);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const d = 1 - c;
  const columns = [
    [c + x * x * d, y * x * d + z * s, z * x * d - y * s],
    [x * y * d - z * s, c + y * y * d, z * y * d + x * s],
    [x * z * d + y * s, y * z * d - x * s, c + z * z * d],
  ];
  const moved = [0, 1, 2].map(
    (row) => columns[0][row] * point.x + columns[1][row] * point.y + columns[2][row] * point.z,
  );
  const [mx, my, mz] = [point.x - moved[0], point.y - moved[1], point.z - moved[2]];
  return [...columns.flatMap((column) => [...column, 0]), mx, my, mz, 1];
}
