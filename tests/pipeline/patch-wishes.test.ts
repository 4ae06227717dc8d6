import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { FLATTEN_WISHES, type EdgeWish } from '../../src/model/flatten-settings.ts';
import { wishesOfPatches } from '../../src/pipeline/patch-wishes.ts';
import type { SculptPart } from '../../src/project/project.ts';
import { foamId, layerId } from '../../src/base/ids.ts';
import { squareBevels, type ChainBevels } from '../../src/steps/foam/chain-bevels.ts';
import { seamCuts } from '../../src/steps/foam/seam-cuts.ts';
import { makeShellLayer } from '../../src/steps/shell/make-shell-layer.ts';
import { cutPatches } from '../../src/steps/cut/cut-patches.ts';
import { seamChains } from '../../src/steps/cut/seam-chains.ts';
import { seamSetFromMarks } from '../../src/steps/seams/seam-set.ts';
import { expectOk } from '../support/expect-ok.ts';
import { meshOf } from '../support/meshes.ts';
import { makeSample, SAMPLE_RUN } from '../support/run-sample.ts';

/** Four columns of two squares, parted down the middle: vertex x + 5 y, square x + 4 y. Patch 0 lies left, patch 1 right. */
const MESH = meshOf(
  Array.from({ length: 15 }, (_, i) => [i % 5, Math.floor(i / 5), 0] as const),
  Array.from({ length: 8 }, (_, i) => {
    const v = (i % 4) + 5 * Math.floor(i / 4);
    return [v, v + 1, v + 6, v + 5];
  }),
);
const SEAMS = expectOk(
  seamSetFromMarks(
    MESH,
    {
      edges: [
        [2, 7],
        [7, 12],
      ],
      paths: [],
    },
    true,
  ),
);
const CUT = cutPatches(MESH, SEAMS, MESH.positions);
const CHAINS = seamChains(MESH, SEAMS, CUT, []);

type Wishes = Pick<SculptPart, 'flatten' | 'regions' | 'edgeWishes' | 'pieceSettings' | 'upAxis' | 'tracedSide'>;
const PLAIN: Wishes = {
  flatten: FLATTEN_WISHES,
  regions: [],
  edgeWishes: [],
  pieceSettings: [],
  upAxis: 'y',
  tracedSide: 'face',
};
const SHELL = makeShellLayer(MESH, {
  layer: layerId('layer-1'),
  foam: foamId('eva'),
  thicknessMm: 10,
  neutralFraction: 0.4,
  modelIs: 'face',
});

const SHELLS = CUT.patches.map(() => SHELL);

const wished = (change: Partial<Wishes> = {}, bevels: readonly ChainBevels[] = CHAINS.map(squareBevels)) =>
  wishesOfPatches(MESH, { patches: CUT.patches, chains: CHAINS }, seamCuts(CHAINS, bevels, SHELLS, 45), {
    ...PLAIN,
    ...change,
  });
const withEdge = (wish: EdgeWish) => wished({ edgeWishes: [wish] });

/** Vertices of the mesh along held edges of a patch. */
const heldOf = (wishes: ReturnType<typeof wished>, patch: number): number[] =>
  Array.from(wishes[patch].options.heldEdges ?? [], (v) => CUT.patches[patch].meshVertices[v]);

