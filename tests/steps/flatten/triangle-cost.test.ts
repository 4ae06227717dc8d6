import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { graphOfTriangles } from '../../../src/geom/sparse-graph.ts';
import { SparseFactor } from '../../../src/geom/sparse-factor.ts';
import { multiplyBlocks } from '../../../src/geom/sparse-multiply.ts';
import { flatSystem } from '../../../src/steps/flatten/flat-system.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { addUpDerivatives, costOfTriangles, type TriangleCost } from '../../../src/steps/flatten/triangle-cost.ts';
import { meshOf } from '../../support/meshes.ts';
import { onePatch } from './flatten-support.ts';

type Settings = Pick<TriangleCost, 'squashPrice' | 'evenOut'>;

const PLAIN: Settings = { squashPrice: 1, evenOut: null };
const SETTINGS: Settings[] = [
  PLAIN,
  { squashPrice: 5, evenOut: null },
  { squashPrice: 1, evenOut: { excess: 3, power: 2 } },
  { squashPrice: 3, evenOut: { excess: 5, power: 4 } },
];

/** A bumpy fan of six triangles and a flat shape of it somewhat away from the best. */
function sample(seed: number, { squashPrice, evenOut }: Settings = PLAIN) {
  const rand = seededRandom(seed);
  const rim = [0, 1, 2, 3, 4, 5].map((k) => {
    const angle = (k * Math.PI) / 3;
    return [20 * Math.cos(angle), 20 * Math.sin(angle), 9 * rand()] as const;
  });
  const mesh = meshOf(
    [[0, 0, 10 * rand()], ...rim],
    [0, 1, 2, 3, 4, 5].map((k) => [0, 1 + k, 1 + ((k + 1) % 6)]),
  );
  const patch = onePatch(mesh);
  const rest = restShapes(patch, mesh.positions);
  const system = flatSystem(patch, rest, graphOfTriangles(7, patch.triangles));
  const uv = new Float64Array(2 * patch.meshVertices.length);
  for (const [local, v] of patch.meshVertices.entries()) {
    const angle = ((v - 1) * Math.PI) / 3;
    const radius = v === 0 ? 0 : 21 + 4 * rand();
    uv[2 * local] = 1.3 * radius * Math.cos(angle) + rand();
    uv[2 * local + 1] = 0.8 * radius * Math.sin(angle) + rand();
  }
  const cost: TriangleCost = { weights: rest.weight, squashPrice, evenOut };
  return { rest, system, uv, rand, cost };
}

type Sample = ReturnType<typeof sample>;

const derived = ({ system, uv, cost }: Sample, floor: number) => {
  const { values } = new SparseFactor(system.plan, 2);
  const gradient = new Float64Array(uv.length);
  addUpDerivatives(system, cost, uv, gradient, values, floor);
  return { gradient, values };
};

describe('the cost of triangles', () => {
  it.each(SETTINGS)('has the gradient that differences of the cost have: %o', (settings) => {
    for (let seed = 1; seed <= 5; seed += 1) {
      const it = sample(seed, settings);
      const { gradient } = derived(it, 0);
      for (let i = 0; i < it.uv.length; i += 1) {
        const h = 1e-5;
        const at = (move: number): number => costOfTriangles(it.rest, it.cost, it.uv.with(i, it.uv[i] + move));
        expect(gradient[i]).toBeCloseTo((at(h) - at(-h)) / (2 * h), 6);
      }
    }
  });

  it.each(SETTINGS)('has the second derivative of its gradient, as long as nothing is cut off: %o', (settings) => {
    for (let seed = 1; seed <= 5; seed += 1) {
      const it = sample(seed, settings);
      const { values } = derived(it, -Infinity);
      const along = Float64Array.from(it.uv, () => it.rand() - 0.5);
      const product = new Float64Array(along.length);
      multiplyBlocks(it.system.plan, values, along, product);
      const h = 1e-6;
      const at = (share: number) => derived({ ...it, uv: it.uv.map((x, i) => x + share * along[i]) }, 0).gradient;
      const [after, before] = [at(h), at(-h)];
      product.forEach((value, i) => expect(value).toBeCloseTo((after[i] - before[i]) / (2 * h), 5));
    }
  });

  it.each(SETTINGS)('has no negative curvature along any direction once twists are cut off at 0: %o', (settings) => {
    let negativeBefore = 0;
    for (let seed = 1; seed <= 40; seed += 1) {
      const it = sample(seed, settings);
      // Squeezed small: the twists of squeezed triangles have negative curvature.
      const small = { ...it, uv: it.uv.map((x) => 0.6 * x) };
      const [cut, bare] = [derived(small, 0).values, derived(small, -Infinity).values];
      const product = new Float64Array(it.uv.length);
      for (let trial = 0; trial < 20; trial += 1) {
        const turn = small.uv.map((_, i) => (i % 2 === 0 ? -small.uv[i + 1] : small.uv[i - 1]) + 0.1 * it.rand());
        for (const [values, isCut] of [
          [cut, true],
          [bare, false],
        ] as const) {
          multiplyBlocks(it.system.plan, values, turn, product);
          const curvature = product.reduce((sum, value, i) => sum + value * turn[i], 0);
          if (isCut) expect(curvature).toBeGreaterThan(-1e-12);
          else if (curvature < 0) negativeBefore += 1;
        }
      }
    }
    expect(negativeBefore).toBeGreaterThan(100);
  });
});
