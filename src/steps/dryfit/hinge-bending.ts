import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import type { Elasticity } from '../../model/springing.ts';
import { borderTurnSlope, hingeTurn } from './hinge-turn.ts';
import type { ShellSheet } from './shell-sheet.ts';

/** Rounds of the search for leans; the matrix joins an edge to its four neighbours and is well conditioned whatever the mesh's size. */
const MOST_ROUNDS = 60;
/** Edges done in one stretch: a few milliseconds. */
const STRETCH = 4096;
/** The search ends when the moments left over are this share of the first. */
const ENOUGH = 1e-7;

/** D = E t³ / 12 (1 - nu²), N mm: moment per mm of width and per 1/mm of curvature. */
export const plateStiffness = ({ youngNPerMm2, poisson }: Elasticity, thicknessMm: number): number =>
  (youngNPerMm2 * thicknessMm ** 3) / (12 * (1 - poisson * poisson));

/**
 * Bending of a flat sheet. The curvature of a triangle is what its three edges turn, K = (1 / A) sum l a n n', a the angle from its normal
 * to that of the edge (Grinspun, Gingold, Reisman and Zorin, "Computing discrete shape operators on general meshes", 2006, eq. 4), and the
 * energy (D A / 2) ((1 - nu) |K|² + nu tr(K)²). Each edge's normal may lean from the middle of its two triangles' and comes to where their
 * moments are equal: that is the triangle of Morley (1968), which gives a constant curvature exactly on any mesh, as the turns of the edges
 * alone do not.
 */
export class HingeBending {
  readonly #sheet: ShellSheet;
  readonly #matrices: Float64Array;
  readonly #poisson: number;
  readonly #stiffness: number;
  /** Radians that the normal of each edge leans from the middle of its triangles' normals to the right one's; at a border from its triangle's. */
  readonly leans: Float64Array;
  /** 1 where the lean is found by the search; 0 where it is given. */
  readonly isFree: Uint8Array;
  readonly #turns: Float64Array;
  readonly #slopes: Float64Array;
  /** Moment times length at each edge of each triangle, N mm. */
  readonly #moments: Float64Array;
  /** 1 for an edge of a triangle that is its left one, -1 for its right one. */
  readonly #signs: Int8Array;
  readonly #spare: Float64Array;

