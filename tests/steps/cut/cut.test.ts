import { describe, expect, it } from 'vitest';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import type { SeamSet } from '../../../src/model/seams.ts';
import { cutPatches } from '../../../src/steps/cut/cut-patches.ts';
import { offerCut } from '../../../src/steps/cut/offer-cut.ts';
import { seamChains } from '../../../src/steps/cut/seam-chains.ts';
import { boxMesh, meshOf, torusMesh, tubeMesh } from '../../support/meshes.ts';
import { sheetMesh } from '../../support/round-meshes.ts';

type Pair = readonly [number, number];

function seamSet(mesh: Mesh, pairs: readonly Pair[]): SeamSet {
  const topology = topologyOf(mesh);
  const isSeam = new Uint8Array(topology.edgeCount);
  for (const [v, w] of pairs) {
    const edge = topology.edgeBetween(v, w);
    expect(edge, `edge ${v}-${w}`).toBeGreaterThanOrEqual(0);
    isSeam[edge] = 1;
  }
  return { isSeam, count: pairs.length };
}

const allBoxEdges: Pair[] = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) =>
  [1, 2, 4].filter((bit) => (i & bit) === 0).map((bit) => [i, i | bit] as const),
);

const cutAlong = (mesh: Mesh, pairs: readonly Pair[]) => {
  const seams = seamSet(mesh, pairs);
  const cut = cutPatches(mesh, seams, mesh.positions);
  return { seams, cut, chains: seamChains(mesh, seams, cut, []) };
};

describe('cutPatches', () => {
  it('parts a box along all its edges into six discs of two triangles', () => {
    const { cut } = cutAlong(boxMesh(10), allBoxEdges);
    expect(
      cut.patches.map((p) => [p.kind, p.euler, p.meshTriangles.length, p.loops.length, p.loops[0].length]),
    ).toEqual(Array.from({ length: 6 }, () => ['disc', 1, 2, 1, 4]));
  });

  it('calls an uncut box closed, an uncut tube a piece with a hole, an uncut ring handled', () => {
    expect(cutAlong(boxMesh(10), []).cut.patches[0]).toMatchObject({ kind: 'closed', euler: 2 });
    expect(cutAlong(tubeMesh(8, 10, 20), []).cut.patches[0]).toMatchObject({ kind: 'windowed', euler: 0 });
    expect(cutAlong(torusMesh(8, 6, 30, 10), []).cut.patches[0]).toMatchObject({ kind: 'closed', euler: 0 });
  });

  it('doubles the corners of a seam that closes a tube and keeps every loop with the patch on its left', () => {
    const mesh = tubeMesh(8, 10, 20);
    const { cut } = cutAlong(mesh, [[0, 8]]);
    const [patch] = cut.patches;
    expect(patch.kind).toBe('disc');
    expect(patch.meshVertices.length).toBe(18);
    const next = new Map<string, boolean>();
    for (let t = 0; t < patch.triangles.length; t += 3) {
      for (let k = 0; k < 3; k += 1) next.set(`${patch.triangles[t + k]}>${patch.triangles[t + ((k + 1) % 3)]}`, true);
    }
    patch.loops[0].forEach((v, i, loop) => expect(next.has(`${v}>${loop[(i + 1) % loop.length]}`)).toBe(true));
  });

  it.each([
    ['flat', 0],
    ['domed', 20],
  ])('takes the edge of a %s sheet for its outline, however long a slit winds about in it', (_, riseMm) => {
    const mesh = sheetMesh(6, 6, 60, 60, (x, y) => (riseMm * (x * (60 - x) + y * (60 - y))) / 1800);
    // Back and forth over all inner corners, 24 edges there and back: twice as long as the sheet's own edge.
    const snake = [1, 2, 3, 4, 5].flatMap((row) =>
      [1, 2, 3, 4, 5].map((column) => 7 * row + (row % 2 === 1 ? column : 6 - column)),
    );
    const slit = snake.slice(1).map((v, i): Pair => [snake[i], v]);
    const { patches } = cutAlong(mesh, slit).cut;
    expect(patches.map(({ loops }) => loops.map(({ length }) => length))).toEqual([[24, 48]]);
  });

  it('separates two sheets that touch in one point only', () => {
    const mesh = meshOf(
      [
        [0, 0, 0],
        [1, 0, 0],
        [0, 1, 0],
        [-1, 0, 0],
        [0, -1, 0],
      ],
      [
        [0, 1, 2],
        [0, 3, 4],
      ],
    );
    const { cut } = cutAlong(mesh, []);
    expect(cut.patches.map((p) => p.kind)).toEqual(['disc', 'disc']);
  });
});

