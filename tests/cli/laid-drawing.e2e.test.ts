import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { setScale } from '../../src/project/commands.ts';
import { drawPaths } from '../../src/project/path-commands.ts';
import { expectOk } from '../support/expect-ok.ts';
import { SHADE, shadeObj } from '../support/shade-obj.ts';
import { makeWorkbench, openObj, shown } from '../support/tray-workbench.ts';
import { runCli, scratchFiles, scratchFolder } from './run-cli.ts';

it('a job with a drawing laid on it in the window is made from a terminal', async () => {
  const { workbench } = makeWorkbench();
  await openObj(workbench, 'lamp shade', shadeObj());
  workbench.run(setScale({ by: 'unit', unit: 'mm' }));
  await shown(workbench);
  const svg = '<svg width="50mm" height="50mm" viewBox="0 0 50 50"><circle r="20"/></svg>';
  const { strokes } = expectOk(await workbench.workshop.readDrawing(svg));
  const laid = expectOk(
    await workbench.workshop.layDrawing({
      strokes,
      size: 1,
      turnRad: 0,
      shiftMm: [0, 0],
      spot: { corner: 3 * SHADE.sides },
      way: { by: 'round', ups: [[0, 1, 0]] },
    }),
  );
  workbench.run(drawPaths(laid.lines.map(({ points }) => ({ points, kind: 'butt' }))));
  await shown(workbench);
  const file = await workbench.makeFile('project', '2026-01-01');
  const [job] = scratchFiles({ 'job.json': file!.bytes });
  const out = join(scratchFolder(), 'made');
  const { status, stderr } = runCli('make', job, '--out', out);
  expect([status, stderr]).toEqual([0, expect.any(String)]);
  const report = JSON.parse(readFileSync(join(out, 'report.json'), 'utf8')) as { pieces: { areaMm2: number }[] };
  // A disc of 20 mm is cut out of the shade.
  const areas = report.pieces.map(({ areaMm2 }) => areaMm2).sort((a, b) => a - b);
  expect(areas).toHaveLength(2);
  expect(areas[0] / (Math.PI * 400)).toBeCloseTo(1, 1);
});
