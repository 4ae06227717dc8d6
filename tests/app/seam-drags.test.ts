import { beforeEach, describe, expect, it } from 'vitest';
import { DartDrag } from '../../src/app/dart-drag.ts';
import { PathDrag } from '../../src/app/path-drag.ts';
import { SeamDrag } from '../../src/app/seam-drag.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { addSeamEdges, setScale } from '../../src/project/commands.ts';
import { drawPaths } from '../../src/project/path-commands.ts';
import { expectOk } from '../support/expect-ok.ts';
import { SHADE, shadeObj } from '../support/shade-obj.ts';
import { makeWorkbench, openObj, shown } from '../support/tray-workbench.ts';

const { sides, rings, radiusMm } = SHADE;
const corner = (ring: number, side: number): number => ring * sides + side;

let bench: Workbench;

beforeEach(async () => {
  ({ workbench: bench } = makeWorkbench());
  await openObj(bench, 'lamp shade', shadeObj());
  bench.run(setScale({ by: 'unit', unit: 'mm' }));
  const upright = Array.from({ length: rings }, (_, ring) => [corner(ring, 0), corner(ring + 1, 0)] as const);
  bench.run(addSeamEdges(upright));
  await shown(bench);
});

/** All that was begun has come to its end. */
const rested = async (drag: { there(): Promise<void> }): Promise<void> => {
  await drag.there();
  await shown(bench);
};

describe('what is undone while it is dragged', () => {
  it('is not moved on: a seam along edges', async () => {
    const drag = new SeamDrag(bench);
    const chain = bench.bench.seams!.chains.findIndex(({ kind }) => kind !== 'open');
    expect(drag.grab({ kind: 'edge', onSculpt: true, seam: chain, vertex: corner(3, 0) })).toBe(true);
    const { seams } = bench.part!;
    drag.drag({ kind: 'surface', onSculpt: true, vertex: corner(3, 1) });
    await rested(drag);
    expect(bench.part!.seams).not.toEqual(seams);
    drag.drag({ kind: 'surface', onSculpt: true, vertex: corner(3, 2) });
    bench.undo();
    await rested(drag);
    expect(bench.part!.seams).toEqual(seams);
    expect([drag.isHeld, bench.history!.canRedo]).toEqual([false, true]);
  });

  it('is not moved on: a seam across faces', async () => {
    const plane = { by: 'plane', point: [0, 50, 0], normal: [0, 1, 0] } as const;
    const [{ points }] = expectOk(await bench.workshop.drawAcross(plane));
    bench.run(drawPaths([{ points, kind: 'butt' }]));
    await shown(bench);
    const drag = new PathDrag(bench);
    expect(drag.hold(0, [0, 50, radiusMm])).toBe(true);
    drag.drag({ onSculpt: true, point: [0, 60, radiusMm] });
    await rested(drag);
    expect(bench.part!.seams.paths[0].points).not.toEqual(points);
    drag.push([0, 5, 0]);
    bench.undo();
    await rested(drag);
    expect(bench.part!.seams.paths[0].points).toEqual(points);
    expect(drag.isHeld).toBe(false);
  });

  it('is not pulled on: a dart', async () => {
    bench.setView({ tool: 'dart' });
    const drag = new DartDrag(bench);
    const { edges } = bench.part!.seams;
    expect(drag.grab({ kind: 'surface', onSculpt: true, vertex: corner(rings, 4) })).toBe(true);
    drag.drag({ kind: 'surface', onSculpt: true, vertex: corner(rings - 1, 4) });
    await rested(drag);
    expect(bench.part!.seams.edges).toHaveLength(edges.length + 1);
    drag.drag({ kind: 'surface', onSculpt: true, vertex: corner(rings - 2, 4) });
    bench.undo();
    await rested(drag);
    expect(bench.part!.seams.edges).toEqual(edges);
    expect(bench.view.dart).toBeNull();
  });
});
