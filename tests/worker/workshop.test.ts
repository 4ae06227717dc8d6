import { describe, expect, it } from 'vitest';
import { setScale, setSeams, setThickness } from '../../src/project/commands.ts';
import type { Project } from '../../src/project/project.ts';
import { PipelineWorkshop } from '../../src/worker/workshop.ts';
import { expectOk } from '../support/expect-ok.ts';
import { sampleProject, testFont } from '../support/run-sample.ts';
import { makeWorkbench, openPartedTray, openTray, shown } from '../support/tray-workbench.ts';

/** What crosses to the worker arrives as new objects. */
const crossed = (project: Project): Project => structuredClone(project);

async function workshopWith(sample: string): Promise<{ workshop: PipelineWorkshop; project: Project }> {
  const { project, pipeline } = await sampleProject(sample);
  const workshop = new PipelineWorkshop(() => Promise.resolve(testFont()));
  const { hash, fileName } = project.parts[0].source;
  expectOk(await workshop.putSource(pipeline.sourceOf(hash)!.bytes, fileName));
  return { workshop, project };
}

describe('a file asked for while the bench is being worked out', () => {
  it('waits for its turn: neither disturbs the other', async () => {
    const { workshop, project } = await workshopWith('helm');
    const other = setScale({ by: 'unit', unit: 'cm' }).apply(project);
    let file: ReturnType<typeof workshop.makeFile> | undefined;
    const reply = await workshop.compute(crossed(project), 0, ({ text }) => {
      if (text.includes('flat')) file ??= workshop.makeFile('report', crossed(other), '2026-01-01');
    });
    expect(file).toBeDefined();
    expect(expectOk(await file!).name).toBe('report.json');
    expect(reply.cancelled === false && reply.update.pieces?.pieces).toHaveLength(12);
  });
});

describe('what the screen has been sent', () => {
  it('is sent again to a screen that was emptied: the job in hand opened once more', async () => {
    const { workbench } = makeWorkbench();
    await openPartedTray(workbench);
    const { project } = workbench;
    workbench.adopt(structuredClone(project!), []);
    await shown(workbench);
    expect(workbench.bench.sculpt).not.toBeNull();
    expect(workbench.bench.pieces?.pieces).toHaveLength(6);
    expect(workbench.bench.paper).not.toBeNull();
  });

  it('is sent again when a reply came too late to be shown', async () => {
    const { workbench } = makeWorkbench();
    await openTray(workbench);
    // The reply to the size is on its way when the next change is asked for, and so is dropped.
    const { workshop } = workbench;
    const compute = workshop.compute.bind(workshop);
    let isLate = true;
    workshop.compute = async (...given: Parameters<typeof compute>) => {
      const reply = await compute(...given);
      if (isLate) {
        isLate = false;
        workbench.run(setThickness(9));
      }
      return reply;
    };
    workbench.run(setScale({ by: 'unit', unit: 'cm' }));
    await shown(workbench);
    expect(workbench.bench.sculpt?.sized).toBe(true);
    expect(workbench.bench.shell?.thicknessMm).toBe(9);
  });
});

describe('the workshop', () => {
  it('answers a run called off by a newer one, and the newer one stands', async () => {
    const { workshop, project } = await workshopWith('helm');
    const first = workshop.compute(crossed(project), 0, () => undefined);
    const second = workshop.compute(crossed(setSeams({ edges: [], paths: [] }).apply(project)), 0, () => undefined);
    const [one, two] = await Promise.all([first, second]);
    expect(one.cancelled).toBe(true);
    expect(two.cancelled).toBe(false);
  });

  it('remembers by value what crossed as new objects', async () => {
    const { workshop, project } = await workshopWith('maul-head');
    await workshop.compute(crossed(project), 0, () => undefined);
    const reply = await workshop.compute(crossed(project), 0, () => undefined);
    expect(reply.cancelled === false && reply.update.madeNew).toEqual([]);
  });

  it('refuses a file that is no sculpt with a sentence', async () => {
    const workshop = new PipelineWorkshop(() => Promise.reject(new Error('no font')));
    const put = await workshop.putSource(new Uint8Array([0x89, 0x50, 0x4e, 0x47]), 'x.obj');
    expect(put.ok).toBe(false);
  });
});
