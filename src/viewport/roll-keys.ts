import type { Work } from '../base/work.ts';
import { cornerAfter, cornerBefore } from '../mesh/corners-at-vertices.ts';
import { EdgeFit } from './edge-fit.ts';
import type { RollTree } from './roll-tree.ts';

/**
 * A patch on its way from the finished shape to the flat piece, in a few steps between which is gone straight. Each step is centred on
 * the mean of its vertices and turned so that the middle triangle lies in the plane z = 0 as it does in the flat piece, face up (+z).
 */
export interface RollKeys {
  /** Packed xyz per vertex for each step; the first is the finished shape, the last the flat piece. */
  readonly steps: readonly Float32Array[];
  /** Takes directions of the first step to the space of the finished shape: three columns, packed. */
  readonly shapeFromRoll: readonly number[];
  /** What was taken off to centre the first step (space of the shape) and the last (flat piece), mm. */
  readonly shapeCentre: readonly [number, number, number];
  readonly flatCentre: readonly [number, number];
}

/** Steps from shape to flat. A piece that wraps all round turns its rims by 18 degrees a step, so a chord is 1.2 % short at most. */
const STEPS = 10;

/** Larger patches are tidied with less care, so that they are ready in time. */
const LARGE_VERTEX_COUNT = 20_000;

/**
 * Bends a patch flat. Every hinge is opened by the same share while lengths go from those of the shape to those of the flat piece;
 * where ways round meet (a domed patch cannot open all hinges alike) the triangles are joined by least squares.
 * @param shape packed xyz per vertex, mm.
 * @param flat  packed xy per vertex, mm.
 */
export async function rollKeys(
  triangles: Uint32Array,
  shape: Float32Array,
  flat: ArrayLike<number>,
  tree: RollTree,
  work: Work,
): Promise<RollKeys> {
  const vertexCount = shape.length / 3;
  const root = tree.order[0];
  const basis = rootBasis(triangles, shape, flat, root);
  const first = turnedInto(shape, basis);
  const shapeMean = centre(first);
  const last = new Float32Array(3 * vertexCount);
  for (let v = 0; v < vertexCount; v += 1) {
    last[3 * v] = flat[2 * v];
    last[3 * v + 1] = flat[2 * v + 1];
  }
  const flatMean = centre(last);
  const steps = [first];
  await work.pause(0);
  const fit = new EdgeFit(triangles, vertexCount, tree);
  const copies = new Float64Array(3 * triangles.length);
  const isLarge = vertexCount > LARGE_VERTEX_COUNT;
  for (let step = 1; step < STEPS; step += 1) {
    await work.pause(step / STEPS);
    const share = step / STEPS;
    layTriangles(triangles, flat, tree, share, copies);
    await work.pause(step / STEPS);
    const positions = await fit.join(copies, share, isLarge ? 1 : 2, isLarge ? 20 : 30, work);
    centre(positions);
    steps.push(positions);
  }
  steps.push(last);
  return {
    steps,
    shapeFromRoll: basis,
    shapeCentre: applied(basis, shapeMean),
    flatCentre: [flatMean[0], flatMean[1]],
  };
}

/**
 * Lays every triangle by itself: the first in the plane, each other on its hinge.
 * @param share  0 as on the shape, 1 flat.
 * @param copies receives xyz for each corner.
 */
