import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { propose } from '../../../src/pipeline/propose/propose.ts';
import { REFERENCE_LIMITS, type Proposal, type ProposalWish } from '../../../src/pipeline/propose/proposal.ts';
import { boxMesh } from '../../support/meshes.ts';
import { readTestObj } from '../../support/read-test-obj.ts';

const shape = (name: string) => readTestObj(new URL(`../../reference/seam-shapes/${name}.obj`, import.meta.url));

type Given = Partial<ProposalWish> & Pick<ProposalWish, 'mesh'>;

async function seek(given: Given, moves: number): Promise<{ last: Proposal; all: Proposal[] }> {
  const all: Proposal[] = [];
  let asked = 0;
  const last = await propose(
    { positions: given.mesh.positions, limits: REFERENCE_LIMITS, dial: 'few', seed: 1, ...given },
    QUIET_WORK,
    (better) => all.push(better),
    () => (asked += 1) > moves,
  );
  return { last, all };
}

describe('a proposal', () => {
  it('lays a box flat as one piece: seams along a tree over its eight corners, seven edges', async () => {
    const { last } = await seek({ mesh: boxMesh(10) }, 3000);
    expect(last.feasible).toBe(true);
    expect(last.pieces).toBe(1);
    expect(last.lengthMm).toBeCloseTo(70, 9);
    expect(last.perPiece[0].stretch99).toBeLessThan(1e-6);
  });

  it('opens a tube by one cut along its side', async () => {
    const { last } = await seek({ mesh: shape('bracer_cone') }, 60);
    expect(last.feasible).toBe(true);
    expect([last.pieces, last.dartCount]).toEqual([1, 0]);
    expect(last.lengthOverRootArea).toBeLessThanOrEqual(0.86);
  });

  it('tells better and better answers that hold every limit, the last of which it returns', async () => {
    const { last, all } = await seek({ mesh: shape('helmet_low') }, 300);
    expect(all.length).toBeGreaterThan(2);
    all.forEach((one, i) => {
      expect(one.feasible).toBe(true);
      expect(one.reasons).toEqual([]);
      if (i > 0) expect(one.sum.total).toBeLessThan(all[i - 1].sum.total);
    });
    expect(last.sum.total).toBe(all[all.length - 1].sum.total);
  });

  it('is the same for the same seed and number of moves', async () => {
    const [one, other] = [
      await seek({ mesh: shape('helmet_low') }, 150),
      await seek({ mesh: shape('helmet_low') }, 150),
    ];
    expect(other.last.edges).toEqual(one.last.edges);
    expect(other.last.perPiece[0].flat?.uv).toEqual(one.last.perPiece[0].flat?.uv);
  });

  it('adds nothing where nothing is allowed, and says which limit that breaks and where', async () => {
    const mesh = shape('helmet_low');
    const weights = new Float64Array(topologyOf(mesh).edgeCount).fill(Infinity);
    const { last } = await seek({ mesh, weights }, 100);
    expect(last.feasible).toBe(false);
    expect(last.edges).toEqual([]);
    expect(last.reasons.map(({ limit }) => limit)).toContain('squash');
    expect(last.reasons[0].defectRad).toBeGreaterThan(3);
  });
});
