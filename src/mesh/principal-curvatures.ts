/** A surface of triangles that ends at its borders. Half-edge `3 t + k` leaves corner k of triangle t. */
export interface FoldedSurface {
  readonly positions: ArrayLike<number>;
  /** Three vertices per triangle. */
  readonly triangles: ArrayLike<number>;
  readonly vertexCount: number;
  /** Triangle across each half-edge, or -1 at the border. */
  readonly across: ArrayLike<number>;
  /** Signed turn at each half-edge, radians, convex > 0; 0 at the border. */
  readonly foldRad: ArrayLike<number>;
}

/** Symmetric matrices xx xy xz yy yz zz, one per vertex, and the area each stands for, mm². */
interface Cells {
  readonly sums: Float64Array;
  readonly areas: Float64Array;
}

/**
 * The principal curvature of greatest size at each vertex, 1/mm, convex > 0: the curvature measure of Cohen-Steiner and Morvan (2003, "Restricted
 * Delaunay triangulations and normal cycle", section 3) over the vertex's own cell: each edge adds its fold times the half of its length that lies in the
 * cell, times its direction squared, and the sum is divided by a third of the triangles round the vertex. So a fold counts as spread over the
 * facets beside it: a tube of flat sides has fold / width of side, which misses 1 / R by a share of (turn per side)² / 24, however coarse. A cell
 * smaller than a circle of radius `spreadMm` is joined with those near it: what bends cannot follow less.
 *
 *        | fold |            cell of v: half of each edge at v,
 *     ---+--v---+---         a third of each triangle
 *        |      |
 *
 * Nothing crosses a border, and what lies at a border has only the folds inside.
 */
export function greatestCurvatures(surface: FoldedSurface, spreadMm: number): Float64Array {
  const matrices = curvatureMatrices(surface, spreadMm);
  return Float64Array.from({ length: surface.vertexCount }, (_, v) => greatestCurvature(matrices, v));
}

/**
 * The measure itself: for each vertex a symmetric matrix xx xy xz yy yz zz, 1/mm, whose value of greatest size is the curvature above, along the line about
 * which the surface bends there. 0 throughout where a vertex has no area.
 */
export function curvatureMatrices(surface: FoldedSurface, spreadMm: number): Float64Array {
  const cells = cellsOf(surface);
  const near = neighboursOf(surface);
  const matrices = new Float64Array(6 * surface.vertexCount);
  const sum = new Float64Array(6);
  const seen = new Int32Array(surface.vertexCount).fill(-1);
  const found = new Int32Array(MOST_JOINED);
  const wanted = Math.PI * spreadMm * spreadMm;
  for (let v = 0; v < surface.vertexCount; v += 1) {
    const area = joinCells(v, cells, near, wanted, sum, seen, found);
    if (area > 0) for (let k = 0; k < 6; k += 1) matrices[6 * v + k] = sum[k] / area;
  }
  return matrices;
}

/** A cell is joined with no more than so many others, so that a mesh much finer than the foam costs no more. */
const MOST_JOINED = 64;

function cellsOf({ positions, triangles, vertexCount, across, foldRad }: FoldedSurface): Cells {
  const sums = new Float64Array(6 * vertexCount);
  const areas = new Float64Array(vertexCount);
  for (let t = 0; t < triangles.length; t += 3) {
    const third = areaOf(positions, triangles, t) / 3;
    for (let k = 0; k < 3; k += 1) {
      const [v, w] = [triangles[t + k], triangles[t + ((k + 1) % 3)]];
      areas[v] += third;
      if (across[t + k] < 0 || foldRad[t + k] === 0) continue;
      const x = positions[3 * w] - positions[3 * v];
      const y = positions[3 * w + 1] - positions[3 * v + 1];
      const z = positions[3 * w + 2] - positions[3 * v + 2];
      const length = Math.hypot(x, y, z);
      // Each edge is met once from either side and has half of its length in either cell.
      if (length > 0) for (const cell of [v, w]) addTo(sums, 6 * cell, foldRad[t + k] / (4 * length), x, y, z);
    }
  }
  return { sums, areas };
}

function addTo(sums: Float64Array, i: number, s: number, x: number, y: number, z: number): void {
  sums[i] += s * x * x;
  sums[i + 1] += s * x * y;
  sums[i + 2] += s * x * z;
  sums[i + 3] += s * y * y;
  sums[i + 4] += s * y * z;
  sums[i + 5] += s * z * z;
}

function areaOf(p: ArrayLike<number>, triangles: ArrayLike<number>, t: number): number {
  const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
  const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
  const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
  return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2;
}

/** For each vertex the vertices inside the surface that share an edge with it. */
interface Neighbours {
  readonly starts: Uint32Array;
  readonly list: Uint32Array;
}

/** A vertex on the border has only part of its folds: it is nobody's neighbour. */
function neighboursOf({ triangles, vertexCount, across }: FoldedSurface): Neighbours {
  const isBorder = new Uint8Array(vertexCount);
  const next = (h: number): number => triangles[h % 3 === 2 ? h - 2 : h + 1];
  for (let h = 0; h < across.length; h += 1) if (across[h] < 0) isBorder[triangles[h]] = isBorder[next(h)] = 1;
  const starts = new Uint32Array(vertexCount + 1);
  // Every vertex inside is the end of one half-edge for each edge at it.
  for (let h = 0; h < across.length; h += 1) if (isBorder[next(h)] === 0) starts[triangles[h] + 1] += 1;
  for (let v = 0; v < vertexCount; v += 1) starts[v + 1] += starts[v];
  const fill = starts.slice();
  const list = new Uint32Array(starts[vertexCount]);
  for (let h = 0; h < across.length; h += 1) if (isBorder[next(h)] === 0) list[fill[triangles[h]]++] = next(h);
  return { starts, list };
}

/** Sums cells outward from `v`, ring by ring, until they have the area wanted. Returns their area, mm². */
function joinCells(
  v: number,
  { sums, areas }: Cells,
  { starts, list }: Neighbours,
  wanted: number,
  sum: Float64Array,
  seen: Int32Array,
  found: Int32Array,
): number {
  sum.fill(0);
  seen[v] = v;
  found[0] = v;
  let [count, area, ringEnd] = [1, 0, 1];
  for (let i = 0; i < count; i += 1) {
    // A ring that is begun is taken whole: half of one would lean to a side.
    if (i === ringEnd) {
      if (area >= wanted) break;
      ringEnd = count;
    }
    const u = found[i];
    area += areas[u];
    for (let k = 0; k < 6; k += 1) sum[k] += sums[6 * u + k];
    for (let n = starts[u]; n < starts[u + 1] && count < MOST_JOINED; n += 1) {
      const w = list[n];
      if (seen[w] === v) continue;
      seen[w] = v;
      found[count++] = w;
    }
  }
  return area;
}

/** Of three principal values that of the normal is 0, so the other two follow from their sum and the sum of their squares. */
export function greatestCurvature(matrices: Float64Array, v: number): number {
  const [xx, xy, xz, yy, yz, zz] = matrices.subarray(6 * v, 6 * v + 6);
  const sum = xx + yy + zz;
  const squares = xx * xx + yy * yy + zz * zz + 2 * (xy * xy + xz * xz + yz * yz);
  const apart = Math.sqrt(Math.max(0, squares / 2 - (sum * sum) / 4));
  return sum / 2 + (sum < 0 ? -apart : apart);
}