  constructor(sheet: ShellSheet, elasticity: Elasticity, thicknessMm: number) {
    const edges = sheet.edgeTriangles.length / 2;
    this.#sheet = sheet;
    this.#poisson = elasticity.poisson;
    this.#stiffness = plateStiffness(elasticity, thicknessMm);
    this.leans = new Float64Array(edges);
    this.isFree = new Uint8Array(edges).fill(1);
    this.#turns = new Float64Array(edges);
    this.#slopes = new Float64Array(12 * edges);
    this.#moments = new Float64Array(sheet.triangles.length);
    this.#spare = new Float64Array(sheet.triangles.length);
    this.#signs = Int8Array.from(sheet.triangleEdges, (e, h) =>
      sheet.edgeTriangles[2 * e] === Math.floor(h / 3) ? 1 : -1,
    );
    this.#matrices = new Float64Array(9 * sheet.areas.length);
    for (let t = 0; t < sheet.areas.length; t += 1) this.#fillMatrix(t);
  }

  /** N mm per square radian: what the angles at edges `i` and `j` of a triangle cost together. */
  stiffnessOf(triangle: number, i: number, j: number): number {
    return this.#matrices[9 * triangle + 3 * i + j];
  }

  /** d turn / d corner of an edge as {@link hingeTurn} or {@link borderTurnSlope} give them at the positions last moved to. */
  slopesOf(edge: number): Float64Array {
    return this.#slopes.subarray(12 * edge, 12 * edge + 12);
  }

  /** Moment times length that edge `i` of a triangle carries, N mm, as last measured. */
  momentOf(triangle: number, i: number): number {
    return this.#moments[3 * triangle + i];
  }

  #fillMatrix(t: number): void {
    const { areas, lengths, normals } = this.#sheet;
    for (let i = 0; i < 3; i += 1)
      for (let j = 0; j < 3; j += 1) {
        const cosine =
          normals[6 * t + 2 * i] * normals[6 * t + 2 * j] + normals[6 * t + 2 * i + 1] * normals[6 * t + 2 * j + 1];
        const both = (this.#stiffness / areas[t]) * lengths[3 * t + i] * lengths[3 * t + j];
        this.#matrices[9 * t + 3 * i + j] = both * ((1 - this.#poisson) * cosine * cosine + this.#poisson);
      }
  }

  /** Takes up new positions, x y z per vertex, mm. Leans stay. */
  moveTo(positions: Float64Array): void {
    runAtOnce(this.moveSteps(positions));
  }

  /** The same in stretches. */
  *moveSteps(positions: Float64Array): Stepwise<void> {
    const { edgeVertices, edgeOpposite } = this.#sheet;
    for (let e = 0; e < this.#turns.length; e += 1) {
      if (e % STRETCH === 0) yield;
      const [c, d] = [edgeOpposite[2 * e], edgeOpposite[2 * e + 1]];
      const [a, b] = [edgeVertices[2 * e], edgeVertices[2 * e + 1]];
      if (d < 0) borderTurnSlope(positions, a, b, c, this.slopesOf(e));
      else this.#turns[e] = hingeTurn(positions, a, b, c, d, this.slopesOf(e));
    }
  }

  /** Moments at the turns and leans in force. @returns the energy, N mm. */
  measure(): number {
    const { areas, triangleEdges: edges } = this.#sheet;
    const angles = new Float64Array(edges.length);
    for (let h = 0; h < angles.length; h += 1)
      angles[h] = this.#turns[edges[h]] / 2 + this.#signs[h] * this.leans[edges[h]];
    let energy = 0;
    for (let t = 0; t < areas.length; t += 1)
      energy += this.#multiply(t, angles[3 * t], angles[3 * t + 1], angles[3 * t + 2], this.#moments);
    return energy / 2;
  }

  /** dE / d lean per edge, N mm, from moments measured. */
  addLeanGradient(gradient: Float64Array): void {
    this.#addByEdge(this.#moments, gradient);
  }

  /** dE / dx is added to `gradient`, N, from moments measured; border normals whose lean is given stay as they are in space. */
  addGradient(gradient: Float64Array): void {
    const { edgeVertices, edgeOpposite, edgeTriangles, triangleEdges } = this.#sheet;
    const perTurn = new Float64Array(this.#turns.length);
    for (let h = 0; h < triangleEdges.length; h += 1) {
      const e = triangleEdges[h];
      if (edgeTriangles[2 * e + 1] >= 0) perTurn[e] += this.#moments[h] / 2;
      else if (this.isFree[e] === 0) perTurn[e] = this.#moments[h];
    }
    for (let e = 0; e < perTurn.length; e += 1) {
      const slopes = this.slopesOf(e);
      const corners = [edgeVertices[2 * e], edgeVertices[2 * e + 1], edgeOpposite[2 * e], edgeOpposite[2 * e + 1]];
      for (let i = 0; i < 4 && corners[i] >= 0; i += 1)
        for (let k = 0; k < 3; k += 1) gradient[3 * corners[i] + k] += perTurn[e] * slopes[3 * i + k];
    }
  }

  /** Brings the free leans to where moments are equal at both sides of each edge: conjugate gradients with the diagonal as a guide. */
  settle(): void {
    runAtOnce(this.settleSteps());
  }

  /** The same in stretches of one round. */
  *settleSteps(): Stepwise<void> {
    const count = this.leans.length;
    const diagonal = this.#diagonal();
    const residual = new Float64Array(count);
    const along = new Float64Array(count);
    const product = new Float64Array(count);
    this.measure();
    this.#addByEdge(this.#moments, residual);
    for (let e = 0; e < count; e += 1) residual[e] *= -this.isFree[e];
    let size = 0;
    for (let e = 0; e < count; e += 1) {
      along[e] = residual[e] / diagonal[e];
      size += residual[e] * along[e];
    }
    const first = size;
    for (let round = 0; round < MOST_ROUNDS && size > ENOUGH * ENOUGH * first; round += 1) {
      yield;
      this.#multiplyLeans(along, product);
      let curve = 0;
      for (let e = 0; e < count; e += 1) curve += along[e] * product[e];
      const step = size / curve;
      let next = 0;
      for (let e = 0; e < count; e += 1) {
        this.leans[e] += step * along[e];
        residual[e] -= step * product[e];
        next += (residual[e] * residual[e]) / diagonal[e];
      }
      for (let e = 0; e < count; e += 1) along[e] = residual[e] / diagonal[e] + (next / size) * along[e];
      size = next;
    }
  }

  #diagonal(): Float64Array {
    const { triangleEdges } = this.#sheet;
    const diagonal = new Float64Array(this.leans.length);
    for (let h = 0; h < triangleEdges.length; h += 1)
      diagonal[triangleEdges[h]] += this.#matrices[3 * (h - (h % 3)) + 4 * (h % 3)];
    return diagonal;
  }

  #multiplyLeans(leans: Float64Array, product: Float64Array): void {
    const { areas, triangleEdges: edges } = this.#sheet;
    const [moments, signs] = [this.#spare, this.#signs];
    for (let t = 0; t < areas.length; t += 1) {
      const h = 3 * t;
      const [a, b] = [signs[h] * leans[edges[h]], signs[h + 1] * leans[edges[h + 1]]];
      this.#multiply(t, a, b, signs[h + 2] * leans[edges[h + 2]], moments);
    }
    product.fill(0);
    this.#addByEdge(moments, product);
    for (let e = 0; e < product.length; e += 1) product[e] *= this.isFree[e];
  }

  /** @returns twice the energy of the triangle. */
  #multiply(t: number, a: number, b: number, c: number, moments: Float64Array): number {
    const k = this.#matrices;
    const m0 = k[9 * t] * a + k[9 * t + 1] * b + k[9 * t + 2] * c;
    const m1 = k[9 * t + 3] * a + k[9 * t + 4] * b + k[9 * t + 5] * c;
    const m2 = k[9 * t + 6] * a + k[9 * t + 7] * b + k[9 * t + 8] * c;
    moments[3 * t] = m0;
    moments[3 * t + 1] = m1;
    moments[3 * t + 2] = m2;
    return m0 * a + m1 * b + m2 * c;
  }

  #addByEdge(moments: Float64Array, sums: Float64Array): void {
    const { triangleEdges } = this.#sheet;
    for (let h = 0; h < triangleEdges.length; h += 1) sums[triangleEdges[h]] += this.#signs[h] * moments[h];
  }
}
