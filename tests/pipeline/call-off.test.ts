import { expect, it } from 'vitest';
import { Cancelled, QUIET_WORK, type Work } from '../../src/base/work.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { domeProject } from '../support/dome-project.ts';

/** Counts the pauses of each phase, and calls the job off at one of them. */
class CallOffIn implements Work {
  readonly pauses = new Map<string, number>();
  #phase = '';

  constructor(
    readonly phase = '',
    readonly after = Infinity,
  ) {}

  pause(_done: number, text?: string): undefined {
    this.#phase = text ?? this.#phase;
    const count = (this.pauses.get(this.#phase) ?? 0) + 1;
    this.pauses.set(this.#phase, count);
    if (this.#phase === this.phase && count > this.after) throw new Cancelled();
  }
}

const { project, bytes } = await domeProject(6000);

function freshPipeline(): Pipeline {
  const pipeline = new Pipeline();
  const { hash, fileName } = project.parts[0].source;
  pipeline.putSource(hash, { fileName, bytes });
  return pipeline;
}

const whole = new CallOffIn();
const wanted = reportOf(await freshPipeline().run(project, whole));

it('a run may be called off in the middle of any phase, and what it leaves behind changes nothing of the next', async () => {
  const pipeline = freshPipeline();
  // One pipeline all along: each run goes on with what the one before has left.
  for (const [phase, pauses] of whole.pauses) {
    const work = new CallOffIn(phase, Math.floor(pauses / 2));
    await expect(pipeline.run(project, work), phase).rejects.toThrow(Cancelled);
  }
  expect(reportOf(await pipeline.run(project, QUIET_WORK))).toBe(wanted);
});

it.each([
  'looking the model over',
  'looking for places where it runs through itself',
  'moving to the foam’s neutral surface',
  'parting along the seams',
  'looking for room for the foam',
  'adding edges, marks and words',
  'laying out sheets and pages',
  'working out what springs back',
])('there are pauses while %s', (phase) => {
  expect(whole.pauses.get(phase)).toBeGreaterThan(4);
});
