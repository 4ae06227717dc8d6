import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { graphOfTriangles } from '../../../src/geom/sparse-graph.ts';
import { SparseFactor } from '../../../src/geom/sparse-factor.ts';
import { multiplyBlocks } from '../../../src/geom/sparse-multiply.ts';
import { addUpDerivatives, energyOf } from '../../../src/steps/flatten/dirichlet-energy.ts';
import { flatSystem } from '../../../src/steps/flatten/flat-system.ts';
import { stepToFirstFlip } from '../../../src/steps/flatten/flips.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { meshOf } from '../../support/meshes.ts';
import { onePatch } from './flatten-support.ts';

/** A bumpy fan of six triangles and a flat shape of it somewhat away from the best. */
function sample(seed: number) {
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
  return { rest, system, uv, rand };
}

const derived = ({ system, uv }: ReturnType<typeof sample>, floor: number) => {
  const { values } = new SparseFactor(system.plan, 2);
  const gradient = new Float64Array(uv.length);
  addUpDerivatives(system, uv, gradient, values, floor);
  return { gradient, values };
};

describe('the symmetric Dirichlet energy', () => {
  it('is s² + s² + 1/s² + 1/s² for a shape enlarged by s, 4 for one of true size, without bound for one turned over', () => {
    const mesh = meshOf(
      [
        [0, 0, 0],
        [10, 0, 0],
        [0, 7, 0],
        [10, 7, 0],
      ],
      [[0, 1, 3, 2]],
    );
    const patch = onePatch(mesh);
    const rest = restShapes(patch, mesh.positions);
    const scaled = (x: number, y: number): Float64Array =>
      Float64Array.from(
        [...patch.meshVertices].flatMap((v) => [x * mesh.positions[3 * v], y * mesh.positions[3 * v + 1]]),
      );
    expect(energyOf(rest, scaled(1, 1))).toBeCloseTo(4, 14);
    expect(energyOf(rest, scaled(2, 2))).toBeCloseTo(4 + 4 + 0.25 + 0.25, 13);
    expect(energyOf(rest, scaled(3, 0.5))).toBeCloseTo(9 + 0.25 + 1 / 9 + 4, 13);
    expect(energyOf(rest, scaled(-1, 1))).toBe(Infinity);
    expect(energyOf(rest, scaled(1, 0))).toBe(Infinity);
  });

  it('has the gradient that differences of the energy have', () => {
    for (let seed = 1; seed <= 5; seed += 1) {
      const it = sample(seed);
      const { gradient } = derived(it, 0);
      for (let i = 0; i < it.uv.length; i += 1) {
        const h = 1e-4;
        const rise = energyOf(it.rest, it.uv.with(i, it.uv[i] + h)) - energyOf(it.rest, it.uv.with(i, it.uv[i] - h));
        expect(gradient[i]).toBeCloseTo(rise / (2 * h), 7);
      }
    }
  });

  it('has the second derivative that differences of the gradient have, as long as nothing is cut off', () => {
    for (let seed = 1; seed <= 5; seed += 1) {
      const it = sample(seed);
      const { values } = derived(it, -Infinity);
      const along = Float64Array.from(it.uv, () => it.rand() - 0.5);
      const product = new Float64Array(along.length);
      multiplyBlocks(it.system.plan, values, along, product);
      const h = 1e-4;
      const at = (share: number) => derived({ ...it, uv: it.uv.map((x, i) => x + share * along[i]) }, 0).gradient;
      const [after, before] = [at(h), at(-h)];
      product.forEach((value, i) => expect(value).toBeCloseTo((after[i] - before[i]) / (2 * h), 6));
    }
  });

  it('has no negative curvature along any direction once twists are cut off at 0', () => {
    let negativeBefore = 0;
    for (let seed = 1; seed <= 40; seed += 1) {
      const it = sample(seed);
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

describe('stepToFirstFlip', () => {
  const one = Uint32Array.from([0, 1, 2]);
  const flat = Float64Array.from([0, 0, 4, 0, 0, 3]);
  const along = (...direction: number[]): number => stepToFirstFlip(one, flat, Float64Array.from(direction));

  it('is where the area is gone: one corner moving, two moving, a turn that never collapses, growth', () => {
    expect(along(0, 0, 0, 0, 0, -1)).toBeCloseTo(3, 14);
    expect(along(0, 0, -2, 0, 0, -1)).toBeCloseTo(2, 14);
    expect(along(0, 0, -1, 0, 0, -3)).toBeCloseTo(1, 14);
    expect(along(0, 0, 0, 4, -3, 0)).toBe(Infinity);
    expect(along(0, 0, 1, 0, 0, 1)).toBe(Infinity);
    expect(along(5, 5, 5, 5, 5, 5)).toBe(Infinity);
  });

  it('finds the first of many to 1e-9 of the step, never beyond it', () => {
    const rand = seededRandom(17);
    for (let trial = 0; trial < 300; trial += 1) {
      const shape = Float64Array.from([rand(), rand(), 4 + rand(), rand(), rand(), 3 + rand()]);
      const direction = Float64Array.from(shape, () => 4 * (rand() - 0.5));
      const step = stepToFirstFlip(one, shape, direction);
      const areaAt = (share: number): number => {
        const [ax, ay, bx, by, cx, cy] = shape.map((x, i) => x + share * direction[i]);
        return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
      };
      if (step === Infinity) {
        for (let k = 0; k <= 50; k += 1) expect(areaAt(k)).toBeGreaterThan(0);
        continue;
      }
      expect(Math.abs(areaAt(step))).toBeLessThan(1e-9 * (1 + step * step));
      for (let k = 0; k < 20; k += 1) expect(areaAt((k / 20) * step)).toBeGreaterThan(0);
    }
  });
});
