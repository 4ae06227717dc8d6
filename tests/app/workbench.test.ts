import { beforeEach, describe, expect, it } from 'vitest';
import { Workbench } from '../../src/app/workbench.ts';
import type { EarlyUpdate } from '../../src/model/bench-view.ts';
import { HISTORY_WORDS } from '../../src/app/history/history-words.ts';
import { WORDS } from '../../src/app/words.ts';
import { renameProject, setThickness } from '../../src/project/commands.ts';
import type { ComputeReply, Workshop } from '../../src/worker/workshop-api.ts';
import { TRAY_FOLDS } from '../browser/open-tray.ts';
import { MemoryStorage } from '../support/memory-storage.ts';
import { makeWorkbench, openPartedTray, openTray, shown } from '../support/tray-workbench.ts';

describe('the workbench with the chain behind it', () => {
  let workbench: Workbench;
  let storage: MemoryStorage;

  beforeEach(() => {
    ({ workbench, storage } = makeWorkbench());
  });

  it('shows a sculpt without a size, and stops there', async () => {
    await openTray(workbench);
    expect(workbench.bench.sculpt?.sized).toBe(false);
    expect(workbench.bench.stopped?.step).toBe('size');
    expect(workbench.bench.pieces).toBeNull();
  });

  it('works out pieces and pages as choices are made', async () => {
    await openPartedTray(workbench);
    expect(workbench.part?.seams.edges).toHaveLength(TRAY_FOLDS);
    expect(workbench.bench.pieces?.pieces).toHaveLength(6);
    expect(workbench.bench.paper?.pages.length).toBeGreaterThan(2);
  });

  it('keeps a chosen piece through a new thickness, and lets go of one that is joined away', async () => {
    await openPartedTray(workbench);
    const piece = workbench.bench.pieces!.pieces[2].id;
    workbench.setView({ choice: { kind: 'piece', piece } });
    workbench.run(setThickness(9));
    await shown(workbench);
    expect(workbench.view.choice).toEqual({ kind: 'piece', piece });
    expect(workbench.bench.pieces?.pieces[2].thicknessMm).toBe(9);
    workbench.undo();
    workbench.undo();
    await shown(workbench);
    expect(workbench.part?.seams.edges).toHaveLength(0);
    expect(workbench.view.choice.kind).toBe('nothing');
  });

  it('says what undo and redo did, and says the same thing twice when it happens twice', async () => {
    await openPartedTray(workbench);
    workbench.undo();
    expect(workbench.spoken).toContain(WORDS.spoken.undone('part here'));
    const [, at, count] = /(\d+) of (\d+)/.exec(workbench.spoken) ?? [];
    expect(Number(count) - Number(at)).toBe(1);
    workbench.redo();
    expect(workbench.spoken).toBe(
      `${WORDS.spoken.redone('part here')} ${HISTORY_WORDS.steps.place(Number(count), Number(count))}`,
    );
    workbench.say('once');
    workbench.say('once');
    expect(workbench.spoken).not.toBe('once');
    expect(workbench.spoken.trim()).toBe('once');
  });

  it('goes back to the job before, with its history', async () => {
    await openPartedTray(workbench);
    workbench.run(renameProject('first'));
    await shown(workbench);
    await openTray(workbench);
    expect(workbench.before?.name).toBe('first');
    workbench.goBack();
    await expect.poll(() => workbench.project?.name).toBe('first');
    await shown(workbench);
    expect(workbench.before?.name).toBe('tool tray');
    workbench.undo();
    expect(workbench.project?.name).toBe('tool tray');
    expect(workbench.part?.seams.edges).toHaveLength(TRAY_FOLDS);
  });

  it('saves each change, the source with the first', async () => {
    await openPartedTray(workbench);
    await workbench.autosave.flush();
    expect(storage.saves.at(-1)).toEqual(workbench.project);
    expect([...storage.sources.keys()]).toEqual([workbench.part!.source.hash]);
  });

  it('tells once that nothing can be kept, and goes on', async () => {
    storage.isRefusing = true;
    await openTray(workbench);
    await workbench.autosave.flush();
    expect(workbench.notice?.text).toBe(WORDS.notice.storageRefused);
    workbench.setNotice(null);
    workbench.run(renameProject('still here'));
    await shown(workbench);
    await workbench.autosave.flush();
    expect(workbench.notice).toBeNull();
    expect(workbench.project?.name).toBe('still here');
  });
});

