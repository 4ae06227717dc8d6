import { expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { isFree, laidOnSculpt, roughSculpt } from '../../../src/pipeline/propose/rough-sculpt.ts';
import { seamDegrees, seamGraph, seamRuns } from '../../../src/steps/seams/propose-graph.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { meshOf } from '../../support/meshes.ts';
import { wishFor } from './seek.ts';

const WIDE = 40;

/** A sheet bent over a wave, 3,200 triangles. */
const wave = meshOf(
  Array.from({ length: (WIDE + 1) ** 2 }, (_, i) => {
    const [x, y] = [i % (WIDE + 1), Math.floor(i / (WIDE + 1))];
    return [x, y, 4 * Math.sin(x / 5) * Math.cos(y / 7)] as const;
  }),
  Array.from({ length: WIDE * WIDE }, (_, i) => {
    const v = (i % WIDE) + Math.floor(i / WIDE) * (WIDE + 1);
    return [v, v + 1, v + WIDE + 2, v + WIDE + 1];
  }),
);

it('looks for seams on a surface of the sculpt’s own corners, and lays them on the sculpt without a branch more', async () => {
  const given = wishFor({ mesh: wave });
  const weights = new Float64Array(topologyOf(wave).edgeCount).fill(0.5);
  const { wish, vertexOf } = await roughSculpt({ ...given, weights }, QUIET_WORK);
  expect(wish.mesh.triangles.length / 3).toBeLessThanOrEqual(1600);
  vertexOf.forEach((v, i) => {
    expect([...wish.positions.subarray(3 * i, 3 * i + 3)]).toEqual([...wave.positions.subarray(3 * v, 3 * v + 3)]);
  });
  expect(wish.weights?.every((each) => Math.abs(each - 0.5) < 1e-12)).toBe(true);
  const rough = seamGraph(wish.mesh, wish);
  const fine = seamGraph(wave, given);
  // A seam of several edges inside the sheet.
  const isSeam = new Uint8Array(rough.edgeCount);
  let v = rough.isRim.indexOf(0);
  const seen = new Set([v]);
  for (let i = 0; i < 5; i += 1) {
    const e = [...rough.edges.subarray(rough.starts[v], rough.starts[v + 1])].find((each) => {
      const w = rough.ends[2 * each] === v ? rough.ends[2 * each + 1] : rough.ends[2 * each];
      return rough.isRim[w] === 0 && !seen.has(w);
    });
    if (e === undefined) break;
    isSeam[e] = 1;
    v = rough.ends[2 * e] === v ? rough.ends[2 * e + 1] : rough.ends[2 * e];
    seen.add(v);
  }
  expect(seen.size).toBe(6);
  const laid = laidOnSculpt(fine, rough, vertexOf, isSeam);
  expect(laid).not.toBeNull();
  if (laid === null) return;
  const degree = seamDegrees(fine, laid);
  for (const w of seen) expect(degree[vertexOf[w]]).toBeGreaterThan(0);
  expect(seamRuns(fine, laid, degree)).toHaveLength(1);
});

it('is for sculpts on which nothing is held', () => {
  const given = wishFor({ mesh: wave });
  const count = topologyOf(wave).edgeCount;
  expect(isFree({ ...given, locked: new Uint8Array(count) })).toBe(true);
  expect(isFree({ ...given, locked: new Uint8Array(count).fill(1, 0, 1) })).toBe(false);
  expect(isFree({ ...given, start: { isSeam: new Uint8Array(count).fill(1, 4, 5), count: 1 } })).toBe(false);
  expect(isFree({ ...given, mirror: new Int32Array(count).fill(-1) })).toBe(false);
});
