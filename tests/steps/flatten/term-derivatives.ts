import { expect } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { graphOfTriangles } from '../../../src/geom/sparse-graph.ts';
import { multiplyBlocks } from '../../../src/geom/sparse-multiply.ts';
import { flatSystem, type FlatSystem } from '../../../src/steps/flatten/flat-system.ts';
import type { FlatTerm } from '../../../src/steps/flatten/flat-term.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { meshOf } from '../../support/meshes.ts';
import { onePatch } from './flatten-support.ts';

/** A bumpy fan of eight triangles round a corner, ready for solving, and a flat shape of it somewhat away from the best. */
export function bumpyFan(seed: number): { readonly system: FlatSystem; readonly flat: Float64Array } {
  const rand = seededRandom(seed);
  const rim = Array.from({ length: 8 }, (_, k) => {
    const angle = (k * Math.PI) / 4;
    return [20 * Math.cos(angle), 20 * Math.sin(angle), 9 * rand()] as const;
  });
  const mesh = meshOf(
    [[0, 0, 10 * rand()], ...rim],
    rim.map((_, k) => [0, 1 + k, 1 + ((k + 1) % 8)]),
  );
  const patch = onePatch(mesh);
  const rest = restShapes(patch, mesh.positions);
  const system = flatSystem(patch, rest, graphOfTriangles(rest.vertexCount, patch.triangles));
  const flat = new Float64Array(2 * rest.vertexCount);
  for (const [local, v] of patch.meshVertices.entries()) {
    flat[2 * local] = 1.2 * mesh.positions[3 * v] + rand();
    flat[2 * local + 1] = 0.9 * mesh.positions[3 * v + 1] + rand();
  }
  return { system, flat };
}

/** Holds a term's gradient and second derivative against differences of its cost and of its gradient. */
export function expectDerivatives(
  make: (system: FlatSystem, flat: Float64Array) => FlatTerm | null,
  prepare: (flat: Float64Array, size: number) => Float64Array = (flat) => flat,
  systemOf: (system: FlatSystem, flat: Float64Array) => FlatSystem = (system) => system,
): void {
  for (let seed = 1; seed <= 4; seed += 1) {
    const { system: plain, flat: start } = bumpyFan(seed);
    const term = make(plain, start);
    if (term === null) throw new Error('no term');
    const { plan } = systemOf(plain, start);
    const flat = prepare(start, plan.size);
    const derive = (shape: Float64Array, exact: boolean) => {
      const gradient = new Float64Array(2 * plan.size);
      const values = new Float64Array(4 * plan.entryRows.length);
      term.addDerivatives(shape, gradient, values, exact);
      return { gradient, values };
    };
    const { gradient, values } = derive(flat, true);
    const scale = Math.max(...gradient.map(Math.abs));
    const h = 1e-5;
    for (let i = 0; i < flat.length; i += 1) {
      const rise = term.costOf(flat.with(i, flat[i] + h)) - term.costOf(flat.with(i, flat[i] - h));
      expect(Math.abs(gradient[i] - rise / (2 * h)) / scale).toBeLessThan(1e-5);
    }
    const rand = seededRandom(100 + seed);
    const along = Float64Array.from(flat, () => rand() - 0.5);
    const product = new Float64Array(along.length);
    multiplyBlocks(plan, values, along, product);
    const at = (share: number) =>
      derive(
        Float64Array.from(flat, (x, i) => x + share * along[i]),
        true,
      ).gradient;
    const [after, before] = [at(h), at(-h)];
    const most = Math.max(...product.map(Math.abs));
    product.forEach((value, i) => expect(Math.abs(value - (after[i] - before[i]) / (2 * h)) / most).toBeLessThan(1e-5));
    // Made positive, it has no negative curvature along any direction.
    const safe = derive(flat, false).values;
    for (let trial = 0; trial < 20; trial += 1) {
      const way = Float64Array.from(flat, () => rand() - 0.5);
      multiplyBlocks(plan, safe, way, product);
      expect(product.reduce((sum, value, i) => sum + value * way[i], 0)).toBeGreaterThan(-1e-12 * most);
    }
  }
}
