import { beforeEach, describe, expect, it } from 'vitest';
import { seamId } from '../../src/base/ids.ts';
import { openNewVersion } from '../../src/app/opening.ts';
import { joinChosen } from '../../src/app/seam-actions.ts';
import { joinChosenAs } from '../../src/app/seam-joins.ts';
import { edgeWishOf, facesOfPiece, setEdgeWishOf } from '../../src/app/wish-actions.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { removeSeamEdges } from '../../src/project/commands.ts';
import { drawPaths } from '../../src/project/path-commands.ts';
import { TRAY_OBJ } from '../browser/open-tray.ts';
import { makeWorkbench, openPartedTray, shown } from '../support/tray-workbench.ts';

describe('a seam across a face', () => {
  let workbench: Workbench;
  const path = () => workbench.part?.seams.paths[0];
  const seam = () => {
    const { sculpt, seams } = workbench.bench;
    const edge = sculpt?.edgePathWay?.findIndex((way) => way !== 0) ?? -1;
    return seams?.chains[seams.chainOfEdge[edge]];
  };
  beforeEach(async () => {
    ({ workbench } = makeWorkbench());
    await openPartedTray(workbench);
    workbench.run(drawPaths([{ points: [{ vertex: 0 }, { vertex: 2 }], kind: 'butt' }]));
    await shown(workbench);
  });

  it('is shown with one piece more, and undone', async () => {
    expect(workbench.bench.pieces?.pieces).toHaveLength(7);
    expect(seam()).toBeDefined();
    workbench.undo();
    await shown(workbench);
    expect(workbench.bench.pieces?.pieces).toHaveLength(6);
    expect(workbench.bench.sculpt?.edgePathWay).toBeUndefined();
  });

  it('is joined again where it is chosen', async () => {
    workbench.setView({ choice: { kind: 'seam', seam: seam()?.id ?? seamId('none') } });
    joinChosen(workbench);
    await shown(workbench);
    expect(workbench.part?.seams.paths).toEqual([]);
    expect(workbench.bench.pieces?.pieces).toHaveLength(6);
  });

  it.each([0, 1] as const)('has its lap on the side %i that was asked for', async (lapSide) => {
    const { id, sides } = seam() ?? { id: seamId('none'), sides: [] };
    workbench.setView({ choice: { kind: 'seam', seam: id } });
    joinChosenAs(workbench, { kind: 'lap', allowanceMm: 10, lapSide, isUnder: false });
    await shown(workbench);
    expect(path()).toMatchObject({ kind: 'lap', allowanceMm: 10 });
    const lapped = seam();
    expect(lapped).toMatchObject({ kind: 'lap', allowanceMm: 10, lapSide });
    expect(lapped?.sides[lapSide].patch).toBe(sides[lapSide].patch);
  });

  it('is wished to be straight', async () => {
    const { id = '' } = seam() ?? {};
    setEdgeWishOf(workbench, id, { straight: true });
    await shown(workbench);
    expect(path()?.straight).toBe(true);
    expect(edgeWishOf(workbench.bench, workbench.part, seam()?.id ?? '')).toEqual({
      holdLength: false,
      straight: true,
    });
  });

  it('goes with the sculpt to a new version of it, as one step that is undone', async () => {
    // Its faces from the last to the first.
    const lines = TRAY_OBJ.trim().split('\n');
    const isFace = (line: string): boolean => line.startsWith('f ');
    const turned = [...lines.filter((line) => !isFace(line)), ...lines.filter(isFace).reverse()].join('\n');
    const before = workbench.part;
    await openNewVersion(workbench, new File([turned], 'tray-2.obj'));
    await shown(workbench);
    expect(workbench.part?.source.fileName).toBe('tray-2.obj');
    expect(workbench.bench.pieces?.pieces).toHaveLength(7);
    expect(workbench.notice?.text).toContain('tray-2.obj has taken the place of the sculpt');
    workbench.undo();
    expect(workbench.part).toBe(before);
  });

  it('stays as it is where the new version cannot be read', async () => {
    const before = workbench.part;
    await openNewVersion(workbench, new File(['nothing'], 'nothing.obj'));
    expect(workbench.part).toBe(before);
    expect(workbench.notice?.tone).toBe('problem');
  });
});

describe('pieces that a line across a polygon parts', () => {
  it('are named by polygons that are theirs alone', async () => {
    const { workbench } = makeWorkbench();
    await openPartedTray(workbench);
    // The seam between floor and front is taken away, and both are parted by a line over them.
    workbench.run(removeSeamEdges([[0, 1]]));
    workbench.run(
      drawPaths([
        {
          points: [
            { face: 0, bary: [0, 0.5, 0.5, 0] },
            { face: 0, bary: [0.5, 0, 0, 0.5] },
          ],
          kind: 'butt',
        },
      ]),
    );
    await shown(workbench);
    const { pieces, sculpt } = workbench.bench;
    if (pieces === null || sculpt === null) throw new Error('nothing on the bench');
    const both = pieces.pieces.filter(({ patch }) =>
      [...pieces.patches[patch].meshTriangles].some((t) => sculpt.faceOfTriangle[t] === 0),
    );
    expect(both).toHaveLength(2);
    // One has the front as well; the other has nothing but its part of the floor.
    expect(both.map((piece) => facesOfPiece(workbench.bench, piece)).sort((p, q) => p[0] - q[0])).toEqual([[0], [1]]);
  });
});
