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

  it('writes each gesture at once, however soon the next one follows', async () => {
    const { storage, autosave } = make();
    for (const name of ['one', 'two', 'three']) {
      autosave.later(project(name), NOTE);
      await vi.advanceTimersByTimeAsync(20);
    }
    expect(storage.saves.map(({ name }) => name)).toEqual(['one', 'two', 'three']);
  });

  it('writes what goes on for long while it lasts, and not at each of its steps', async () => {
    const { storage, autosave } = make();
    for (let i = 0; i < 100; i += 1) {
      autosave.later(project(`step ${i}`), NOTE, true);
      await vi.advanceTimersByTimeAsync(16);
    }
    const { length } = storage.saves;
    expect(length).toBeGreaterThan(5);
    expect(length).toBeLessThan(10);
    await vi.advanceTimersByTimeAsync(300);
    expect(storage.saves.at(-1)?.name).toBe('step 99');
  });

  it('does not wait with another gesture for one that goes on', async () => {
    const { storage, autosave } = make();
    autosave.later(project('a drag'), NOTE, true);
    autosave.later(project('a click'), NOTE);
    await vi.advanceTimersByTimeAsync(1);
    expect(storage.saves.map(({ name }) => name)).toEqual(['a click']);
  });

  it('writes the newest alone of what came while one was written', async () => {
    const { storage, autosave } = make();
    let go = (): void => undefined;
    const save = storage.save.bind(storage);
    vi.spyOn(storage, 'save').mockImplementationOnce(async (...all) => {
      await new Promise<void>((resolve) => (go = resolve));
      await save(...all);
    });
    for (const name of ['one', 'two', 'three', 'four']) {
      autosave.later(project(name), NOTE);
      await vi.advanceTimersByTimeAsync(5);
    }
    go();
    await autosave.flush();
    expect(storage.saves.map(({ name }) => name)).toEqual(['one', 'four']);
    expect(autosave.state).toBe('saved');
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
