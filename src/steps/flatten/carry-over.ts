import { MinHeap } from '../../base/min-heap.ts';
import type { Patch } from '../../model/patch.ts';
import { relaxPart, type PartWishes } from './relax-part.ts';

/** A patch of the same mesh that was laid flat before. */
export interface EarlierFlat {
  readonly patch: Patch;
  /** x y per local vertex, mm, without a flip. */
  readonly uv: Float64Array;
}

/** From so many triangles on, what another earlier patch held is laid as one stiff part; fewer are unfolded one by one. */
const STIFF_PART = 300;

/** Corners within this share of a side's length lie in one place: what was not moved keeps its coordinates to the last digit. */
const SAME_PLACE_SHARE = 1e-9;

/**
 * A start for a patch that has come of a change of seams, from the flat shapes of earlier patches with which it shares triangles.
 *
 * The earlier patch that shares most gives its coordinates. What it did not hold is laid beside it: a large part that another earlier
 * patch held as it lay there, all else triangle by triangle with true sides. Vertices are matched by triangle and corner, so that one
 * which a seam has doubled lies twice in the old place, and one which a seam has left lies half way between its old places. Where that
 * leaves triangles crushed or turned over, they and some rings around them are relaxed.
 * @param positions  x y z per mesh vertex of a surface of that mesh, mm; any of the patch's layers serves.
 * @param earlier    laid flat without a flip; of two that share as much the first counts.
 * @param wishes     what the patch is asked for: what is relaxed is brought near the best under it.
 * @returns x y per local vertex, mm, in the frame of the earlier patch that shares most and without a flip; null where nothing is shared
 *          or no such shape was found near by, for an ordinary start.
 */
