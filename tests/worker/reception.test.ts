import { describe, expect, it } from 'vitest';
import { mergeEarly, mergeUpdate, EMPTY_BENCH, type Bench } from '../../src/app/bench-state.ts';
import type { EarlyUpdate } from '../../src/model/bench-view.ts';
import { setScale } from '../../src/project/commands.ts';
import type { Project } from '../../src/project/project.ts';
import { receptionOf } from '../../src/worker/reception.ts';
import type { ComputeReply } from '../../src/worker/workshop-api.ts';
import { PipelineWorkshop } from '../../src/worker/workshop.ts';
import { expectOk } from '../support/expect-ok.ts';
import { sampleProject } from '../support/run-sample.ts';

const newWorkshop = (): PipelineWorkshop => new PipelineWorkshop(() => Promise.reject(new Error('no font')));

/** A reception with the maul head put into it, and what happens, in order. */
async function receptionWith(load: () => Promise<PipelineWorkshop> = () => Promise.resolve(newWorkshop())) {
  const { project, pipeline } = await sampleProject('maul-head');
  const told: string[] = [];
  const reception = receptionOf(() => {
    told.push('loading');
    return load();
  });
  const { hash, fileName } = project.parts[0].source;
  const put = expectOk(await reception.putSource(pipeline.sourceOf(hash)!.bytes, fileName));
  expect(put).toEqual({ hash, format: 'obj' });
  let bench: Bench = EMPTY_BENCH;
  const compute = async (of: Project): Promise<ComputeReply> => {
    const reply = await reception.compute(
      of,
      bench.update,
      () => undefined,
      (early: EarlyUpdate) => {
        told.push(`seen ${Object.keys(early).sort().join(' ')}`);
        bench = mergeEarly(bench, early);
        return Promise.resolve(true);
      },
    );
    if (!reply.cancelled) {
      told.push(`done ${reply.update.sculpt === undefined ? 'without' : 'with'} a sculpt`);
      bench = mergeUpdate(bench, reply.update);
    }
    return reply;
  };
  return { project, reception, told, compute, bench: () => bench };
}

describe('a worker that has loaded next to nothing', () => {
  it('shows the sculpt before it loads what works on it, and does not send it again', async () => {
    const { project, told, compute, bench } = await receptionWith();
    await compute(structuredClone(project));
    expect(told.slice(0, 2)).toEqual(['seen number sculpt', 'loading']);
    expect(told.slice(2).filter((what) => what.includes('sculpt'))).toEqual(['done without a sculpt']);
    const { sculpt, pieces, paper } = bench();
    expect(sculpt?.bvh?.roots).toHaveLength(1);
    expect(pieces?.pieces.length).toBeGreaterThan(0);
    expect(paper).not.toBeNull();
  });

  it('sends the sculpt again when it came out otherwise than it looked at first', async () => {
    const { project, compute, bench } = await receptionWith();
    const twice = setScale({ by: 'size', axis: 'longest', mm: 100 }).apply(project);
    const first = compute(structuredClone(project));
    // Changed while the workshop is on its way.
    const second = compute(structuredClone(twice));
    expect(await first).toEqual({ cancelled: true });
    await second;
    const { positions, bvh } = bench().sculpt!;
    expect(Math.max(...positions) - Math.min(...positions)).toBeLessThan(150);
    expect(bvh?.roots).toHaveLength(1);
  });

  it('is called off while it loads', async () => {
    const { project, reception, compute } = await receptionWith();
    const running = compute(structuredClone(project));
    await reception.cancel();
    expect(await running).toEqual({ cancelled: true });
  });

  it('asks again for what could not be loaded', async () => {
    let isOut = true;
    const { project, told, compute } = await receptionWith(() =>
      isOut ? Promise.reject(new Error('offline')) : Promise.resolve(newWorkshop()),
    );
    await expect(compute(structuredClone(project))).rejects.toThrow('offline');
    isOut = false;
    await compute(structuredClone(project));
    expect(told.filter((what) => what === 'loading')).toHaveLength(2);
    expect(told.at(-1)).toMatch(/^done/);
  });
});
