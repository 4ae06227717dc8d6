import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { StartHand } from '../../src/pipeline/crew-hand.ts';
import type { FromHand } from '../../src/pipeline/crew-messages.ts';
import { HomeCrew } from '../../src/pipeline/flatten-crew.ts';
import { ThreadCrew } from '../../src/pipeline/thread-crew.ts';
import { domeModel } from '../bench/dome-model.ts';
import { cutDome } from '../support/dome-project.ts';
import { expectOk } from '../support/expect-ok.ts';
import { IS_LONG } from '../support/long.ts';
import { CLI, ROOT, scratchFiles, scratchFolder } from './run-cli.ts';

/** Starts the built thread, wherever this file lies. */
const startBuilt: StartHand = (heard, failed) => {
  const thread = new Worker(join(ROOT, 'dist/cli-thread.js'));
  thread.on('message', (message: FromHand) => heard(message));
  thread.on('error', failed);
  return {
    post: (message, transfer) => thread.postMessage(message, transfer),
    end: () => void thread.terminate(),
  };
};

/** Makes a dome of so many triangles by the command line. @returns the threads it had at work. */
function threadsFor(triangles: number): number {
  const dome = domeModel(triangles);
  const [model, seams] = scratchFiles({
    'dome.obj': dome.obj,
    'dome.seams.json': JSON.stringify({ version: 1, edges: dome.seams }),
  });
  const out = join(scratchFolder(), 'out');
  const words = ['make', model, '--seams', seams, '--unit', 'mm', '--out', out];
  const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, ...words], { encoding: 'utf8' });
  expect(stderr).toBe('');
  expect(status).toBe(0);
  expect(stdout).toMatch(/^8 pieces/);
  return (JSON.parse(readFileSync(join(out, 'timings.json'), 'utf8')) as { threads: number }).threads;
}

describe('threads of the command line', () => {
  it('lay patches flat as this thread does, to the last bit', async () => {
    const { mesh, patches } = await cutDome(18_000);
    const crew = new ThreadCrew(startBuilt, 2);
    const tasks = patches.slice(0, 2).map((patch) => ({ patch, positions: mesh.positions, options: {}, wishes: '' }));
    const together = await Promise.all(tasks.map((task) => crew.flatten(task, QUIET_WORK)));
    expect(crew.threads).toBe(2);
    crew.end();
    for (const [i, task] of tasks.entries()) {
      expect(expectOk(together[i])).toEqual(expectOk(await new HomeCrew().flatten(task, QUIET_WORK)));
    }
  });

  it('are not started for a small sculpt', () => expect(threadsFor(1000)).toBe(0));

  it.runIf(IS_LONG)('are started for a large one', () => {
    const cores = availableParallelism();
    expect(threadsFor(210_000)).toBe(cores < 2 ? 0 : Math.min(8, cores));
  });
});
