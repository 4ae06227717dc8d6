import { describe, expect, it } from 'vitest';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { seamSetFromMarks } from '../../../src/steps/seams/seam-set.ts';
import { handLine } from '../../../src/steps/seams/hand-line.ts';
import { cutPatches } from '../../../src/steps/cut/cut-patches.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { torusMesh, tubeMesh } from '../../support/meshes.ts';

const tube = tubeMesh(12, 20, 60, 6);
const parted = (mesh: typeof tube, lines: readonly (readonly number[])[]) => {
  const edges = lines.flatMap((line) => line.slice(1).map((v, i): [number, number] => [line[i], v]));
  return cutPatches(mesh, expectOk(seamSetFromMarks(mesh, { edges, paths: [] }, true)), mesh.positions);
};

describe('handLine', () => {
  it('goes through its corners in order, along edges', async () => {
    const mesh = torusMesh(12, 8, 30, 10);
    const count = mesh.positions.length / 3;
    await forAll(
      (rand) => Array.from({ length: 4 }, () => Math.floor(rand() * count)),
      (corners) => {
        const line = expectOk(handLine(mesh, corners, null));
        let at = 0;
        for (const corner of corners) {
          at = line.indexOf(corner, at);
          expect(at).toBeGreaterThanOrEqual(0);
        }
        line.slice(1).forEach((v, i) => expect(topologyOf(mesh).edgeBetween(line[i], v)).toBeGreaterThanOrEqual(0));
      },
    );
  });

  it('runs on to the border of its piece at both ends and so splits it', async () => {
    // A tube slit from rim to rim is one piece; a line drawn in its middle is run on to the rims.
    const slit = expectOk(handLine(tube, [0, 72], null));
    const { patchOfTriangle } = parted(tube, [slit]);
    const whole = new Int32Array(patchOfTriangle.length).fill(0);
    expect(patchOfTriangle).toEqual(whole);
    await forAll(
      (rand) => [12 + Math.floor(rand() * 60), 12 + Math.floor(rand() * 60)],
      (corners) => {
        const inPiece = corners.filter((v) => v % 12 !== 0);
        if (new Set(inPiece).size < 2) return;
        const line = expectOk(
          handLine(tube, inPiece, { patchOfTriangle, patch: 0, seams: [{ vertices: slit }], isAcross: true }),
        );
        expect(new Set(parted(tube, [slit, line]).patchOfTriangle).size).toBe(2);
      },
    );
  });

  it('stays in its piece, and says where it cannot', () => {
    const ring = expectOk(handLine(tube, [36, 38, 40, 42, 44, 46, 36], null));
    const { patchOfTriangle } = parted(tube, [ring]);
    expect(new Set(patchOfTriangle).size).toBe(2);
    const patch = patchOfTriangle[0];
    const result = handLine(tube, [1, 71], { patchOfTriangle, patch, seams: [], isAcross: false });
    expect(!result.ok && result.problem.code).toBe('seams/no-path');
  });
});
