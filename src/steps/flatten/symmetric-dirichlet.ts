import type { RestShape } from './rest-shape.ts';

/**
 * Symmetric Dirichlet energy at true scale, `s1² + s2² + 1/s1² + 1/s2²` per triangle, area-weighted mean; 4 is an isometry
 * (Smith and Schaefer, "Bijective Parameterization with Free Boundaries", ACM TOG 34(4), 2015). s1 >= s2 are the singular values of
 * the map from the shape in space to the flat piece. Infinite where a triangle has no area or lies on its face.
 */
export function dirichletEnergy(shape: RestShape, flat: Float64Array): number {
  const { triangles, gradients, weights } = shape;
  let sum = 0;
  for (let t = 0; t < weights.length; t += 1) {
    const g = 6 * t;
    let [a, b, c, d] = [0, 0, 0, 0];
    for (let k = 0; k < 3; k += 1) {
      const v = 2 * triangles[3 * t + k];
      const gx = gradients[g + 2 * k];
      const gy = gradients[g + 2 * k + 1];
      a += flat[v] * gx;
      b += flat[v] * gy;
      c += flat[v + 1] * gx;
      d += flat[v + 1] * gy;
    }
    const det = a * d - b * c;
    if (!(det > 0)) return Infinity;
    sum += weights[t] * (a * a + b * b + c * c + d * d) * (1 + 1 / (det * det));
  }
  return sum;
}

/** Where the entries of a triangle's Hessian go: see {@link hessianPattern}. */
export interface HessianPattern {
  readonly rows: Int32Array;
  readonly cols: Int32Array;
  /** For each triangle and pair of its corners (nine), the first of the pair's entries in the list. */
  readonly slots: Int32Array;
  readonly vertexCount: number;
}

/**
 * Pattern of the Hessian over 2 n unknowns (x and y of each vertex): three entries for each vertex (xx, xy, yy), then four for each edge from
 * its lower to its higher vertex (xx, xy, yx, yy).
 * @param edges          pairs of local vertices, lower first.
 * @param edgeOfHalfedge edge of each triangle side.
 */
export function hessianPattern(shape: RestShape, edges: Uint32Array, edgeOfHalfedge: Uint32Array): HessianPattern {
  const { vertexCount, triangles } = shape;
  const edgeCount = edges.length / 2;
  const rows = new Int32Array(3 * vertexCount + 4 * edgeCount);
  const cols = new Int32Array(rows.length);
  for (let v = 0; v < vertexCount; v += 1) {
    rows.set([2 * v, 2 * v, 2 * v + 1], 3 * v);
    cols.set([2 * v, 2 * v + 1, 2 * v + 1], 3 * v);
  }
  for (let e = 0; e < edgeCount; e += 1) {
    const [v, w] = [2 * edges[2 * e], 2 * edges[2 * e + 1]];
    rows.set([v, v, v + 1, v + 1], 3 * vertexCount + 4 * e);
    cols.set([w, w + 1, w, w + 1], 3 * vertexCount + 4 * e);
  }
  const slots = new Int32Array(3 * triangles.length);
  for (let t = 0; t < triangles.length / 3; t += 1) {
    for (let i = 0; i < 3; i += 1) {
      for (let j = 0; j < 3; j += 1) {
        // The side between corners i and j starts at the one that the other follows.
        const side = 3 * t + ((i + 1) % 3 === j ? i : j);
        slots[9 * t + 3 * i + j] = i === j ? 3 * triangles[3 * t + i] : 3 * vertexCount + 4 * edgeOfHalfedge[side];
      }
    }
  }
  return { rows, cols, slots, vertexCount };
}

/**
 * Gradient and positive semi-definite Hessian of the energy. Each triangle's Hessian is clamped in closed form by its eigenvalues
 * (Smith, de Goes and Kim, "Analytic Eigensystems for Isotropic Distortion Energies", ACM TOG 38(1), 2019): two stretching modes
 * `2 + 6/s⁴`, a flip mode that is always positive, and a twist mode that is cut off at 0.
 * @param gradient  2 n numbers, overwritten.
 * @param hessian   one per entry of the pattern, overwritten.
 */
