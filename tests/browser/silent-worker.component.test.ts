import { expect, it } from 'vitest';
import { tellSilence } from '../../src/app/silent-workshop.ts';
import { openFile } from '../../src/app/opening.ts';
import { Workbench } from '../../src/app/workbench.ts';
import { WORDS } from '../../src/app/words.ts';
import { setScale, setThickness } from '../../src/project/commands.ts';
import { connectWorkshop } from '../../src/worker/client.ts';
import { MemoryStorage } from '../support/memory-storage.ts';
import { TRAY_OBJ } from './open-tray.ts';

/** Told after 200 ms, so that nobody waits. */
const TIMES = { turnMs: 50, turns: 4 };

/** A window on a tray with a worker that can be made ill. */
async function sickWindow() {
  const workers: Worker[] = [];
  const workshop = connectWorkshop({
    start: () => {
      const worker = new Worker(new URL('./sick-worker.ts', import.meta.url), { type: 'module' });
      workers.push(worker);
      return worker;
    },
    times: TIMES,
    onSilent: (isSilent) => tellSilence(bench, isSilent, () => workshop.restart()),
  });
  const bench: Workbench = new Workbench(workshop, new MemoryStorage());
  await openFile(bench, new File([TRAY_OBJ], 'tray.obj'));
  bench.run(setScale({ by: 'unit', unit: 'cm' }));
  await expect.poll(() => bench.isStale).toBe(false);
  const thickness = (): number | undefined => bench.bench.pieces?.pieces[0]?.thicknessMm;
  return { workers, bench, thickness };
}

it.each(['for ever', 'end'])(
  'a worker that goes silent (%s) is told of, and begun afresh with all it had',
  async (how) => {
    const { workers, bench, thickness } = await sickWindow();
    workers[0].postMessage(how);
    bench.run(setThickness(4));
    await expect.poll(() => bench.notice?.text).toBe(WORDS.notice.silent);
    expect(bench.notice?.remedy?.label).toBe(WORDS.notice.afresh);
    expect(bench.part?.layers[0].thicknessMm).toBe(4);
    bench.notice?.remedy?.run();
    await expect.poll(() => [bench.isStale, thickness()]).toEqual([false, 4]);
    expect(workers).toHaveLength(2);
    expect(bench.notice).toBeNull();
    // And it goes on as ever.
    bench.run(setThickness(5));
    await expect.poll(() => [bench.isStale, thickness()]).toEqual([false, 5]);
  },
);

it('a worker that only takes long is told of until it is heard again', async () => {
  const { workers, bench, thickness } = await sickWindow();
  const told: (string | undefined)[] = [];
  bench.addEventListener('change', () => told.push(bench.notice?.text));
  workers[0].postMessage('a while');
  bench.run(setThickness(4));
  await expect.poll(() => [bench.isStale, thickness()]).toEqual([false, 4]);
  expect(told).toContain(WORDS.notice.silent);
  await expect.poll(() => bench.notice).toBeNull();
  expect(workers).toHaveLength(1);
});

it('a worker that cannot be started is told of, and tried again', async () => {
  let isBroken = true;
  const workshop = connectWorkshop({
    start: () =>
      new Worker(new URL(isBroken ? '/no-such-worker.js' : '../../src/worker/worker.ts', import.meta.url), {
        type: 'module',
      }),
    times: TIMES,
  });
  await expect(workshop.putSource(new TextEncoder().encode(TRAY_OBJ), 'tray.obj')).rejects.toThrow();
  isBroken = false;
  expect((await workshop.putSource(new TextEncoder().encode(TRAY_OBJ), 'tray.obj')).ok).toBe(true);
});