describe('wishes of a part, brought to its patches', () => {
  it('hold the seams to their length, in the direction of the loop', () => {
    const wishes = wished();
    expect(heldOf(wishes, 0)).toEqual([2, 7, 7, 12]);
    expect(heldOf(wishes, 1)).toEqual([12, 7, 7, 2]);
    expect(wishes[0].options).toMatchObject(FLATTEN_WISHES);
    expect(wishes[0].options).not.toHaveProperty('stiffness');
    expect(wishes[0].options).not.toHaveProperty('grain');
  });

  it('hold the whole open edge that a wish names, and that alone', () => {
    const wishes = withEdge({ edge: [1, 0], holdLength: true });
    expect(heldOf(wishes, 0)).toHaveLength(2 * 8);
    expect(heldOf(wishes, 1)).toHaveLength(2 * 2);
    expect(wishes[0].key).not.toBe(wished()[0].key);
    expect(wishes[1].key).toBe(wished()[1].key);
  });

  it('let the last wish on an edge count', () => {
    const first: EdgeWish = { edge: [1, 0], holdLength: true, straight: true };
    const wishes = wished({ edgeWishes: [first, { edge: [5, 0], holdLength: false }] });
    expect(heldOf(wishes, 0)).toEqual([2, 7, 7, 12]);
    expect(wishes[0].options.straightRuns).toHaveLength(1);
  });

  it('straighten a seam on both its sides', () => {
    const wishes = withEdge({ edge: [7, 12], straight: true });
    for (const [i, patch] of CUT.patches.entries()) {
      const runs = wishes[i].options.straightRuns ?? [];
      const along = runs.map(({ vertices }) => Array.from(vertices, (v) => patch.meshVertices[v]));
      // Each in the direction of its own loop, the piece to the left.
      expect(along).toEqual([i === 0 ? [2, 7, 12] : [12, 7, 2]]);
    }
  });

  it('straighten the line that is cut: 10 mm of foam with k 0.4 leans out 6 mm at 45 degrees on its face, in 4 mm on its back', () => {
    const edgeWishes: EdgeWish[] = [{ edge: [7, 12], straight: true }];
    const bevels = CHAINS.map((chain) =>
      chain.kind === 'butt'
        ? { atStart: Float64Array.of(0, Math.PI / 4), atEnd: Float64Array.of(0, Math.atan(0.5)) }
        : squareBevels(chain),
    );
    const outward = (tracedSide: 'face' | 'back') =>
      wished({ edgeWishes, tracedSide }, bevels).map(({ options }) =>
        Array.from(options.straightRuns?.[0].outwardMm ?? [], (mm) => Number(mm.toFixed(9))),
      );
    expect(outward('face')).toEqual([
      [0, 3, 3],
      [3, 3, 0],
    ]);
    expect(outward('back')[0]).toEqual([0, -2, -2]);
  });

  it('stiffen the triangles of an area, the later one counting', () => {
    const regions = [
      { id: 'a', name: 'Motif', faces: [0, 1], give: 'stiff' },
      { id: 'b', name: 'Warm', faces: [1], give: 'soft' },
    ] as const;
    const wishes = wished({ regions });
    const { meshTriangles } = CUT.patches[0];
    expect(wishes[0].options.stiffness).toEqual(
      Float64Array.from(meshTriangles, (t) => [100, 0.1][MESH.faceOfTriangle[t]] ?? 1),
    );
    expect(wishes[1].options).not.toHaveProperty('stiffness');
    expect(wishes[1].key).toBe(wished()[1].key);
  });

  it('lay the grain of a piece from the part’s up, where it asks something of the stretch', () => {
    const setting = { face: 3, grain: { angleDeg: 90, stretch: 'across' } } as const;
    const wishes = wished({ pieceSettings: [setting], upAxis: 'z' });
    expect(wishes[1].options.grain).toEqual({
      axis: { x: 0, y: 0, z: 1 },
      turnRad: Math.PI / 2,
      stretch: 'across',
    });
    expect(wishes[0].options).not.toHaveProperty('grain');
    const any = wished({ pieceSettings: [{ ...setting, grain: { angleDeg: 90, stretch: 'any' } }] });
    expect(any[1]).toEqual(wished()[1]);
  });
});

describe('a wish for one piece', () => {
  it('lays that piece flat anew and leaves the others as they were; taken back, all is as before', async () => {
    const { project, pipeline, outcome: before } = await makeSample('shoulder-plate');
    const [part] = project.parts;
    const { mesh } = before.sculpt!;
    const [patch] = before.cut!.patches;
    const faces = [...new Set(Array.from(patch.meshTriangles, (t) => mesh.faceOfTriangle[t]))].sort((a, b) => a - b);
    const regions = [{ id: 'a', name: 'Motif', faces, give: 'stiff' }] as const;
    const after = await pipeline.run({ ...project, parts: [{ ...part, regions }] }, QUIET_WORK);
    expect(after.flats!.map((flat, i) => flat === before.flats![i])).toEqual(before.flats!.map((_, i) => i !== 0));
    const undone = await pipeline.run(project, QUIET_WORK, SAMPLE_RUN);
    expect(undone.flats).toEqual(before.flats);
    expect(undone.madeNew).toEqual([]);
  });
});
