import { describe, expect, it } from 'vitest';
import type { MeshLine } from '../../../src/mesh/lines/mesh-line.ts';
import { lineLength } from '../../../src/mesh/lines/mesh-point.ts';
import { checkMeshLine } from '../../../src/mesh/lines/check-mesh-line.ts';
import { surfaceOf } from '../../../src/mesh/surface.ts';
import { PLAIN_TRIM } from '../../../src/model/trim.ts';
import { makeTrim } from '../../../src/steps/trim/make-trim.ts';
import { coverNet } from '../../../src/steps/trim/net-trails.ts';
import { lineOfTrail, seamNet, type SurfaceNetLine } from '../../../src/steps/trim/seam-net.ts';
import { trimGround } from '../../../src/steps/trim/trim-ground.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { boxMesh } from '../../support/meshes.ts';
import { ballMesh } from '../../support/round-meshes.ts';

const edge = (v: number, w: number): MeshLine => ({
  points: [
    { at: 'vertex', vertex: v },
    { at: 'vertex', vertex: w },
  ],
  closed: false,
});

describe('nets of seams on a surface', () => {
  it('covers the edges of a box in four, each turn a third of half a turn', () => {
    const mesh = boxMesh(120);
    const lines: SurfaceNetLine[] = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((v) =>
      [1, 2, 4].flatMap((bit) => ((v & bit) === 0 ? [{ line: edge(v, v | bit), isSeen: true }] : [])),
    );
    const net = seamNet(surfaceOf(mesh), lines, { mostTurnRad: Math.PI });
    const cover = coverNet(net);
    expect([cover.fewestTrails, cover.reachedTrails, cover.lengthMm]).toEqual([4, 4, 1440]);
    // 270 degrees round a corner, 90 of them between two edges: a strip turns by 180 - 360 / 3.
    const joints = cover.trails.reduce((sum, { lines: own }) => sum + own.length - 1, 0);
    expect(cover.turnRad).toBeCloseTo((joints * Math.PI) / 3, 9);
    const ground = trimGround(mesh, 0, 1);
    const covered = cover.trails.map((trail, i) => ({ name: `C${i + 1}`, line: lineOfTrail(lines, trail) }));
    for (const { line } of covered) expect(checkMeshLine(ground.foot, line)).toEqual([]);
    expect(covered.reduce((sum, { line }) => sum + lineLength(ground.foot, line), 0)).toBeCloseTo(1440, 9);
    const { strips } = expectOk(makeTrim(ground, covered, PLAIN_TRIM));
    // Each edge lies under straight strips that meet in mitres at the corners, 1 mm out on the neutral surface.
    expect(strips).toHaveLength(12);
    for (const { lengthMm } of strips) expect(lengthMm).toBeCloseTo(122, 6);
  });

  it('goes straight on along great circles where all edges of a round net may be had in one', () => {
    // An octahedron's six corners on a ball: three great circles, four ends at each corner.
    const mesh = ballMesh(1, 100);
    const { positions, topology } = surfaceOf(mesh);
    const lines = Array.from({ length: topology.edgeCount }, (_, e): SurfaceNetLine => {
      const [v, w] = [topology.edgeVertices[2 * e], topology.edgeVertices[2 * e + 1]];
      return {
        line: edge(v, w),
        isSeen: [0, 1, 2].every((axis) => positions[3 * v + axis] + positions[3 * w + axis] >= 0),
      };
    });
    const net = seamNet(surfaceOf(mesh), lines, { mostTurnRad: Math.PI });
    const cover = coverNet(net);
    expect(cover.reachedTrails).toBe(cover.fewestTrails);
    const seen = lines.filter(({ isSeen }) => isSeen).length;
    expect(cover.trails.reduce((sum, { lines: own }) => sum + own.length, 0)).toBe(seen);
  });
});
