import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { handReachMm } from '../../../src/model/hand-reach.ts';
import { completeOrder, orderFaults } from '../../../src/steps/shop/check-order.ts';
import { gluingOrderSteps } from '../../../src/steps/shop/gluing-order.ts';
import { laidSteps, netSteps } from '../../../src/steps/shop/gluing-steps.ts';
import { closingOf, rimsOf } from '../../../src/steps/shop/rims.ts';
import { boxMesh, tubeMesh } from '../../support/meshes.ts';
import { partedMesh } from '../../support/glue-job.ts';

const orderOf = (parted: ReturnType<typeof partedMesh>, wished?: readonly number[]) =>
  runAtOnce(gluingOrderSteps({ ...parted.job, ...(wished === undefined ? {} : { wished }) }));

/** A box of six pieces. Triangle diagonals stay joined. */
const boxOf = (a: number, b = a, c = a) => {
  const isAlongAxis = (v: number, w: number): boolean => [1, 2, 4].includes(v ^ w);
  return partedMesh(boxMesh(a, b, c), isAlongAxis);
};

describe('reach', () => {
  it('goes by the rim: a bowl, fingers, a hand, an arm', () => {
    expect([0, 40, 79, 80, 239, 240, 330, 4000].map(handReachMm)).toEqual([0, 10, 19.75, 60, 60, 180, 600, 1000]);
  });
});

describe('rims', () => {
  it('of two panels that are joined are one; the other panels of a box keep theirs', () => {
    const { job, chains } = boxOf(100, 60, 40);
    const glued = new Uint8Array(chains.length);
    // The first seam joins two faces by one of their edges.
    glued[0] = 1;
    const [a, b] = job.net.chains[0].pieces;
    const { lengthMm, bodyOf, rimOf } = rimsOf(job.net, glued);
    expect(bodyOf[a]).toBe(bodyOf[b]);
    expect(lengthMm).toHaveLength(5);
    const rimOfFace = (p: number): number => 2 * [100 * 60, 100 * 40, 60 * 40].indexOf(job.areaMm2[p]);
    const round = [320, 280, 200];
    const joined = round[rimOfFace(a) / 2] + round[rimOfFace(b) / 2] - 2 * job.net.chains[0].lengthMm;
    const own = job.net.next.findIndex((_, side) => rimOf[side] >= 0 && job.net.chains[side >> 1].pieces.includes(a));
    expect(lengthMm[rimOf[own]]).toBeCloseTo(joined, 9);
  });

  it('tell a seam that goes on from a corner from one that closes a ring', () => {
    const parted = partedMesh(tubeMesh(4, 100, 300), (v, w) => Math.abs(v - w) === 4);
    const { job, chains } = parted;
    const glued = new Uint8Array(chains.length);
    const seams = job.net.chains.flatMap(({ pieces }, c) => (pieces.length === 2 ? [c] : []));
    expect(seams).toHaveLength(4);
    for (const c of seams.slice(0, 3)) {
      expect(closingOf(job.net, rimsOf(job.net, glued), c)).toBe('join');
      glued[c] = 1;
    }
    expect(closingOf(job.net, rimsOf(job.net, glued), seams[3])).toBe('ring');
    glued[seams[3]] = 1;
    const { lengthMm } = rimsOf(job.net, glued);
    // Two ends of the tube, four sides of 100 times root two each.
    expect(lengthMm).toHaveLength(2);
    for (const mm of lengthMm) expect(mm).toBeCloseTo(400 * Math.SQRT2, 9);
  });
});

describe('the order', () => {
  it('of a shut box leaves one seam to be pressed from outside, the last one', () => {
    const parted = boxOf(200);
    const { chains, outside } = orderOf(parted);
    expect(chains).toHaveLength(12);
    expect(outside).toEqual([chains[11]]);
  });

  it('glues the small box of a closed pair of openings before its only way in is shut', () => {
    // A tube 300 long with a lid of eight panels at one end: all seams are reached from the other end.
    const parted = partedMesh(tubeMesh(8, 60, 300, 3), () => true);
    const { outside } = orderOf(parted);
    expect(outside).toEqual([]);
  });

  it('keeps a wish that can be, and tells the seam that comes too late in one that cannot, and what shut it in', () => {
    // 12 × 12 × 400: neither end lets a hand in, nor fingers; only the long gaps do.
    const parted = boxOf(12, 12, 400);
    const best = orderOf(parted);
    const { net } = parted.job;
    const short = best.chains.filter((c) => net.chains[c].lengthMm < 20);
    const long = best.chains.filter((c) => net.chains[c].lengthMm > 20);
    expect(best.outside).toHaveLength(1);
    expect(long).toContain(best.chains[11]);
    const wrong = [...long, ...short];
    const faults = orderFaults(parted.job, wrong, best);
    expect(faults.length).toBeGreaterThan(0);
    // The fourth long seam shuts the box's length; lids then lie too deep.
    for (const { chain, shutBy } of faults) {
      expect(short).toContain(chain);
      expect(shutBy === null || wrong.indexOf(shutBy) < wrong.indexOf(chain)).toBe(true);
    }
    expect(orderOf(parted, best.chains).chains).toEqual(best.chains);
    expect(orderOf(parted, wrong).outside).toHaveLength(1);
  });

  it('is brought up to seams that have come and gone', () => {
    expect(completeOrder([5, 3, 9, 1], [0, 1, 2, 3, 5])).toEqual([0, 5, 3, 1, 2]);
    expect(completeOrder([], [4, 2])).toEqual([4, 2]);
  });
});

describe('steps', () => {
  it('hold each seam once, small to large, and what follows from corner to corner together', () => {
    const parted = boxOf(100, 60, 40);
    const order = orderOf(parted);
    const steps = netSteps(parted.job.net, order, parted.job.areaMm2);
    expect(steps.flatMap(({ runs }) => runs.map(({ chain }) => chain))).toEqual(order.chains);
    const joins = steps.filter(({ work }) => work === 'join');
    // Five joins make one body of six panels.
    expect(joins).toHaveLength(5);
    const areaOf = (pieces: readonly number[]): number => pieces.reduce((sum, p) => sum + parted.job.areaMm2[p], 0);
    for (const { adds, onto } of joins) expect(areaOf(adds)).toBeLessThanOrEqual(areaOf(onto));
    // A seam that goes on from a corner is held there.
    for (const { runs } of steps) for (const run of runs.slice(1)) expect(run.heldAtStart || run.heldAtEnd).toBe(true);
  });

  it('of a sheet that is laid take its pieces one by one, each with the seams to those that lie', () => {
    const { job } = boxOf(100, 60, 40);
    const steps = laidSteps(job.net, [0, 1, 2, 3, 4, 5]);
    expect(steps.map(({ adds }) => adds)).toEqual([[0], [1], [2], [3], [4], [5]]);
    expect(steps.flatMap(({ runs }) => runs)).toHaveLength(12);
    expect(steps[0].runs).toHaveLength(0);
    expect(steps[5].runs).toHaveLength(4);
  });
});
