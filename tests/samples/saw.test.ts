import { describe, expect, it } from 'vitest';
import { runSample } from '../support/run-sample.ts';

describe('the saw for the helm', () => {
  it('serves every edge once within a degree, and twins alike', async () => {
    const pieces = (await runSample('helm')).pieces ?? [];
    expect(pieces).toHaveLength(12);
    for (const { saw, edges } of pieces) {
      const served = saw?.settings.flatMap(({ edges: list }) => list) ?? [];
      const byHand = saw?.byHand.map(({ edge }) => edge) ?? [];
      expect([...served, ...byHand].sort((a, b) => a - b)).toEqual([...edges.keys()]);
      for (const { bevelDeg, edges: list } of saw?.settings ?? []) {
        const bevels = list.flatMap((i) => [...edges[i].bevelDeg]);
        for (const bevel of bevels) expect(Math.abs(bevel - bevelDeg)).toBeLessThanOrEqual(1 + 1e-6);
      }
      for (const i of byHand) {
        const bevels = [...edges[i].bevelDeg];
        expect(Math.max(...bevels) - Math.min(...bevels)).toBeGreaterThan(2);
      }
    }
    // The keel's halves mirror each other: square below, 8.8 degrees against the brow, the rest by hand.
    const keel = pieces.filter(({ name }) => name.startsWith('Helm keel'));
    expect(keel).toHaveLength(2);
    for (const { saw, edges } of keel) {
      expect(saw?.settings.map(({ bevelDeg, edges: list }) => [Math.round(10 * bevelDeg) / 10, list.length])).toEqual([
        [0, 1],
        [-8.8, 1],
      ]);
      expect(saw?.byHand).toHaveLength(edges.length - 2);
    }
  });
});
