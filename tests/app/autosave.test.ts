import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Autosave, type SaveState } from '../../src/app/autosave.ts';
import { newProject } from '../../src/project/new-project.ts';
import { MemoryStorage } from '../support/memory-storage.ts';

const SOURCE = { hash: 'a'.repeat(64), fileName: 'tray.obj', bytes: new Uint8Array([1, 2]) };
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
    for (const name of ['one', 'two', 'three']) autosave.later(project(name));
    await vi.advanceTimersByTimeAsync(300);
    expect(storage.saves.map(({ name }) => name)).toEqual(['three']);
    expect(states).toEqual(['saving', 'saved']);
  });

  it('writes at once when the window is hidden', async () => {
    const { storage, autosave } = make();
    autosave.later(project('hidden'));
    await autosave.flush();
    expect(storage.saves).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(storage.saves).toHaveLength(1);
  });

  it('hands a source over with the first write only', async () => {
    const { storage, autosave } = make();
    const save = vi.spyOn(storage, 'save');
    autosave.addSource(SOURCE);
    autosave.later(project('one'));
    await autosave.flush();
    autosave.later(project('two'));
    await autosave.flush();
    expect(save.mock.calls.map(([, fresh]) => fresh.length)).toEqual([1, 0]);
  });

  it('stays refused after the first refusal', async () => {
    const { storage, states, autosave } = make();
    storage.isRefusing = true;
    autosave.later(project('lost'));
    await autosave.flush();
    autosave.later(project('lost too'));
    await vi.advanceTimersByTimeAsync(1000);
    expect(states).toEqual(['saving', 'refused']);
  });
});