export function layTriangles(
  triangles: Uint32Array,
  flat: ArrayLike<number>,
  tree: RollTree,
  share: number,
  copies: Float64Array,
): void {
  const length = (h: number): number => tree.shapeLength[h] + share * (tree.flatLength[h] - tree.shapeLength[h]);
  const root = 3 * tree.order[0];
  const [a, b] = [triangles[root], triangles[root + 1]];
  const alongRoot = Math.atan2(flat[2 * b + 1] - flat[2 * a + 1], flat[2 * b] - flat[2 * a]);
  const [cos, sin] = [Math.cos(alongRoot), Math.sin(alongRoot)];
  const apex = apexOf(length(root), length(root + 1), length(root + 2));
  const put = (c: number, x: number, y: number, z: number): void => {
    copies[3 * c] = x;
    copies[3 * c + 1] = y;
    copies[3 * c + 2] = z;
  };
  put(root, 0, 0, 0);
  put(root + 1, cos * length(root), sin * length(root), 0);
  put(root + 2, cos * apex.x - sin * apex.y, sin * apex.x + cos * apex.y, 0);
  for (let i = 1; i < tree.order.length; i += 1) {
    const t = tree.order[i];
    const h = tree.hinge[t];
    const g = tree.across[h];
    // The hinge runs against the half-edge across: from its end to its start.
    const start = 3 * cornerAfter(g);
    const end = 3 * g;
    const behind = 3 * cornerBefore(g);
    let [ex, ey, ez] = [
      copies[end] - copies[start],
      copies[end + 1] - copies[start + 1],
      copies[end + 2] - copies[start + 2],
    ];
    const [ux, uy, uz] = [
      copies[behind] - copies[start],
      copies[behind + 1] - copies[start + 1],
      copies[behind + 2] - copies[start + 2],
    ];
    const edge = Math.sqrt(ex * ex + ey * ey + ez * ez) || 1;
    ex /= edge;
    ey /= edge;
    ez /= edge;
    // Normal of the triangle behind (its half-edge runs along -e), and the way out of it in its plane.
    let [nx, ny, nz] = [uy * ez - uz * ey, uz * ex - ux * ez, ux * ey - uy * ex];
    const area = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
    nx /= area;
    ny /= area;
    nz /= area;
    const [ox, oy, oz] = [ny * ez - nz * ey, nz * ex - nx * ez, nx * ey - ny * ex];
    const bend = (1 - share) * tree.foldRad[t];
    const top = apexOf(length(h), length(cornerAfter(h)), length(cornerBefore(h)));
    const out = top.y * Math.cos(bend);
    const down = -top.y * Math.sin(bend);
    put(h, copies[start], copies[start + 1], copies[start + 2]);
    put(cornerAfter(h), copies[end], copies[end + 1], copies[end + 2]);
    put(
      cornerBefore(h),
      copies[start] + top.x * ex + out * ox + down * nx,
      copies[start + 1] + top.x * ey + out * oy + down * ny,
      copies[start + 2] + top.x * ez + out * oz + down * nz,
    );
  }
}

/** Third corner of a triangle whose first two lie at 0 and at `ab` on the x axis; on the line where the lengths cannot close. */
function apexOf(ab: number, bc: number, ca: number): { x: number; y: number } {
  if (ab === 0) return { x: 0, y: ca };
  const x = (ab * ab + ca * ca - bc * bc) / (2 * ab);
  return { x, y: Math.sqrt(Math.max(0, ca * ca - x * x)) };
}

/** Columns of the turn that takes the flat lie of triangle `t` (face up) to its lie on the shape; t's first edge keeps its direction. */
function rootBasis(triangles: Uint32Array, shape: Float32Array, flat: ArrayLike<number>, t: number): number[] {
  const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
  const side = (v: number): number[] => [0, 1, 2].map((k) => shape[3 * v + k] - shape[3 * a + k]);
  const [e, u] = [unit(side(b)), side(c)];
  const n = unit([e[1] * u[2] - e[2] * u[1], e[2] * u[0] - e[0] * u[2], e[0] * u[1] - e[1] * u[0]]);
  const m = [n[1] * e[2] - n[2] * e[1], n[2] * e[0] - n[0] * e[2], n[0] * e[1] - n[1] * e[0]];
  const angle = Math.atan2(flat[2 * b + 1] - flat[2 * a + 1], flat[2 * b] - flat[2 * a]);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const x = e.map((value, k) => cos * value - sin * m[k]);
  const y = e.map((value, k) => sin * value + cos * m[k]);
  return [...x, ...y, ...n];
}

function unit(a: readonly number[]): number[] {
  const length = Math.hypot(a[0], a[1], a[2]) || 1;
  return a.map((value) => value / length);
}

/** Points of the shape seen in the turned frame. */
function turnedInto(shape: Float32Array, basis: readonly number[]): Float32Array {
  const result = new Float32Array(shape.length);
  for (let i = 0; i < shape.length; i += 3) {
    for (let k = 0; k < 3; k += 1) {
      result[i + k] = shape[i] * basis[3 * k] + shape[i + 1] * basis[3 * k + 1] + shape[i + 2] * basis[3 * k + 2];
    }
  }
  return result;
}

function applied(basis: readonly number[], [x, y, z]: readonly number[]): [number, number, number] {
  return [
    x * basis[0] + y * basis[3] + z * basis[6],
    x * basis[1] + y * basis[4] + z * basis[7],
    x * basis[2] + y * basis[5] + z * basis[8],
  ];
}

/** Moves the points so that their mean is the origin; returns the mean they had. */
function centre(points: Float32Array): [number, number, number] {
  const mean: [number, number, number] = [0, 0, 0];
  const count = points.length / 3;
  for (let i = 0; i < points.length; i += 1) mean[i % 3] += points[i] / count;
  for (let i = 0; i < points.length; i += 1) points[i] -= mean[i % 3];
  return mean;
}