describe('seamChains', () => {
  it('finds twelve seams on a box, each with both sides running the same way', () => {
    const mesh = boxMesh(10);
    const { cut, chains } = cutAlong(mesh, allBoxEdges);
    expect(chains.length).toBe(12);
    for (const chain of chains) {
      expect(chain.sides.length).toBe(2);
      expect(chain.foldRad[0]).toBeCloseTo(Math.PI / 2, 12);
      for (const side of chain.sides) {
        expect([...side.localVertices].map((v) => cut.patches[side.patch].meshVertices[v])).toEqual([
          ...chain.vertices,
        ]);
      }
    }
    expect(chains.map((chain) => chain.letter).join('')).toBe('ABCDEFGHIJKL');
  });

  it('makes one seam of a closing line and one open edge of each rim of a tube', () => {
    const { chains } = cutAlong(tubeMesh(8, 10, 20, 3), [
      [0, 8],
      [8, 16],
      [16, 24],
    ]);
    expect(chains.map((c) => [c.id, c.kind, c.vertices.length, c.closed, c.sides.length])).toEqual([
      ['s1', 'butt', 4, false, 2],
      ['o1', 'open', 9, false, 1],
      ['o2', 'open', 9, false, 1],
    ]);
    const [seam] = chains;
    expect(seam.sides[0].localVertices).not.toEqual(seam.sides[1].localVertices);
  });

  it('joins a dart to itself and meets in one point at its tip', () => {
    const { cut, chains } = cutAlong(tubeMesh(8, 10, 20, 2), [
      [0, 8],
      [8, 16],
      [4, 12],
    ]);
    const dart = chains.find((c) => c.kind === 'butt' && c.vertices.length === 2);
    expect(dart).toBeDefined();
    const tips = dart!.sides.map((side) => side.localVertices[dart!.vertices[0] === 12 ? 0 : 1]);
    expect(tips[0]).toBe(tips[1]);
    expect(cut.patches[0].kind).toBe('disc');
  });

  it('closes a seam that runs all the way round', () => {
    const pairs = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => [8 + i, 8 + ((i + 1) % 8)] as const);
    const { chains } = cutAlong(tubeMesh(8, 10, 20, 2), pairs);
    const round = chains.find((c) => c.kind === 'butt');
    expect(round).toMatchObject({ closed: true });
    expect(round!.vertices.length).toBe(9);
    expect(round!.vertices[0]).toBe(round!.vertices[8]);
  });

  it('ties a wish to the seam it names', () => {
    const mesh = boxMesh(10);
    const seams = seamSet(mesh, allBoxEdges);
    const cut = cutPatches(mesh, seams, mesh.positions);
    const chains = seamChains(mesh, seams, cut, [{ edge: [0, 1], kind: 'lap', allowanceMm: 8, lapFace: 2 }]);
    const laps = chains.filter((c) => c.kind === 'lap');
    expect(laps).toHaveLength(1);
    const side = laps[0].sides[laps[0].lapSide];
    expect(mesh.faceOfTriangle[cut.patches[side.patch].meshTriangles[0]]).toBe(2);
  });
});

describe('offerCut', () => {
  it.each([
    ['tube', tubeMesh(8, 10, 20, 2), 20],
    ['box', boxMesh(10), 20],
    ['ring', torusMesh(8, 6, 30, 10), undefined],
  ] as const)('opens a %s into a disc', (_, mesh, length) => {
    const { seams, cut } = cutAlong(mesh, []);
    const offer = offerCut(mesh, seams, cut.patches, 0);
    const after = cutAlong(mesh, offer!.edges);
    expect(after.cut.patches.map((p) => p.kind)).toEqual(['disc']);
    if (length !== undefined) expect(offer!.lengthMm).toBeLessThanOrEqual(length + 15);
  });

  it('has nothing to offer for a disc', () => {
    const { seams, cut } = cutAlong(tubeMesh(8, 10, 20), [[0, 8]]);
    expect(offerCut(tubeMesh(8, 10, 20), seams, cut.patches, 0)).toBeNull();
  });
});
