import type { Work } from '../base/work.ts';
import { cornerAfter, cornerBefore } from '../mesh/corners-at-vertices.ts';
import type { RollTree } from './roll-tree.ts';

/** Triangles that lie apart by less than this share of the patch's size need no joining. */
const CLOSE_SHARE = 1e-4;

/** Half-edges count by the cotangent of the angle across, held between these, so that bad triangles do no harm. */
const LEAST_WEIGHT = 0.05;
const MOST_WEIGHT = 10;

/**
 * Joins triangles that were laid one by one into one surface: vertices such that all edges come out, in the least-squares sense, as
 * their triangles have them; then turns each triangle to fit and joins again.
 * After O. Sorkine, M. Alexa, As-Rigid-As-Possible Surface Modeling, SGP 2007, equations 7 to 9, here with one turn per triangle.
 */
export class EdgeFit {
  readonly #triangles: Uint32Array;
  readonly #tree: RollTree;
  /** One per half-edge. */
  readonly #weights: Float64Array;
  /** The weighted Laplacian: for each vertex the sum of its weights, its neighbours (with repeats) and their weights. */
  readonly #diagonal: Float64Array;
  readonly #starts: Uint32Array;
  readonly #neighbours: Uint32Array;
  readonly #springs: Float64Array;

  constructor(triangles: Uint32Array, vertexCount: number, tree: RollTree) {
    this.#triangles = triangles;
    this.#tree = tree;
    this.#weights = cotangentWeights(triangles, tree);
    this.#diagonal = new Float64Array(vertexCount);
    this.#starts = new Uint32Array(vertexCount + 1);
    this.#neighbours = new Uint32Array(2 * triangles.length);
    this.#springs = new Float64Array(2 * triangles.length);
    for (let h = 0; h < triangles.length; h += 1) {
      for (const v of [triangles[h], triangles[cornerAfter(h)]]) {
        this.#diagonal[v] += this.#weights[h];
        this.#starts[v + 1] += 1;
      }
    }
    for (let v = 0; v < vertexCount; v += 1) this.#starts[v + 1] += this.#starts[v];
    const next = this.#starts.slice(0, vertexCount);
    for (let h = 0; h < triangles.length; h += 1) {
      const [v, w] = [triangles[h], triangles[cornerAfter(h)]];
      for (const [from, to] of [
        [v, w],
        [w, v],
      ]) {
        const at = next[from]++;
        this.#neighbours[at] = to;
        this.#springs[at] = this.#weights[h];
      }
    }
  }

  /**
   * @param copies xyz for each corner of each triangle as laid; used up.
   * @param share  0 lengths of the shape, 1 of the flat piece.
   * @param rounds how often triangles are turned to fit.
   * @param most   conjugate gradient steps in each round.
   * @returns packed xyz per vertex.
   */
  async join(copies: Float64Array, share: number, rounds: number, most: number, work: Work): Promise<Float32Array> {
    const { positions, apart } = this.#mean(copies);
    if (apart <= CLOSE_SHARE * sizeOf(positions)) return Float32Array.from(positions);
    for (let round = 0; round <= rounds; round += 1) {
      if (round > 0) this.#turnToFit(copies, positions, share);
      await work.pause(0);
      await this.#solve(copies, positions, most, work);
    }
    return Float32Array.from(positions);
  }

  /** Mean place of each vertex over its corners, and how far corners lie from it at most. */
  #mean(copies: Float64Array): { positions: Float64Array; apart: number } {
    const triangles = this.#triangles;
    const positions = new Float64Array(3 * this.#diagonal.length);
    const uses = new Uint32Array(this.#diagonal.length);
    for (let c = 0; c < triangles.length; c += 1) {
      uses[triangles[c]] += 1;
      for (let k = 0; k < 3; k += 1) positions[3 * triangles[c] + k] += copies[3 * c + k];
    }
    for (let i = 0; i < positions.length; i += 1) positions[i] /= uses[Math.floor(i / 3)] || 1;
    let apart = 0;
    for (let c = 0; c < triangles.length; c += 1) {
      for (let k = 0; k < 3; k += 1)
        apart = Math.max(apart, Math.abs(copies[3 * c + k] - positions[3 * triangles[c] + k]));
    }
    return { positions, apart };
  }

  /** Conjugate gradients on the weighted Laplacian, preconditioned by its diagonal, all three coordinates at once. */
  async #solve(copies: Float64Array, x: Float64Array, most: number, work: Work): Promise<void> {
    const n = x.length;
    const residual = this.#pulls(copies);
    const image = new Float64Array(n);
    this.#apply(x, image);
    const scaled = new Float64Array(n);
    for (let i = 0; i < n; i += 1) {
      residual[i] -= image[i];
      scaled[i] = residual[i] / this.#diagonal[(i / 3) | 0];
    }
    const direction = scaled.slice();
    let power = dotOf(residual, scaled);
    const enough = 1e-7 * power;
    for (let step = 0; step < most && power > enough; step += 1) {
      await work.pause(0);
      this.#apply(direction, image);
      const bend = dotOf(direction, image);
      if (!(bend > 0)) return;
      const by = power / bend;
      for (let i = 0; i < n; i += 1) {
        x[i] += by * direction[i];
        residual[i] -= by * image[i];
        scaled[i] = residual[i] / this.#diagonal[(i / 3) | 0];
      }
      const next = dotOf(residual, scaled);
      const keep = next / power;
      for (let i = 0; i < n; i += 1) direction[i] = scaled[i] + keep * direction[i];
      power = next;
    }
  }