export function carryOver(
  patch: Patch,
  positions: Float64Array,
  earlier: readonly EarlierFlat[],
  wishes: PartWishes = {},
): Float64Array | null {
  const shares = earlier
    .map(({ patch: old, uv }) => ({ old, uv, ...sharedTriangles(patch, old) }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count);
  if (shares.length === 0) return null;
  const layout = new Layout(patch, positions);
  layout.take(shares[0], STAYS);
  for (const share of shares.slice(1)) {
    const fit = layout.fitOf(share);
    if (fit !== null) layout.take(share, fit);
  }
  layout.unfoldOthers();
  layout.loosenChanges(shares[0]);
  return layout.isComplete() ? relaxPart(patch, positions, layout.flat, layout.loose, wishes) : null;
}

/** How many triangles of `patch` the other holds too. Both lists ascend. */
export function countShared(patch: Patch, other: Patch): number {
  return sharedTriangles(patch, other).count;
}

interface Share {
  readonly old: Patch;
  readonly uv: Float64Array;
  /** For each triangle of the new patch its index in the old one, or -1. */
  readonly indexInOld: Int32Array;
}

function sharedTriangles(patch: Patch, old: Patch): { indexInOld: Int32Array; count: number } {
  const mine = patch.meshTriangles;
  const theirs = old.meshTriangles;
  const indexInOld = new Int32Array(mine.length).fill(-1);
  let count = 0;
  for (let i = 0, j = 0; i < mine.length && j < theirs.length;) {
    if (mine[i] < theirs[j]) i += 1;
    else if (mine[i] > theirs[j]) j += 1;
    else {
      indexInOld[i] = j;
      count += 1;
      i += 1;
      j += 1;
    }
  }
  return { indexInOld, count };
}

/** Turn and move: x to cos x - sin y + dx, y to sin x + cos y + dy. */
interface Fit {
  readonly cos: number;
  readonly sin: number;
  readonly dx: number;
  readonly dy: number;
}

const STAYS: Fit = { cos: 1, sin: 0, dx: 0, dy: 0 };

/** What of a patch lies in the plane already. */
class Layout {
  readonly flat: Float64Array;
  /** 1 for a vertex without an earlier place of its own, or with more than one, or round which triangles have come or gone. */
  readonly loose: Uint8Array;
  readonly #patch: Patch;
  readonly #positions: Float64Array;
  readonly #hasVertex: Uint8Array;
  readonly #hasTriangle: Uint8Array;

  constructor(patch: Patch, positions: Float64Array) {
    const vertexCount = patch.meshVertices.length;
    this.#patch = patch;
    this.#positions = positions;
    this.flat = new Float64Array(2 * vertexCount);
    this.loose = new Uint8Array(vertexCount);
    this.#hasVertex = new Uint8Array(vertexCount);
    this.#hasTriangle = new Uint8Array(patch.meshTriangles.length);
  }

  isComplete(): boolean {
    return !this.#hasVertex.includes(0);
  }

  /** Lays the triangles that the share holds and no earlier one held. Vertices that lie already stay, and are loose. */
  take({ old, uv, indexInOld }: Share, { cos, sin, dx, dy }: Fit): void {
    const { triangles } = this.#patch;
    const vertexCount = this.#hasVertex.length;
    const sum = new Float64Array(2 * vertexCount);
    const times = new Uint32Array(vertexCount);
    const before = this.#hasVertex.slice();
    for (let t = 0; t < indexInOld.length; t += 1) {
      if (indexInOld[t] < 0 || this.#hasTriangle[t] === 1) continue;
      this.#hasTriangle[t] = 1;
      const size = sideScale(uv, old.triangles, indexInOld[t]);
      for (let k = 0; k < 3; k += 1) {
        const v = triangles[3 * t + k];
        const from = 2 * old.triangles[3 * indexInOld[t] + k];
        const x = cos * uv[from] - sin * uv[from + 1] + dx;
        const y = sin * uv[from] + cos * uv[from + 1] + dy;
        if (this.#hasVertex[v] === 1) {
          const isElsewhere =
            Math.abs(x - this.flat[2 * v]) + Math.abs(y - this.flat[2 * v + 1]) > SAME_PLACE_SHARE * size;
          if (isElsewhere) this.loose[v] = 1;
        } else {
          this.flat[2 * v] = x;
          this.flat[2 * v + 1] = y;
          this.#hasVertex[v] = 1;
        }
        sum[2 * v] += x;
        sum[2 * v + 1] += y;
        times[v] += 1;
      }
    }
    for (let v = 0; v < vertexCount; v += 1) {
      if (before[v] === 1 || this.loose[v] === 0) continue;
      this.flat[2 * v] = sum[2 * v] / times[v];
      this.flat[2 * v + 1] = sum[2 * v + 1] / times[v];
    }
  }

  /**
   * The turn and move that brings a share's coordinates nearest to the vertices that lie already, in least squares.
   * @returns null where it holds few triangles that do not lie yet, or touches those that do in less than two places.
   */
  fitOf({ old, uv, indexInOld }: Share): Fit | null {
    const { triangles } = this.#patch;
    const shared: [number, number][] = [];
    const seen = new Set<number>();
    let count = 0;
    for (let t = 0; t < indexInOld.length; t += 1) {
      if (indexInOld[t] < 0 || this.#hasTriangle[t] === 1) continue;
      count += 1;
      for (let k = 0; k < 3; k += 1) {
        const v = triangles[3 * t + k];
        if (this.#hasVertex[v] === 0 || seen.has(v)) continue;
        seen.add(v);
        shared.push([2 * old.triangles[3 * indexInOld[t] + k], 2 * v]);
      }
    }
    return count < STIFF_PART ? null : fitOfPoints(uv, this.flat, shared);
  }

  /** Lays triangle after triangle with true sides on one that lies, the longest shared side first. */
  unfoldOthers(): void {
    const { triangles } = this.#patch;
    const near = new Uint8Array(this.#hasVertex.length);
    for (let t = 0; t < this.#hasTriangle.length; t += 1) {
      if (this.#hasTriangle[t] === 1) continue;
      for (let k = 0; k < 3; k += 1) near[triangles[3 * t + k]] = 1;
    }
    // Sides (3 t + k, from corner k to the next) of what is to be laid, and of what lies beside it, by their two ends.
    const sideOf = new Map<number, number>();
    const keyOf = (v: number, w: number): number => v * near.length + w;
    for (let h = 0; h < triangles.length; h += 1) {
      const [v, w] = [triangles[h], triangles[nextSide(h)]];
      if (near[v] === 1 && near[w] === 1) sideOf.set(keyOf(v, w), h);
    }
    const queue = new MinHeap();
    const open = (h: number): void => {
      const across = sideOf.get(keyOf(triangles[nextSide(h)], triangles[h]));
      if (across === undefined || this.#hasTriangle[Math.floor(across / 3)] === 1) return;
      queue.push(-this.#trueLength(triangles[h], triangles[nextSide(h)]), across);
    };
    for (const h of sideOf.values()) if (this.#hasTriangle[Math.floor(h / 3)] === 1) open(h);
    while (queue.size > 0) {
      const h = queue.pop().item;
      const t = Math.floor(h / 3);
      if (this.#hasTriangle[t] === 1) continue;
      this.#hasTriangle[t] = 1;
      this.#layApex(h);
      for (let side = 3 * t; side < 3 * t + 3; side += 1) open(side);
    }
  }

  /** Loosens the vertices at which the patch has lost triangles that the share had, or at which a seam has doubled a vertex. */
  loosenChanges({ old, indexInOld }: Share): void {
    const { triangles } = this.#patch;
    const isKept = new Uint8Array(old.meshTriangles.length);
    for (const t of indexInOld) if (t >= 0) isKept[t] = 1;
    const hasChanged = new Uint8Array(old.meshVertices.length);
    for (let h = 0; h < old.triangles.length; h += 1) {
      if (isKept[Math.floor(h / 3)] === 0) hasChanged[old.triangles[h]] = 1;
    }
    const nowOf = new Int32Array(old.meshVertices.length).fill(-1);
    for (let t = 0; t < indexInOld.length; t += 1) {
      for (let k = 0; k < 3 && indexInOld[t] >= 0; k += 1) {
        const before = old.triangles[3 * indexInOld[t] + k];
        const now = triangles[3 * t + k];
        if (hasChanged[before] === 1) this.loose[now] = 1;
        if (nowOf[before] >= 0 && nowOf[before] !== now) {
          this.loose[now] = 1;
          this.loose[nowOf[before]] = 1;
        }
        nowOf[before] = now;
      }
    }
  }

  #layApex(h: number): void {
    const { triangles } = this.#patch;
    const [v, w] = [triangles[h], triangles[nextSide(h)]];
    const apex = triangles[nextSide(nextSide(h))];
    if (this.#hasVertex[apex] === 1) {
      // A gap closes here: what lies on either side of it has to give.
      for (const corner of [v, w, apex]) this.loose[corner] = 1;
      return;
    }
    const [side, left, right] = [this.#trueLength(v, w), this.#trueLength(v, apex), this.#trueLength(w, apex)];
    const along = side > 0 ? (side * side + left * left - right * right) / (2 * side) : 0;
    const beside = Math.sqrt(Math.max(0, left * left - along * along));
    const { flat } = this;
    const [ex, ey] = [flat[2 * w] - flat[2 * v], flat[2 * w + 1] - flat[2 * v + 1]];
    const length = Math.hypot(ex, ey);
    const [x, y] = length > 0 ? [ex / length, ey / length] : [1, 0];
    flat[2 * apex] = flat[2 * v] + along * x - beside * y;
    flat[2 * apex + 1] = flat[2 * v + 1] + along * y + beside * x;
    this.#hasVertex[apex] = 1;
    this.loose[apex] = 1;
  }

  #trueLength(v: number, w: number): number {
    const p = this.#positions;
    const [a, b] = [3 * this.#patch.meshVertices[v], 3 * this.#patch.meshVertices[w]];
    return Math.hypot(p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]);
  }
}

const nextSide = (h: number): number => (h % 3 === 2 ? h - 2 : h + 1);

/** Length of one side of a flat triangle, as a measure of what is small there. */
function sideScale(uv: Float64Array, triangles: Uint32Array, t: number): number {
  const [a, b] = [2 * triangles[3 * t], 2 * triangles[3 * t + 1]];
  return Math.abs(uv[b] - uv[a]) + Math.abs(uv[b + 1] - uv[a + 1]);
}

/** @param pairs  where a point stands in `from` and in `to`. */
function fitOfPoints(from: Float64Array, to: Float64Array, pairs: readonly (readonly [number, number])[]): Fit | null {
  let [px, py, qx, qy] = [0, 0, 0, 0];
  for (const [i, j] of pairs) {
    px += from[i] / pairs.length;
    py += from[i + 1] / pairs.length;
    qx += to[j] / pairs.length;
    qy += to[j + 1] / pairs.length;
  }
  let [along, across] = [0, 0];
  for (const [i, j] of pairs) {
    const [ax, ay, bx, by] = [from[i] - px, from[i + 1] - py, to[j] - qx, to[j + 1] - qy];
    along += ax * bx + ay * by;
    across += ax * by - ay * bx;
  }
  const size = Math.hypot(along, across);
  if (!(size > 0)) return null;
  const [cos, sin] = [along / size, across / size];
  return { cos, sin, dx: qx - cos * px + sin * py, dy: qy - sin * px - cos * py };
}
