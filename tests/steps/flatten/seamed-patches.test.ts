import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { cutPatches } from '../../../src/steps/cut/cut-patches.ts';
import { checkFlatPiece } from '../../../src/steps/flatten/check-flat-piece.ts';
import { flattenPatch } from '../../../src/steps/flatten/flatten-patch.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { referencePatch } from './flatten-support.ts';

/** All pieces of a reference mesh cut along its `.seam` file, and their mean energy by area. */
async function flattenCut(name: string) {
  const mesh = referencePatch(name);
  const topology = topologyOf(mesh);
  const isSeam = new Uint8Array(topology.edgeCount);
  const text = readFileSync(new URL(`../../reference/flatten/${name}.seam`, import.meta.url), 'utf8');
  const pairs = text
    .trim()
    .split('\n')
    .map((line) => line.split(' ').map(Number));
  for (const [v, w] of pairs) isSeam[topology.edgeBetween(v, w)] = 1;
  const { patches } = cutPatches(mesh, { isSeam, count: pairs.length }, mesh.positions);
  const pieces = [];
  let energy = 0;
  let area = 0;
  for (const patch of patches) {
    const piece = expectOk(await flattenPatch(patch, mesh.positions, {}, QUIET_WORK));
    checkFlatPiece(patch, piece);
    expect(piece.solve.converged).toBe(true);
    const { totalArea } = restShapes(patch, mesh.positions);
    energy += piece.energy * totalArea;
    area += totalArea;
    pieces.push(piece);
  }
  return { pieces, energy: energy / area };
}

describe('a hemisphere in four gores, and with four darts (tests/reference/flatten/SOURCES.md)', () => {
  it('lies as flat as the reference: gores 4.00436; flat they are at most 8.50 % longer and 3.18 % shorter than the dome', async () => {
    const { pieces, energy } = await flattenCut('hemisphere-gores4-2k');
    expect(pieces.length).toBe(4);
    expect(energy).toBeLessThan(4.00436 + 1e-6);
    // The foam has to do the opposite of what the plane did: squash 1 - 1 / 1.0850, stretch 1 / (1 - 0.0318) - 1.
    for (const { squashPct, stretchPct } of pieces) {
      expect(squashPct.max).toBeCloseTo(100 * (1 - 1 / 1.084973), 2);
      expect(stretchPct.max).toBeCloseTo(100 * (1 / (1 - 0.031792) - 1), 2);
    }
    expect(pieces.every((piece) => piece.overlaps.length === 0)).toBe(true);
    // Four like pieces lie alike.
    for (const piece of pieces) expect(piece.energy).toBeCloseTo(pieces[0].energy, 9);
  });

  it('with darts in one piece 4.004425', async () => {
    const { pieces, energy } = await flattenCut('hemisphere-darts4-2k');
    expect(pieces.length).toBe(1);
    expect(energy).toBeLessThan(4.004425 + 1e-6);
    expect(pieces[0].overlaps).toEqual([]);
  });
});
