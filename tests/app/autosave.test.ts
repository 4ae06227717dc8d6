import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Autosave, type SaveState } from '../../src/app/autosave.ts';
import { NO_NOTE } from '../../src/app/files/kept-job.ts';
import { newProject } from '../../src/project/new-project.ts';
import { MemoryStorage } from '../support/memory-storage.ts';

const SOURCE = { hash: 'a'.repeat(64), fileName: 'tray.obj', bytes: new Uint8Array([1, 2]) };
const NOTE = { ...NO_NOTE, job: 'tray' };
const project = (name: string) => newProject(name, { hash: SOURCE.hash, fileName: SOURCE.fileName, format: 'obj' });

describe('saving on each change', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  function make() {
    const storage = new MemoryStorage();
    const states: SaveState[] = [];
    return { storage, states, autosave: new Autosave(storage, (state) => states.push(state)) };
  }

  it('writes a burst of changes once, within 300 ms, the newest one', async () => {
    const { storage, states, autosave } = make();
    for (const name of ['one', 'two', 'three']) autosave.later(project(name), NOTE);
    await vi.advanceTimersByTimeAsync(300);
    expect(storage.saves.map(({ name }) => name)).toEqual(['three']);
    expect(states).toEqual(['saving', 'saved']);
  });

  it('writes at once when the window is hidden', async () => {
    const { storage, autosave } = make();
    autosave.later(project('hidden'), NOTE);
    await autosave.flush();
    expect(storage.saves).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(storage.saves).toHaveLength(1);
  });

  it('hands a source over with the first write only', async () => {
    const { storage, autosave } = make();
    const save = vi.spyOn(storage, 'save');
    autosave.addSource(SOURCE);
    autosave.later(project('one'), NOTE);
    await autosave.flush();
    autosave.later(project('two'), NOTE);
    await autosave.flush();
    expect(save.mock.calls.map(([, fresh]) => fresh.length)).toEqual([1, 0]);
  });

  it('stays refused after the first refusal', async () => {
    const { storage, states, autosave } = make();
    storage.isRefusing = true;
    autosave.later(project('lost'), NOTE);
    await autosave.flush();
    autosave.later(project('lost too'), NOTE);
    await vi.advanceTimersByTimeAsync(1000);
    expect(states).toEqual(['saving', 'refused']);
  });

  it('keeps the newest with its source as soon as there is room again', async () => {
    const { storage, states, autosave } = make();
    storage.refusal = new DOMException('', 'QuotaExceededError');
    autosave.addSource(SOURCE);
    autosave.later(project('one'), NOTE);
    await autosave.flush();
    expect(autosave.refusal).toBe('full');
    storage.refusal = null;
    autosave.later(project('two'), NOTE);
    await autosave.flush();
    expect(storage.saves.map(({ name }) => name)).toEqual(['two']);
    expect([...storage.sources.keys()]).toEqual([SOURCE.hash]);
    expect(states).toEqual(['saving', 'refused', 'saved']);
  });

  it('writes what waits of one job before it waits for another', async () => {
    const { storage, autosave } = make();
    autosave.later(project('helm'), { ...NO_NOTE, job: 'helm' });
    autosave.later(project('tray'), NOTE);
    await autosave.flush();
    expect(storage.saves.map(({ name }) => name)).toEqual(['helm', 'tray']);
  });
});