export function dirichletDerivatives(
  shape: RestShape,
  pattern: HessianPattern,
  flat: Float64Array,
  gradient: Float64Array,
  hessian: Float64Array,
): void {
  const { triangles, gradients, weights } = shape;
  gradient.fill(0);
  hessian.fill(0);
  const r = new Float64Array(6);
  for (let t = 0; t < weights.length; t += 1) {
    const g = 6 * t;
    let [a, b, c, d] = [0, 0, 0, 0];
    for (let k = 0; k < 3; k += 1) {
      const v = 2 * triangles[3 * t + k];
      const gx = gradients[g + 2 * k];
      const gy = gradients[g + 2 * k + 1];
      a += flat[v] * gx;
      b += flat[v] * gy;
      c += flat[v + 1] * gx;
      d += flat[v + 1] * gy;
    }
    // F = U S Vᵀ with U and V turns by the angles u and v.
    const [e, f, h, k] = [(a + d) / 2, (a - d) / 2, (c + b) / 2, (c - b) / 2];
    const [q, p] = [Math.hypot(e, k), Math.hypot(f, h)];
    const s1 = q + p;
    const s2 = (a * d - b * c) / s1;
    const sum = Math.atan2(h, f);
    const difference = Math.atan2(k, e);
    const [cu, su] = [Math.cos((difference + sum) / 2), Math.sin((difference + sum) / 2)];
    const [cv, sv] = [Math.cos((sum - difference) / 2), Math.sin((sum - difference) / 2)];
    const w = weights[t];
    const d1 = w * (2 * s1 - 2 / s1 ** 3);
    const d2 = w * (2 * s2 - 2 / s2 ** 3);
    const product3 = (s1 * s2) ** 3;
    const stretch1 = w * (2 + 6 / s1 ** 4);
    const stretch2 = w * (2 + 6 / s2 ** 4);
    const twist = w * Math.max(0, 1 - (s1 * s1 - s1 * s2 + s2 * s2) / product3);
    const flip = w * (1 + (s1 * s1 + s1 * s2 + s2 * s2) / product3);
    for (let i = 0; i < 3; i += 1) {
      const gx = gradients[g + 2 * i];
      const gy = gradients[g + 2 * i + 1];
      r[2 * i] = cv * gx + sv * gy;
      r[2 * i + 1] = cv * gy - sv * gx;
      const v = 2 * triangles[3 * t + i];
      gradient[v] += d1 * cu * r[2 * i] - d2 * su * r[2 * i + 1];
      gradient[v + 1] += d1 * su * r[2 * i] + d2 * cu * r[2 * i + 1];
    }
    const [both, apart] = [twist + flip, flip - twist];
    for (let i = 0; i < 3; i += 1) {
      const [i1, i2] = [r[2 * i], r[2 * i + 1]];
      for (let j = 0; j < 3; j += 1) {
        if (triangles[3 * t + i] > triangles[3 * t + j]) continue;
        const [j1, j2] = [r[2 * j], r[2 * j + 1]];
        // In the frame of U; then turned by U.
        const h11 = stretch1 * i1 * j1 + both * i2 * j2;
        const h22 = stretch2 * i2 * j2 + both * i1 * j1;
        const h12 = apart * i2 * j1;
        const h21 = apart * i1 * j2;
        const at = pattern.slots[9 * t + 3 * i + j];
        const xx = cu * cu * h11 - cu * su * (h12 + h21) + su * su * h22;
        const yy = su * su * h11 + cu * su * (h12 + h21) + cu * cu * h22;
        const xy = cu * su * (h11 - h22) + cu * cu * h12 - su * su * h21;
        if (i === j) {
          hessian[at] += xx;
          hessian[at + 1] += xy;
          hessian[at + 2] += yy;
        } else {
          hessian[at] += xx;
          hessian[at + 1] += xy;
          hessian[at + 2] += cu * su * (h11 - h22) + cu * cu * h21 - su * su * h12;
          hessian[at + 3] += yy;
        }
      }
    }
  }
}
