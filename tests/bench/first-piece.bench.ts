// How soon the first flat piece is on its way to the window: npm run bench:first-piece
// The sample helm split to 3,800 and 8,600 triangles, behind the calls of the worker, in one thread. Told: from the call to the first
// flat piece, to a shape of every piece, and to the end, in ms and as they would be on a machine on which the loop of `calibration.ts` takes
// its usual time; how often shapes were sent; and what came out, as a sum of areas.
import { contentHash } from '../../src/base/hash.ts';
import { setSeams, setThickness } from '../../src/project/commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';
import { PipelineWorkshop } from '../../src/worker/workshop.ts';
import { slowness } from './calibration.ts';
import { helmModel } from './helm-model.ts';
import { textTable } from './text-table.ts';

const rows: string[][] = [];
for (const parts of [2, 3]) {
  const { obj, seams, triangles } = await helmModel(parts);
  const bytes = new TextEncoder().encode(obj);
  const workshop = new PipelineWorkshop(() => Promise.reject(new Error('no font')));
  await workshop.putSource(bytes, 'helm.obj');
  const fresh = newProject('helm', { hash: await contentHash(bytes), fileName: 'helm.obj', format: 'obj' });
  const marks = { edges: seams, paths: [] };
  const whole: Project = {
    ...fresh,
    parts: [{ ...fresh.parts[0], scale: { by: 'unit', unit: 'mm' }, seams: marks }],
  };
  let have = 0;
  const time = async (what: string, project: Project): Promise<void> => {
    const before = slowness().times;
    const start = performance.now();
    let [first, all, sent] = [NaN, NaN, 0];
    const reply = await workshop.compute(
      project,
      have,
      () => undefined,
      ({ number, pieces }) => {
        sent += 1;
        const flat = pieces?.patches.filter(({ uv }) => uv !== null).length ?? 0;
        if (flat > 0 && Number.isNaN(first)) first = performance.now() - start;
        if (flat === pieces?.patches.length && Number.isNaN(all)) all = performance.now() - start;
        have = number;
        return Promise.resolve(true);
      },
    );
    const end = performance.now() - start;
    if (reply.cancelled) throw new Error('called off');
    have = reply.update.number;
    const slow = (before + slowness().times) / 2;
    const told = (ms: number): string =>
      Number.isNaN(ms) ? 'with the end' : `${ms.toFixed(0)} (${(ms / slow).toFixed(0)})`;
    const area = reply.update.pieces?.pieces.reduce((sum, piece) => sum + piece.areaMm2, 0) ?? 0;
    rows.push([
      String(triangles),
      what,
      told(first),
      told(all),
      told(end),
      String(sent),
      slow.toFixed(1),
      area.toFixed(0),
    ]);
  };
  await time('opened', whole);
  await time('another thickness', setThickness(9).apply(whole));
  const fewer = { ...marks, edges: seams.slice(0, -3) };
  await time('three edges of a seam fewer', setSeams(fewer).apply(setThickness(9).apply(whole)));
}
const head = ['triangles', 'what', 'first piece', 'all shapes', 'end', 'sent', 'slowness', 'area mm2'];
process.stdout.write(`${textTable(head, rows)}\n`);
