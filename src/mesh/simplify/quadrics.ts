import { cross3, dot3, length3, pointAt3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import { areaVector } from '../measure.ts';

/** Values of one quadric: xx xy xz xd yy yz yd zz zd dd. */
const VALUES = 10;

/** How much a plane that stands on an edge of a line weighs beside a face of the same size: lines are seen first (shop judgement). */
const LINE_WEIGHT = 10;

/**
 * For each vertex the sum of squared distances from the planes it stands for, as a quadric (M. Garland and P. S. Heckbert, "Surface Simplification
 * Using Quadric Error Metrics", 1997, section 5; planes weigh by a third of their face's area). An edge of a line adds a plane that stands on it,
 * square to its face (section 6).
 */
export class Quadrics {
  readonly #values: Float64Array;
  /** Area that each vertex stands for, mm²; what lines add is not in it. */
  readonly #areas: Float64Array;

  /** @param lines half-edges whose edge is to keep its place. */
  constructor(positions: Float64Array, triangles: Uint32Array, lines: Iterable<number>) {
    this.#values = new Float64Array((VALUES * positions.length) / 3);
    this.#areas = new Float64Array(positions.length / 3);
    for (let t = 0; t < triangles.length / 3; t += 1) {
      const vector = areaVector(positions, triangles, t);
      const third = length3(vector) / 3;
      const normal = unit3(vector);
      const at = dot3(normal, pointAt3(positions, triangles[3 * t]));
      for (let k = 0; k < 3; k += 1) {
        this.#add(triangles[3 * t + k], normal, at, third);
        this.#areas[triangles[3 * t + k]] += third;
      }
    }
    for (const h of lines) {
      const t = Math.floor(h / 3);
      const [v, w] = [triangles[h], triangles[3 * t + ((h + 1) % 3)]];
      const [a, b] = [pointAt3(positions, v), pointAt3(positions, w)];
      const along = sub3(b, a);
      const normal = unit3(cross3(along, areaVector(positions, triangles, t)));
      const weight = (LINE_WEIGHT * dot3(along, along)) / 3;
      for (const u of [v, w]) this.#add(u, normal, dot3(normal, a), weight);
    }
  }

  /** What it costs to bring vertex `u` to the place `p` of vertex `v`, mm⁴. */
  cost(u: number, v: number, p: Vec3): number {
    return Math.max(0, this.#at(u, p) + this.#at(v, p));
  }

  /** Root mean square of the distances of `p` from the planes that vertex `u` stands for, mm. */
  offMm(u: number, p: Vec3): number {
    return this.#areas[u] > 0 ? Math.sqrt(Math.max(0, this.#at(u, p)) / this.#areas[u]) : 0;
  }

  /** mm². */
  areaOf(u: number): number {
    return this.#areas[u];
  }

  /** Vertex `v` stands for what `u` stood for, too. */
  join(u: number, v: number): void {
    for (let i = 0; i < VALUES; i += 1) this.#values[VALUES * v + i] += this.#values[VALUES * u + i];
    this.#areas[v] += this.#areas[u];
  }

  #add(v: number, { x, y, z }: Vec3, at: number, weight: number): void {
    const q = this.#values;
    const i = VALUES * v;
    q[i] += weight * x * x;
    q[i + 1] += weight * x * y;
    q[i + 2] += weight * x * z;
    q[i + 3] -= weight * x * at;
    q[i + 4] += weight * y * y;
    q[i + 5] += weight * y * z;
    q[i + 6] -= weight * y * at;
    q[i + 7] += weight * z * z;
    q[i + 8] -= weight * z * at;
    q[i + 9] += weight * at * at;
  }

  #at(v: number, { x, y, z }: Vec3): number {
    const q = this.#values;
    const i = VALUES * v;
    return (
      x * (q[i] * x + 2 * (q[i + 1] * y + q[i + 2] * z + q[i + 3])) +
      y * (q[i + 4] * y + 2 * (q[i + 5] * z + q[i + 6])) +
      z * (q[i + 7] * z + 2 * q[i + 8]) +
      q[i + 9]
    );
  }
}
