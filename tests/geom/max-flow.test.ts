import { describe, expect, it } from 'vitest';
import { leastCut, type FlowNet } from '../../src/geom/max-flow.ts';
import { forAll } from '../support/for-all.ts';

/** The least cut of a small net, by trying every way to deal the places to two sides. */
function leastByTrying({ size, ends, capacities }: FlowNet, sources: number[], sinks: number[]): number {
  let least = Infinity;
  for (let sides = 0; sides < 2 ** size; sides += 1) {
    const isSource = (v: number): boolean => ((sides >> v) & 1) === 1;
    if (!sources.every(isSource) || sinks.some(isSource)) continue;
    let sum = 0;
    for (let p = 0; p < capacities.length; p += 1) {
      if (isSource(ends[2 * p]) !== isSource(ends[2 * p + 1])) sum += capacities[p];
    }
    least = Math.min(least, sum);
  }
  return least;
}

describe('leastCut', () => {
  it('parts a chain at its narrowest pipe', () => {
    const { value, isSourceSide, pipes } = leastCut(
      { size: 4, ends: [0, 1, 1, 2, 2, 3], capacities: [5, 2, 3] },
      [0],
      [3],
    );
    expect(value).toBe(2);
    expect(pipes).toEqual([1]);
    expect([...isSourceSide]).toEqual([1, 1, 0, 0]);
  });

  it('sends water back where a first path was badly chosen', () => {
    const net = { size: 4, ends: [0, 1, 0, 2, 1, 2, 1, 3, 2, 3], capacities: [1, 1, 1, 1, 1] };
    expect(leastCut(net, [0], [3]).value).toBe(2);
  });

  it('cuts nothing where sources and sinks are apart already', () => {
    expect(leastCut({ size: 3, ends: [0, 1], capacities: [4] }, [0], [2])).toEqual({
      value: 0,
      isSourceSide: Uint8Array.from([1, 1, 0]),
      pipes: [],
    });
  });

  it('refuses a place that is source and sink', () => {
    expect(() => leastCut({ size: 2, ends: [0, 1], capacities: [1] }, [0], [0, 1])).toThrow(RangeError);
  });

  it('finds the same as trying every cut of random nets', () =>
    forAll(
      (rand) => {
        const size = 3 + Math.floor(rand() * 6);
        const pipes = Math.floor(rand() * 16);
        const ends = Array.from({ length: 2 * pipes }, () => Math.floor(rand() * size));
        const capacities = Array.from({ length: pipes }, () => (rand() < 0.1 ? 0 : rand() * 10));
        const sources = rand() < 0.5 ? [0] : [0, 0, 2];
        return { net: { size, ends, capacities }, sources, sinks: rand() < 0.5 || size < 5 ? [1] : [1, size - 1] };
      },
      ({ net, sources, sinks }) => {
        const { value, pipes, isSourceSide } = leastCut(net, sources, sinks);
        expect(value).toBeCloseTo(leastByTrying(net, sources, sinks), 9);
        expect(pipes.reduce((sum, p) => sum + net.capacities[p], 0)).toBe(value);
        expect(sources.every((v) => isSourceSide[v] === 1) && sinks.every((v) => isSourceSide[v] === 0)).toBe(true);
      },
      { runs: 400 },
    ));
});
