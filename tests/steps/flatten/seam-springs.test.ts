import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { SEAM_PRICE } from '../../../src/base/tolerance.ts';
import { flattenPatch } from '../../../src/steps/flatten/flatten-patch.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { onePatch, referencePatch, rimEdges } from './flatten-support.ts';

/** Greatest error of a border edge's flat length, share of its true length, and the flat piece. */
async function borderError(price: number) {
  const mesh = referencePatch('cap45-2k');
  const patch = onePatch(mesh);
  const flat = expectOk(
    await flattenPatch(patch, mesh.positions, { heldEdges: rimEdges(patch), seamPrice: price }, QUIET_WORK),
  );
  const [loop] = patch.loops;
  const errors = Array.from(loop, (v, i) => {
    const w = loop[(i + 1) % loop.length];
    const at = (axis: number): number =>
      mesh.positions[3 * patch.meshVertices[w] + axis] - mesh.positions[3 * patch.meshVertices[v] + axis];
    const length = Math.hypot(flat.uv[2 * w] - flat.uv[2 * v], flat.uv[2 * w + 1] - flat.uv[2 * v + 1]);
    return Math.abs(length / Math.hypot(at(0), at(1), at(2)) - 1);
  });
  return { error: Math.max(...errors), flat };
}

describe('seam springs', () => {
  it('hold the rim of a cap to its length, at the price of stretch inside', async () => {
    const [plain, held] = [await borderError(0), await borderError(SEAM_PRICE)];
    expect(plain.error).toBeGreaterThan(0.02);
    expect(held.error).toBeLessThan(0.0025);
    expect(held.flat.energy).toBeGreaterThan(plain.flat.energy);
    expect(held.flat.flipped).toBe(0);
    expect(held.flat.solve.converged).toBe(true);
  });

  it('change nothing at price 0', async () => {
    const plain = await borderError(0);
    expect(plain.flat.energy).toBeLessThan(4.0082 + 1.5e-4);
  });
});
