import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { HomeCrew } from '../../src/pipeline/flatten-crew.ts';
import { ThreadCrew } from '../../src/pipeline/thread-crew.ts';
import { handsOfBrowser, startBrowserHand } from '../../src/worker/browser-hands.ts';
import { connectWorkshop } from '../../src/worker/client.ts';
import type { ComputeReply } from '../../src/worker/workshop-api.ts';
import { cutDome, domeProject } from '../support/dome-project.ts';
import { expectOk } from '../support/expect-ok.ts';

const TRIANGLES = 18_000;

describe('workers of the browser', () => {
  it('are two to eight', () => {
    expect(handsOfBrowser()).toBeGreaterThanOrEqual(2);
    expect(handsOfBrowser()).toBeLessThanOrEqual(8);
  });

  it('lay patches flat as the page itself does, to the last bit', async () => {
    const { mesh, patches } = await cutDome(TRIANGLES);
    const tasks = patches
      .slice(0, 3)
      .map((patch) => ({ patch, positions: mesh.positions, options: { seamPrice: 300 }, wishes: '' }));
    const crew = new ThreadCrew(startBrowserHand, 2);
    const together = await Promise.all(tasks.map((task) => crew.flatten(task, QUIET_WORK)));
    expect(crew.threads).toBe(2);
    crew.end();
    for (const [i, task] of tasks.entries()) {
      expect(expectOk(together[i])).toEqual(expectOk(await new HomeCrew().flatten(task, QUIET_WORK)));
    }
  });
});

describe('the pipeline’s worker', () => {
  it('answers a cancel while patches are laid flat, and goes on afterwards', async () => {
    const { project, bytes } = await domeProject(TRIANGLES);
    const workshop = connectWorkshop();
    expectOk(await workshop.putSource(bytes, 'dome.obj'));
    let first = Promise.resolve<ComputeReply>({ cancelled: true });
    await new Promise<void>((resolve) => {
      first = workshop.compute(project, 0, ({ text }) => {
        if (text.includes('flat')) resolve();
      });
    });
    await workshop.cancel();
    expect((await first).cancelled).toBe(true);
    const second = await workshop.compute(project, 0, () => undefined);
    expect(second.cancelled === false && second.update.pieces?.pieces).toHaveLength(8);
  });
});