describe('the workbench and slow answers', () => {
  const idle = { number: 1, ...makeWorkbench().workbench.bench, findings: [], stopped: null, madeNew: [] };

  /** A workshop whose computes are answered by hand, in any order. */
  function slowWorkshop(): {
    workshop: Workshop;
    answers: ((reply: ComputeReply) => void)[];
    fail: ((error: Error) => void)[];
    asked: Parameters<Workshop['compute']>[];
  } {
    const real = makeWorkbench().workbench.workshop;
    const answers: ((reply: ComputeReply) => void)[] = [];
    const fail: ((error: Error) => void)[] = [];
    const asked: Parameters<Workshop['compute']>[] = [];
    const workshop = {
      putSource: real.putSource.bind(real),
      getSource: real.getSource.bind(real),
      compute: (...given: Parameters<Workshop['compute']>) =>
        new Promise<ComputeReply>((resolve, reject) => {
          asked.push(given);
          answers.push(resolve);
          fail.push(reject);
        }),
      cancel: () => Promise.resolve(),
    } as unknown as Workshop;
    return { workshop, answers, fail, asked };
  }

  async function begin() {
    const slow = slowWorkshop();
    const workbench = new Workbench(slow.workshop, new MemoryStorage());
    void openTray(workbench);
    await expect.poll(() => slow.answers.length).toBe(1);
    return { ...slow, workbench };
  }

  it('drops the answer to an older document', async () => {
    const { workbench, answers } = await begin();
    workbench.run(renameProject('newer'));
    answers[0]({
      cancelled: false,
      update: { ...idle, findings: [{ code: 'old/one', severity: 'note', text: '', where: {} }] },
    });
    await Promise.resolve();
    expect(workbench.bench.findings).toEqual([]);
    expect(workbench.isStale).toBe(true);
    answers[1]({
      cancelled: false,
      update: { ...idle, findings: [{ code: 'new/one', severity: 'note', text: '', where: {} }] },
    });
    await expect.poll(() => workbench.isStale).toBe(false);
    expect(workbench.bench.findings.map(({ code }) => code)).toEqual(['new/one']);
  });

  it('shows shapes sent ahead as unfinished, and takes none for an older document', async () => {
    const { workbench, answers, asked } = await begin();
    const pieces = {
      isFinal: false,
      benchPatches: 0,
      sheet: 1,
      patches: [],
      pieces: [],
      seams: [],
      templates: [],
      cutOffers: [],
    } as const;
    const early: EarlyUpdate = { number: 1, pieces: { ...pieces, patchOfTriangle: new Int32Array(0) } };
    const [, have, onProgress, onEarly] = asked[0];
    expect(have).toBe(0);
    expect(await onEarly!(early)).toBe(true);
    expect(workbench.bench.pieces).toBe(early.pieces);
    expect(workbench.bench.update).toBe(1);
    expect(workbench.isStale).toBe(true);
    onProgress({ done: 0.5, text: 'laying' });
    expect(workbench.progress?.text).toBe(WORDS.settling('laying'));
    workbench.run(renameProject('newer'));
    expect(asked[1][1]).toBe(1);
    expect(await onEarly!({ number: 2, pieces: null })).toBe(false);
    expect(workbench.bench.pieces).toBe(early.pieces);
    answers[1]({ cancelled: false, update: { ...idle, number: 3 } });
    await expect.poll(() => workbench.isStale).toBe(false);
    expect(await asked[1][3]!(early)).toBe(false);
    expect(workbench.bench.update).toBe(3);
  });

  it('offers to go on after work was called off', async () => {
    const { workbench, answers } = await begin();
    answers[0]({ cancelled: true });
    await expect.poll(() => workbench.notice?.text).toBe(WORDS.notice.stopped);
    expect(workbench.progress).toBeNull();
    workbench.notice?.remedy?.run();
    expect(answers).toHaveLength(2);
  });
});
