import { describe, expect, it } from 'vitest';
import type { Result } from '../../src/base/result.ts';
import type { Work } from '../../src/base/work.ts';
import type { EarlyUpdate } from '../../src/model/bench-view.ts';
import type { FlatPiece } from '../../src/model/flat-piece.ts';
import { HomeCrew, type FlattenCrew, type FlattenTask } from '../../src/pipeline/flatten-crew.ts';
import { setScale, setSeams, setThickness } from '../../src/project/commands.ts';
import type { Project } from '../../src/project/project.ts';
import { PipelineWorkshop } from '../../src/worker/workshop.ts';
import { expectOk } from '../support/expect-ok.ts';
import { madeSample, sampleProject, testFont } from '../support/run-sample.ts';
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
    const { workshop, project } = await workshopWith('shoulder-plate');
    const other = setScale({ by: 'size', axis: 'longest', mm: 150 }).apply(project);
    let file: ReturnType<typeof workshop.makeFile> | undefined;
    const reply = await workshop.compute(crossed(project), 0, ({ text }) => {
      if (text.includes('flat')) file ??= workshop.makeFile('report', crossed(other), '2026-01-01');
    });
    expect(file).toBeDefined();
    expect(expectOk(await file!).name).toBe('report.json');
    const { outcome } = await madeSample('shoulder-plate');
    expect(reply.cancelled === false && reply.update.pieces?.pieces).toHaveLength(outcome.pieces?.length ?? 0);
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

describe('shapes sent ahead', () => {
  /** Pieces that are never laid flat before the test says so, so that there is time to look. */
  async function slowWorkshop(crew: SlowCrew) {
    const { project, pipeline } = await sampleProject('shoulder-plate');
    const workshop = new PipelineWorkshop(() => Promise.reject(new Error('no font')), crew);
    const { hash, fileName } = project.parts[0].source;
    expectOk(await workshop.putSource(pipeline.sourceOf(hash)!.bytes, fileName));
    return { workshop, project };
  }

  it('show pieces that are done while others are not, and the reply holds what the screen does not have', async () => {
    const crew = new SlowCrew();
    const { workshop, project } = await slowWorkshop(crew);
    const early: EarlyUpdate[] = [];
    const result = workshop.compute(
      crossed(project),
      0,
      () => undefined,
      (update) => {
        early.push(update);
        return Promise.resolve(true);
      },
    );
    await crew.release(1);
    await expect.poll(() => early.length).toBe(1);
    const [{ sculpt, shell, seams, pieces }] = early;
    expect([sculpt, shell, seams].every((part) => part != null)).toBe(true);
    expect(pieces!.isFinal).toBe(false);
    expect(pieces!.pieces).toHaveLength(1);
    const [shown] = pieces!.pieces;
    expect(pieces!.patches[shown.patch].isFinal).toBe(true);
    expect(pieces!.patches.filter(({ uv }) => uv !== null)).toHaveLength(1);
    await crew.release(Infinity);
    const reply = await result;
    if (reply.cancelled) throw new Error('called off');
    const { update } = reply;
    expect(update.number).toBe(early.at(-1)!.number + 1);
    expect(update.pieces?.isFinal).toBe(true);
    expect(update.pieces?.patches.every(({ isFinal }) => isFinal)).toBe(true);
    expect('sculpt' in update || 'shell' in update || 'seams' in update).toBe(false);
    expect(update.paper).not.toBeNull();
  });

  it('are sent again with the reply to a screen that did not take them', async () => {
    const crew = new SlowCrew();
    const { workshop, project } = await slowWorkshop(crew);
    let sent = 0;
    const result = workshop.compute(
      crossed(project),
      0,
      () => undefined,
      () => {
        sent += 1;
        return Promise.resolve(false);
      },
    );
    await crew.release(1);
    await expect.poll(() => sent).toBe(1);
    await crew.release(Infinity);
    const reply = await result;
    expect(reply.cancelled === false && reply.update.sculpt).toBeTruthy();
  });
});

/** Lays patches flat only when it is told to. */
class SlowCrew implements FlattenCrew {
  readonly #home = new HomeCrew();
  #waiting: (() => void)[] = [];
  #free = 0;

  async flatten(task: FlattenTask, work: Work): Promise<Result<FlatPiece>> {
    if (this.#free > 0) this.#free -= 1;
    else await new Promise<void>((resolve) => this.#waiting.push(resolve));
    return await this.#home.flatten(task, work);
  }

  /** Lets so many go, those that wait first. */
  async release(count: number): Promise<void> {
    await expect.poll(() => this.#waiting.length).toBeGreaterThan(0);
    const gone = this.#waiting.splice(0, count);
    for (const go of gone) go();
    this.#free = count - gone.length;
  }
}

describe('the workshop', () => {
  it('answers a run called off by a newer one, and the newer one stands', async () => {
    const { workshop, project } = await workshopWith('shoulder-plate');
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
