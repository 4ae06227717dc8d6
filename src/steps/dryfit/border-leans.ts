import type { Stepwise } from '../../base/stepwise.ts';
import { cross3, dot3, length3, pointAt3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { ShellSheet } from './shell-sheet.ts';

/** A pivot below this share of the first: the vertices round the edge do not tell the surface. */
const LEAST_PIVOT = 1e-6;
/** Edges done in one stretch: a few milliseconds. */
const STRETCH = 256;
const TERMS = 6;
const ROW = TERMS + 3;

/**
 * How far the surface's normal at the middle of each border edge leans outward from that of its triangle, radians, > 0 where the surface
 * bends away convexly: what a neighbour that goes on smoothly holds the border to. From the quadratic in the flat sheet's coordinates that
 * fits the vertices round the triangle best. An edge inside, or one whose vertices do not tell a quadratic, has NaN.
 */
export function* borderLeanSteps(sheet: ShellSheet, uv: Float64Array, positions: Float64Array): Stepwise<Float64Array> {
  const { triangles, edgeTriangles, edgeVertices } = sheet;
  const leans = new Float64Array(edgeTriangles.length / 2).fill(NaN);
  const { starts, around } = trianglesAround(sheet);
  let found = 0;
  for (let e = 0; e < leans.length; e += 1) {
    if (edgeTriangles[2 * e + 1] >= 0) continue;
    if (found % STRETCH === 0) yield;
    found += 1;
    const t = edgeTriangles[2 * e];
    const near = new Set<number>();
    for (let i = 0; i < 3; i += 1) {
      const v = triangles[3 * t + i];
      for (let p = starts[v]; p < starts[v + 1]; p += 1)
        for (let j = 0; j < 3; j += 1) near.add(triangles[3 * around[p] + j]);
    }
    const [a, b] = [edgeVertices[2 * e], edgeVertices[2 * e + 1]];
    const normal = fittedNormal([...near], uv, positions, a, b);
    if (normal === null) continue;
    const corner = (i: number): Vec3 => pointAt3(positions, triangles[3 * t + i]);
    const flat = unit3(cross3(sub3(corner(1), corner(0)), sub3(corner(2), corner(0))));
    const outward = cross3(unit3(sub3(pointAt3(positions, b), pointAt3(positions, a))), flat);
    leans[e] = Math.atan2(dot3(normal, outward), dot3(normal, flat));
  }
  return leans;
}

/** Triangles of each vertex, one list after the other. */
function trianglesAround({ triangles, vertexCount }: ShellSheet): { starts: Uint32Array; around: Uint32Array } {
  const starts = new Uint32Array(vertexCount + 1);
  for (const v of triangles) starts[v + 1] += 1;
  for (let v = 0; v < vertexCount; v += 1) starts[v + 1] += starts[v];
  const next = starts.slice();
  const around = new Uint32Array(triangles.length);
  for (let h = 0; h < triangles.length; h += 1) {
    around[next[triangles[h]]] = Math.floor(h / 3);
    next[triangles[h]] += 1;
  }
  return { starts, around };
}

function fittedNormal(near: readonly number[], uv: Float64Array, x: Float64Array, a: number, b: number): Vec3 | null {
  if (near.length < TERMS) return null;
  const [mu, mv] = [(uv[2 * a] + uv[2 * b]) / 2, (uv[2 * a + 1] + uv[2 * b + 1]) / 2];
  const size = Math.max(...near.map((i) => Math.hypot(uv[2 * i] - mu, uv[2 * i + 1] - mv)));
  const rows = new Float64Array(TERMS * ROW);
  for (const i of near) {
    const [u, v] = [(uv[2 * i] - mu) / size, (uv[2 * i + 1] - mv) / size];
    const terms = [
      1,
      u,
      v,
      u * u,
      u * v,
      v * v,
      x[3 * i] - x[3 * a],
      x[3 * i + 1] - x[3 * a + 1],
      x[3 * i + 2] - x[3 * a + 2],
    ];
    for (let p = 0; p < TERMS; p += 1) for (let q = 0; q < ROW; q += 1) rows[ROW * p + q] += terms[p] * terms[q];
  }
  if (!eliminate(rows)) return null;
  const along = (term: number): Vec3 => ({
    x: rows[ROW * term + TERMS],
    y: rows[ROW * term + TERMS + 1],
    z: rows[ROW * term + TERMS + 2],
  });
  const normal = cross3(along(1), along(2));
  return length3(normal) > 0 ? unit3(normal) : null;
}

/** Gauss and Jordan on a positive definite matrix with three right-hand sides, which become the solutions. */
function eliminate(rows: Float64Array): boolean {
  const least = LEAST_PIVOT * rows[0];
  for (let p = 0; p < TERMS; p += 1) {
    const pivot = rows[ROW * p + p];
    if (!(pivot > least)) return false;
    for (let q = p; q < ROW; q += 1) rows[ROW * p + q] /= pivot;
    for (let r = 0; r < TERMS; r += 1) {
      const share = rows[ROW * r + p];
      if (r === p || share === 0) continue;
      for (let q = p; q < ROW; q += 1) rows[ROW * r + q] -= share * rows[ROW * p + q];
    }
  }
  return true;
}
