import type { Work } from '../base/work.ts';
import { cornerAfter, cornerBefore } from './corners-at-vertices.ts';
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
  /** Sum of the weights at each vertex. */
  readonly #diagonal: Float64Array;

  constructor(triangles: Uint32Array, vertexCount: number, tree: RollTree) {
    this.#triangles = triangles;
    this.#tree = tree;
    this.#weights = new Float64Array(triangles.length);
    this.#diagonal = new Float64Array(vertexCount);
    for (let h = 0; h < triangles.length; h += 1) {
      const a = tree.flatLength[h];
      const b = tree.flatLength[cornerAfter(h)];
      const c = tree.flatLength[cornerBefore(h)];
      const s = (a + b + c) / 2;
      const area = Math.sqrt(Math.max(0, s * (s - a) * (s - b) * (s - c)));
      const cot = area > 0 ? (b * b + c * c - a * a) / (4 * area) : 0;
      const weight = Math.max(LEAST_WEIGHT, Math.min(MOST_WEIGHT, cot / 2));
      this.#weights[h] = weight;
      this.#diagonal[triangles[h]] += weight;
      this.#diagonal[triangles[cornerAfter(h)]] += weight;
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
    const residual = new Float64Array(n);
    this.#differences(residual, (h, g, k) => copies[3 * g + k] - copies[3 * h + k]);
    const along = this.#laplacian(x);
    for (let i = 0; i < n; i += 1) residual[i] -= along[i];
    const scaled = residual.map((r, i) => r / this.#diagonal[Math.floor(i / 3)]);
    const direction = scaled.slice();
    let power = dotOf(residual, scaled);
    const enough = 1e-7 * power;
    for (let step = 0; step < most && power > enough; step += 1) {
      await work.pause(0);
      const image = this.#laplacian(direction);
      const bend = dotOf(direction, image);
      if (!(bend > 0)) return;
      const by = power / bend;
      for (let i = 0; i < n; i += 1) {
        x[i] += by * direction[i];
        residual[i] -= by * image[i];
        scaled[i] = residual[i] / this.#diagonal[Math.floor(i / 3)];
      }
      const next = dotOf(residual, scaled);
      const keep = next / power;
      for (let i = 0; i < n; i += 1) direction[i] = scaled[i] + keep * direction[i];
      power = next;
    }
  }

  #laplacian(x: Float64Array): Float64Array {
    const result = new Float64Array(x.length);
    const triangles = this.#triangles;
    this.#differences(result, (h, g, k) => x[3 * triangles[g] + k] - x[3 * triangles[h] + k]);
    return result;
  }

  /** Adds each half-edge's weighted difference to its end and takes it from its start. */
  #differences(sum: Float64Array, difference: (h: number, g: number, k: number) => number): void {
    const triangles = this.#triangles;
    for (let h = 0; h < triangles.length; h += 1) {
      const g = cornerAfter(h);
      const [v, w] = [3 * triangles[h], 3 * triangles[g]];
      for (let k = 0; k < 3; k += 1) {
        const value = this.#weights[h] * difference(h, g, k);
        sum[w + k] += value;
        sum[v + k] -= value;
      }
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
