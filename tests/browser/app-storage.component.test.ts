import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { NO_NOTE, jobKeyOf, type KeepNote } from '../../src/app/files/kept-job.ts';
import { RING } from '../../src/app/files/ring.ts';
import { BrowserStorage, isFull, refusalOf } from '../../src/app/storage.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';

const sourceOf = (letter: string) => ({
  hash: letter.repeat(64),
  fileName: `${letter}.obj`,
  bytes: new TextEncoder().encode(letter),
});
const projectOf = (letter: string, revision = 1): Project => ({
  ...newProject(letter, { hash: letter.repeat(64), fileName: `${letter}.obj`, format: 'obj' }),
  revision,
});
const noteOf = (job: string, more: Partial<KeepNote> = {}): KeepNote => ({ ...NO_NOTE, job, ...more });

/** The database as its first version was. */
const openFirst = (name: string) =>
  openDB(name, 1, {
    upgrade: (db) => {
      for (const store of ['jobs', 'sources', 'wishes']) db.createObjectStore(store);
    },
  });

describe('storage in the browser', () => {
  let storage: BrowserStorage;
  let visits = 0;
  let atMs = Date.UTC(2030, 0, 1);

  beforeEach(() => {
    visits += 1;
    storage = new BrowserStorage(`foamloft-test-${visits}-${performance.now()}`, () => atMs);
  });
  afterEach(() => {
    vi.restoreAllMocks();
  });

  /** States of a job, each after a pause in the work. */
  async function keep(letter: string, revisions: readonly number[]): Promise<void> {
    for (const revision of revisions) {
      atMs += RING.quietMs;
      await storage.save(projectOf(letter, revision), revision === 1 ? [sourceOf(letter)] : [], noteOf(letter));
    }
  }
  const told = async (): Promise<string[]> =>
    (await storage.states()).map(({ job, isNow, id }) => `${job}${isNow ? ' now' : ` ${id.split('\n').length}`}`);

  it('has nothing at first', async () => {
    expect(await storage.load()).toBeNull();
    expect(await storage.states()).toEqual([]);
    expect(await storage.loadWishes()).toBeNull();
  });

  it('gives the last job back with its source, also to another visit', async () => {
    await storage.save(projectOf('a'), [sourceOf('a')]);
    atMs += 1;
    await storage.save(projectOf('b'), [sourceOf('b')], noteOf('b'));
    await storage.save({ ...projectOf('b'), name: 'renamed' }, [], noteOf('b'));
    const again = await new BrowserStorage(storage.name).load();
    expect(again?.project).toEqual({ ...projectOf('b'), name: 'renamed' });
    expect(again?.sources).toEqual([sourceOf('b')]);
  });

  it('keeps other jobs and their sources until they are forgotten', async () => {
    await keep('a', [1, 2]);
    await keep('b', [1]);
    expect(await told()).toEqual(['b now', 'a now', 'a 2']);
    const former = (await storage.states())[1];
    expect((await storage.fetch(former.id))?.sources).toEqual([sourceOf('a')]);
    await storage.forget('a');
    expect(await told()).toEqual(['b now']);
    const db = await openDB(storage.name);
    expect(await db.getAllKeys('sources')).toEqual([sourceOf('b').hash]);
    expect(await db.count('documents')).toBe(1);
    db.close();
  });

  it('keeps a file handle that can be used at the next visit', async () => {
    const folder = await navigator.storage.getDirectory();
    const handle = await folder.getFileHandle('job.foamloft.json', { create: true });
    await storage.save(
      projectOf('a'),
      [sourceOf('a')],
      noteOf('a', { file: { name: handle.name, handle, seenMs: 7 } }),
    );
    const again = await new BrowserStorage(storage.name).load();
    expect(again?.file).toMatchObject({ name: 'job.foamloft.json', seenMs: 7 });
    expect(await handle.isSameEntry(again?.file?.handle as unknown as FileSystemHandle)).toBe(true);
  });

  it('puts a job under another key with all its states', async () => {
    await keep('a', [1, 2]);
    await storage.rename('a', 'z');
    expect(await told()).toEqual(['z now', 'z 2']);
    expect((await storage.load())?.project.revision).toBe(2);
  });

  it('takes over the one job of before', async () => {
    const old = await openFirst(storage.name);
    await old.put('jobs', projectOf('a'), 'last');
    await old.put('sources', sourceOf('a'), sourceOf('a').hash);
    await old.put('wishes', { theme: 'dark' }, 'window');
    old.close();
    const saved = await storage.load();
    expect(saved?.project).toEqual(projectOf('a'));
    expect(saved?.sources).toEqual([sourceOf('a')]);
    expect(saved?.stamp.job).toBe(jobKeyOf(projectOf('a')));
    expect(await storage.loadWishes()).toEqual({ theme: 'dark' });
  });

  it('lets the oldest states go when the disk is full, and keeps the newest', async () => {
    await keep('a', [1, 2, 3, 4, 5]);
    const [, , , , oldest] = await storage.states();
    // Room for as many documents as there are.
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...given) {
      if (this.name === 'documents' && states >= 5) throw new DOMException('full', 'QuotaExceededError');
      return put.apply(this, given);
    });
    let states = 5;
    const remove = IDBObjectStore.prototype.delete;
    vi.spyOn(IDBObjectStore.prototype, 'delete').mockImplementation(function (this: IDBObjectStore, ...given) {
      if (this.name === 'documents') states -= 1;
      return remove.apply(this, given);
    });
    await storage.save(projectOf('a', 6), [], noteOf('a'));
    expect((await storage.load())?.project.revision).toBe(6);
    expect((await storage.states()).map(({ id }) => id)).not.toContain(oldest.id);
  });

  it('refuses as full when no state is left to let go, and leaves what was kept', async () => {
    await keep('a', [1, 2]);
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    expect(isFull(await storage.save(projectOf('a', 3), [], noteOf('a')).catch((error: unknown) => error))).toBe(true);
    vi.restoreAllMocks();
    expect((await storage.load())?.project.revision).toBe(2);
  });

  it('refuses where the database is switched off, and where it never answers', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('private window', 'SecurityError');
    });
    await expect(storage.load()).rejects.toThrow('private window');
    vi.restoreAllMocks();
    vi.useFakeTimers({ toFake: ['setTimeout'] });
    // A window of the first version that does not let go.
    const name = `${storage.name} silent`;
    const held = await openFirst(name);
    const silent = new BrowserStorage(name);
    const answer = expect(silent.load()).rejects.toThrow('does not answer');
    await vi.advanceTimersByTimeAsync(5000);
    await answer;
    vi.useRealTimers();
    held.close();
    expect(await silent.load()).toBeNull(); // it answers now
  });

  it('gives way to a newer version of the window, says so, and keeps nothing from then on', async () => {
    await keep('a', [1]);
    const told = vi.fn();
    storage.onNewer = told;
    // Waits for ever where the older window does not let go.
    const newer = await openDB(storage.name, 3);
    expect(told).toHaveBeenCalledOnce();
    expect(refusalOf(await keep('a', [2]).catch((error: unknown) => error))).toBe('newer');
    expect(await newer.count('documents')).toBe(1);
    newer.close();
  });

  it('keeps wishes', async () => {
    await storage.saveWishes({ theme: 'dark', contrast: 'more', letterKeys: false, picture: 'plain' });
    expect(await storage.loadWishes()).toEqual({
      theme: 'dark',
      contrast: 'more',
      letterKeys: false,
      picture: 'plain',
    });
  });
});
