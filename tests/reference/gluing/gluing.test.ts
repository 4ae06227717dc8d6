import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { gluingOrderSteps } from '../../../src/steps/shop/gluing-order.ts';
import { orderFaults, unreachedIn } from '../../../src/steps/shop/check-order.ts';
import { IS_LONG } from '../../support/long.ts';
import { partedMesh, randomAreas, type PartedMesh } from '../../support/glue-job.ts';
import { meshOf } from '../../support/meshes.ts';
import { SAMPLE_NAMES } from '../../support/run-sample.ts';
import { readSample } from '../../samples/read-sample.ts';
import { unreachedInOrder } from './reach-check.ts';

const meshes = SAMPLE_NAMES.map((name) => {
  const { vertices, faces } = readSample(`${name}.obj`, `${name}.seams.json`);
  return meshOf(
    vertices.map(({ x, y, z }) => [x, y, z] as const),
    faces,
  );
});

/** What the other look says of an order: chains that are not reached. */
function missed({ mesh, chains }: PartedMesh, order: readonly number[]): readonly number[] {
  const rows = order.map((c) => chains[c].vertices);
  return unreachedInOrder(mesh, rows).map((i) => order[i]);
}

/** A sample parted between areas that grew by chance. */
function randomlyParted(seed: number): { readonly parted: PartedMesh; readonly rand: () => number } {
  const rand = seededRandom(seed);
  const mesh = meshes[seed % meshes.length];
  const areaOf = randomAreas(mesh, rand, 4 + Math.floor(9 * rand()));
  const beside = new Map<string, Set<number>>();
  const key = (v: number, w: number): string => (v < w ? `${v} ${w}` : `${w} ${v}`);
  mesh.triangles.forEach((v, h) => {
    const way = key(v, mesh.triangles[h % 3 === 2 ? h - 2 : h + 1]);
    beside.set(way, (beside.get(way) ?? new Set()).add(areaOf[Math.floor(h / 3)]));
  });
  return { parted: partedMesh(mesh, (v, w) => (beside.get(key(v, w))?.size ?? 0) > 1), rand };
}

describe('gluing order', () => {
  it('of random seam sets can be glued by an independent look', () => {
    const seeds = IS_LONG ? 50 : 10;
    let seams = 0;
    let fromOutside = 0;
    for (let seed = 1; seed <= seeds; seed += 1) {
      const { parted } = randomlyParted(seed);
      const order = runAtOnce(gluingOrderSteps(parted.job));
      const all = parted.chains.flatMap(({ sides }, c) => (sides.length === 2 ? [c] : []));
      expect([...order.chains].sort((a, b) => a - b)).toEqual(all);
      // What is told to be pressed from outside is what the other look misses, and nothing else.
      expect(missed(parted, order.chains), `seed ${seed}`).toEqual(order.outside);
      expect(orderFaults(parted.job, order.chains, order)).toEqual([]);
      // The maul alone is shut all round but for the hole of its handle.
      expect(order.outside.length).toBeLessThanOrEqual(SAMPLE_NAMES[seed % 5] === 'maul-head' ? 1 : 0);
      seams += all.length;
      fromOutside += order.outside.length;
    }
    expect(seams).toBeGreaterThan(10 * seeds);
    expect(fromOutside).toBeGreaterThan(0);
  });

  it('tells of random orders what the independent look misses', () => {
    const seeds = IS_LONG ? 20 : 5;
    let shut = 0;
    let missedByBoth = 0;
    for (let seed = 3; seed < 5 * seeds; seed += 5) {
      const { parted, rand } = randomlyParted(seed);
      const { job } = parted;
      const order = runAtOnce(gluingOrderSteps(job));
      const shuffled = order.chains
        .map((chain) => ({ chain, key: rand() }))
        .sort((a, b) => a.key - b.key)
        .map(({ chain }) => chain);
      const own = unreachedIn(job, shuffled);
      const other = missed(parted, shuffled);
      // The product goes from place to place on seams and so sometimes a little farther; it never says a hand reaches where none does.
      expect(other.filter((chain) => !own.includes(chain))).toEqual([]);
      shut += own.length;
      missedByBoth += other.length;
      expect(orderFaults(job, shuffled, order).length > 0).toBe(own.length > order.outside.length);
      // A wish is kept but for what cannot be.
      const wished = runAtOnce(gluingOrderSteps({ ...job, wished: shuffled }));
      expect(wished.outside.length).toBeLessThanOrEqual(order.outside.length);
      if (own.length <= order.outside.length) expect(wished.chains).toEqual(shuffled);
    }
    expect(missedByBoth).toBeGreaterThan(seeds);
    expect(missedByBoth).toBeGreaterThan(0.8 * shut);
  });
});
