import { SparseLdl } from '../../geom/sparse-ldl.ts';
import type { RestShape } from './rest-shape.ts';
import { dirichletEnergy } from './symmetric-dirichlet.ts';

/** Enough to get near on any patch tried; the Newton steps that follow do the rest. */
const MOST_STEPS = 10;

/**
 * Gets near the minimum quickly: every triangle takes the turn that fits it best, then one linear solve moves all corners to agree
 * ("as rigid as possible"; Liu, Zhang, Xu, Gotsman and Gortler, "A Local/Global Approach to Mesh Parameterization", SGP 2008). One
 * factor serves all steps. The method can flip triangles, so the best state without a flip is returned.
 * @param start  flat coordinates without a flip, x y per vertex, mm.
 * @param order  order of elimination of the vertices.
 */
export function localGlobalSteps(
  shape: RestShape,
  edges: Uint32Array,
  order: Int32Array,
  start: Float64Array,
): Float64Array {
  const { vertexCount, triangles, gradients, weights } = shape;
  const system = laplacian(shape, edges, order);
  if (system === null) return start;
  let flat = start;
  let best = start;
  let bestEnergy = dirichletEnergy(shape, start);
  const [x, y] = [new Float64Array(vertexCount), new Float64Array(vertexCount)];
  for (let step = 0; step < MOST_STEPS; step += 1) {
    x.fill(0);
    y.fill(0);
    for (let t = 0; t < weights.length; t += 1) {
      let [a, b, c, d] = [0, 0, 0, 0];
      for (let k = 0; k < 3; k += 1) {
        const v = 2 * triangles[3 * t + k];
        const [gx, gy] = [gradients[6 * t + 2 * k], gradients[6 * t + 2 * k + 1]];
        a += flat[v] * gx;
        b += flat[v] * gy;
        c += flat[v + 1] * gx;
        d += flat[v + 1] * gy;
      }
      // The turn nearest to F has the angle atan2(c - b, a + d).
      const length = Math.hypot(a + d, c - b);
      const [cos, sin] = length > 0 ? [(a + d) / length, (c - b) / length] : [1, 0];
      for (let k = 0; k < 3; k += 1) {
        const v = triangles[3 * t + k];
        const [gx, gy] = [gradients[6 * t + 2 * k], gradients[6 * t + 2 * k + 1]];
        x[v] += weights[t] * (cos * gx - sin * gy);
        y[v] += weights[t] * (sin * gx + cos * gy);
      }
    }
    system.solve(x);
    system.solve(y);
    const next = new Float64Array(2 * vertexCount);
    for (let v = 0; v < vertexCount; v += 1) {
      next[2 * v] = x[v];
      next[2 * v + 1] = y[v];
    }
    const energy = dirichletEnergy(shape, next);
    if (energy < bestEnergy) {
      best = next;
      bestEnergy = energy;
    }
    flat = next;
  }
  return best;
}

/** Sum over triangles of weight times `gi . gj`, held in place by a whiff of mass so that it can be factored. */
function laplacian(shape: RestShape, edges: Uint32Array, order: Int32Array): SparseLdl | null {
  const { vertexCount, triangles, gradients, weights } = shape;
  const edgeCount = edges.length / 2;
  const rows = new Int32Array(vertexCount + edgeCount);
  const cols = new Int32Array(vertexCount + edgeCount);
  for (let v = 0; v < vertexCount; v += 1) rows[v] = cols[v] = v;
  const edgeAt = new Map<number, number>();
  for (let e = 0; e < edgeCount; e += 1) {
    rows[vertexCount + e] = edges[2 * e];
    cols[vertexCount + e] = edges[2 * e + 1];
    edgeAt.set(edges[2 * e] * vertexCount + edges[2 * e + 1], vertexCount + e);
  }
  const values = new Float64Array(vertexCount + edgeCount);
  for (let t = 0; t < weights.length; t += 1) {
    for (let i = 0; i < 3; i += 1) {
      for (let j = i; j < 3; j += 1) {
        const [v, w] = [triangles[3 * t + i], triangles[3 * t + j]];
        const dot =
          gradients[6 * t + 2 * i] * gradients[6 * t + 2 * j] +
          gradients[6 * t + 2 * i + 1] * gradients[6 * t + 2 * j + 1];
        const at = v === w ? v : edgeAt.get(Math.min(v, w) * vertexCount + Math.max(v, w));
        if (at === undefined) throw new Error('laplacian: a triangle side that is no edge');
        values[at] += weights[t] * dot;
      }
    }
  }
  let trace = 0;
  for (let v = 0; v < vertexCount; v += 1) trace += values[v];
  for (let v = 0; v < vertexCount; v += 1) values[v] += (1e-10 * trace) / vertexCount;
  const system = new SparseLdl(vertexCount, rows, cols, order);
  return system.factor(values) ? system : null;
}