  /** Weighted sums of the edges of the laid triangles that arrive at each vertex, less those that leave it. */
  #pulls(copies: Float64Array): Float64Array {
    const triangles = this.#triangles;
    const sum = new Float64Array(3 * this.#diagonal.length);
    for (let h = 0; h < triangles.length; h += 1) {
      const g = cornerAfter(h);
      const [v, w] = [3 * triangles[h], 3 * triangles[g]];
      const weight = this.#weights[h];
      for (let k = 0; k < 3; k += 1) {
        const pull = weight * (copies[3 * g + k] - copies[3 * h + k]);
        sum[w + k] += pull;
        sum[v + k] -= pull;
      }
    }
    return sum;
  }

  #apply(x: Float64Array, result: Float64Array): void {
    const [starts, neighbours, springs, diagonal] = [this.#starts, this.#neighbours, this.#springs, this.#diagonal];
    for (let v = 0; v < diagonal.length; v += 1) {
      let a = diagonal[v] * x[3 * v];
      let b = diagonal[v] * x[3 * v + 1];
      let c = diagonal[v] * x[3 * v + 2];
      for (let i = starts[v]; i < starts[v + 1]; i += 1) {
        const w = 3 * neighbours[i];
        const spring = springs[i];
        a -= spring * x[w];
        b -= spring * x[w + 1];
        c -= spring * x[w + 2];
      }
      result[3 * v] = a;
      result[3 * v + 1] = b;
      result[3 * v + 2] = c;
    }
  }

  /** Writes into `copies` each triangle in its true lengths, turned in the plane of its three vertices to lie as they lie. */
  #turnToFit(copies: Float64Array, positions: Float64Array, share: number): void {
    const { shapeLength, flatLength } = this.#tree;
    const length = (h: number): number => shapeLength[h] + share * (flatLength[h] - shapeLength[h]);
    for (let t = 0; t < this.#triangles.length; t += 3) {
      const [a, b, c] = [3 * this.#triangles[t], 3 * this.#triangles[t + 1], 3 * this.#triangles[t + 2]];
      let [ex, ey, ez] = [
        positions[b] - positions[a],
        positions[b + 1] - positions[a + 1],
        positions[b + 2] - positions[a + 2],
      ];
      const [ux, uy, uz] = [
        positions[c] - positions[a],
        positions[c + 1] - positions[a + 1],
        positions[c + 2] - positions[a + 2],
      ];
      const ab = Math.sqrt(ex * ex + ey * ey + ez * ez) || 1;
      ex /= ab;
      ey /= ab;
      ez /= ab;
      const acx = ux * ex + uy * ey + uz * ez;
      let [mx, my, mz] = [ux - acx * ex, uy - acx * ey, uz - acx * ez];
      const acy = Math.sqrt(mx * mx + my * my + mz * mz) || 1;
      mx /= acy;
      my /= acy;
      mz /= acy;
      const [ab0, bc0, ca0] = [length(t), length(t + 1), length(t + 2)];
      const cx = ab0 > 0 ? (ab0 * ab0 + ca0 * ca0 - bc0 * bc0) / (2 * ab0) : 0;
      const cy = Math.sqrt(Math.max(0, ca0 * ca0 - cx * cx));
      // The turn in the plane that brings the three true edges nearest to the three found ones.
      const dot = ab0 * ab + cx * acx + cy * acy + (cx - ab0) * (acx - ab) + cy * acy;
      const cross = cx * acy - cy * acx + (cx - ab0) * acy - cy * (acx - ab);
      const size = Math.hypot(dot, cross) || 1;
      const [cos, sin] = [dot / size, cross / size];
      const put = (corner: number, x: number, y: number): void => {
        const [p, q] = [cos * x - sin * y, sin * x + cos * y];
        copies[3 * corner] = p * ex + q * mx;
        copies[3 * corner + 1] = p * ey + q * my;
        copies[3 * corner + 2] = p * ez + q * mz;
      };
      put(t, 0, 0);
      put(t + 1, ab0, 0);
      put(t + 2, cx, cy);
    }
  }
}

/** Half the cotangent of the angle across each half-edge in the flat piece, held within bounds. */
function cotangentWeights(triangles: Uint32Array, { flatLength }: RollTree): Float64Array {
  return Float64Array.from(triangles, (_, h) => {
    const a = flatLength[h];
    const b = flatLength[cornerAfter(h)];
    const c = flatLength[cornerBefore(h)];
    const s = (a + b + c) / 2;
    const area = Math.sqrt(Math.max(0, s * (s - a) * (s - b) * (s - c)));
    const cot = area > 0 ? (b * b + c * c - a * a) / (4 * area) : 0;
    return Math.max(LEAST_WEIGHT, Math.min(MOST_WEIGHT, cot / 2));
  });
}

function sizeOf(positions: Float64Array): number {
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i += 1) {
    least[i % 3] = Math.min(least[i % 3], positions[i]);
    most[i % 3] = Math.max(most[i % 3], positions[i]);
  }
  return Math.hypot(most[0] - least[0], most[1] - least[1], most[2] - least[2]);
}

function dotOf(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i] * b[i];
  return sum;
}
