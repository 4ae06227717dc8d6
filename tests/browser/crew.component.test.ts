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
    /** Calls it off while it is laid flat. */
    const calledOff = async (thicknessMm: number): Promise<boolean> => {
      const [part] = project.parts;
      const layers = part.layers.map((layer) => ({ ...layer, thicknessMm }));
      let reply = Promise.resolve<ComputeReply>({ cancelled: true });
      await new Promise<void>((resolve) => {
        reply = workshop.compute({ ...project, parts: [{ ...part, layers }] }, 0, ({ text }) => {
          if (text.includes('flat')) resolve();
        });
      });
      await workshop.cancel();
      return (await reply).cancelled;
    };
    // On a machine that is busy with others the page may hear of it when all is done: then it is tried with another thickness.
    let [isCalledOff, tries] = [false, 0];
    while (!isCalledOff && tries < 20) isCalledOff = await calledOff(4 + (tries += 1) / 4);
    expect(isCalledOff).toBe(true);
    const second = await workshop.compute(project, 0, () => undefined);
    expect(second.cancelled === false && second.update.pieces?.pieces).toHaveLength(8);
  });
});
