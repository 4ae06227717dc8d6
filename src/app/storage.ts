import type { Project } from '../project/project.ts';
import { neededSources, sourcesOfProject } from '../project/sources.ts';
import { jobKeyOf, NO_NOTE, planKeeping, type JobFile, type KeepNote, type KeptStamp } from './files/kept-job.ts';
import { oldestFirst } from './files/ring.ts';
import { openShelves, type OpenShelves } from './files/shelves.ts';
import type { Wishes } from './view-state.ts';

/** A job as it is kept in this browser between visits. */
export interface SavedJob {
  readonly project: Project;
  readonly sources: readonly SavedSource[];
  readonly stamp: KeptStamp;
  readonly file: JobFile | null;
}

export interface SavedSource {
  readonly hash: string;
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

/** Where the window keeps jobs, their earlier states and the maker's wishes. Every call may reject: private windows and full disks refuse. */
export interface Storage {
  /** The job worked on last; null where there is none. */
  load(): Promise<SavedJob | null>;
  /** Saves the document with those of its sources that were not saved before. What no kept state needs is let go. */
  save(project: Project, fresh: readonly SavedSource[], note?: KeepNote): Promise<void>;
  /** All states that are kept, the newest first. */
  states(): Promise<readonly KeptStamp[]>;
  /** A kept state; null where it is gone, or a file it needs. */
  fetch(id: string): Promise<SavedJob | null>;
  /** Lets go of a job with all its states. */
  forget(job: string): Promise<void>;
  /** Puts the states of a job under another key: it was saved to a file. */
  rename(job: string, to: string): Promise<void>;
  loadWishes(): Promise<Wishes | null>;
  saveWishes(wishes: Wishes): Promise<void>;
  /** Called when a newer version of the window, opened beside this one, has taken over what is kept: from then on every call is refused. */
  onNewer: () => void;
}

/** Why nothing is kept: the disk, or the browser's share of it, is full; a newer version of the window has taken over; or the browser keeps nothing. */
export type Refusal = 'full' | 'newer' | 'off';

const REFUSALS: Readonly<Record<string, Refusal>> = { QuotaExceededError: 'full', VersionError: 'newer' };

export const refusalOf = (error: unknown): Refusal =>
  (error instanceof DOMException ? REFUSALS[error.name] : undefined) ?? 'off';

export const isFull = (error: unknown): boolean => refusalOf(error) === 'full';

/** The browser's own database. Opened on first use, so that a refusal is a rejected promise and not a broken start. */
export class BrowserStorage implements Storage {
  onNewer: () => void = () => undefined;
  #opening: Promise<OpenShelves> | null = null;
  /** Files as they were put away last, by their jobs. */
  readonly #files = new Map<string, JobFile | null>();

  constructor(
    readonly name = 'foamloft',
    /** ms since 1970. */
    readonly clock: () => number = Date.now,
  ) {}

  async load(): Promise<SavedJob | null> {
    const newest = (await this.states()).find(({ isNow }) => isNow);
    return newest === undefined ? null : await this.fetch(newest.id);
  }

  async states(): Promise<readonly KeptStamp[]> {
    const stamps = await (await this.#open()).getAll('stamps');
    return stamps.sort((a, b) => b.atMs - a.atMs);
  }

  async fetch(id: string): Promise<SavedJob | null> {
    const db = await this.#open();
    const [stamp, project] = [await db.get('stamps', id), await db.get('documents', id)];
    if (stamp === undefined || project === undefined) return null;
    const found = await Promise.all(sourcesOfProject(project).map(({ hash }) => db.get('sources', hash)));
    const sources = found.filter((source) => source !== undefined);
    if (neededSources(project).some(({ hash }) => !sources.some((source) => source.hash === hash))) return null;
    return { project, sources, stamp, file: (await db.get('files', stamp.job)) ?? null };
  }

  async save(
    project: Project,
    fresh: readonly SavedSource[],
    note: KeepNote = { ...NO_NOTE, job: jobKeyOf(project) },
  ): Promise<void> {
    for (;;) {
      try {
        await this.#save(project, fresh, note);
        break;
      } catch (error) {
        // The oldest states make room for the newest.
        if (!isFull(error) || !(await this.#makeRoom())) throw error;
      }
    }
    await this.#keepFile(note);
  }

  async #save(project: Project, fresh: readonly SavedSource[], note: KeepNote): Promise<void> {
    const db = await this.#open();
    const change = db.transaction(['stamps', 'documents', 'weights', 'sources'], 'readwrite');
    // A transaction that is called off rejects here as well as where it was noticed first.
    change.done.catch(() => undefined);
    const [stamps, documents] = [change.objectStore('stamps'), change.objectStore('documents')];
    const [weights, sources] = [change.objectStore('weights'), change.objectStore('sources')];
    // The fewer answers it waits for, the sooner it is kept: a window that draws hears each only between two pictures.
    const asked: Promise<unknown>[] = fresh.flatMap((source) => [
      sources.put(source, source.hash),
      weights.put(source.bytes.length, source.hash),
    ]);
    const all = await Promise.all([weights.getAllKeys(), weights.getAll(), stamps.getAll(), ...asked]);
    const [hashes, bytes, known] = all;
    const heavy = new Map(hashes.map((hash, i) => [hash, bytes[i]]));
    const plan = planKeeping(known, heavy, project, note, this.clock());
    const former = plan.earlier === null ? undefined : await documents.get(plan.now.id);
    const text = former === undefined ? '' : JSON.stringify(former);
    const isOther = former !== undefined && text !== JSON.stringify(project);
    const earlier = isOther && plan.earlier !== null ? { ...plan.earlier, bytes: text.length } : null;
    const kept = new Map(known.map((stamp) => [stamp.id, stamp]));
    if (earlier !== null && former !== undefined) {
      kept.set(earlier.id, earlier);
      asked.push(stamps.put(earlier, earlier.id), documents.put(former, earlier.id));
    }
    kept.set(plan.now.id, plan.now);
    asked.push(stamps.put(plan.now, plan.now.id), documents.put(project, plan.now.id));
    for (const id of plan.gone) {
      kept.delete(id);
      asked.push(stamps.delete(id), documents.delete(id));
    }
    const needed = new Set([...kept.values()].flatMap((stamp) => stamp.sources));
    for (const hash of hashes.filter((one) => !needed.has(one))) asked.push(sources.delete(hash), weights.delete(hash));
    await Promise.all([...asked, change.done]);
  }

  /** Lets go of the oldest tenth of the earlier states, at least one. @returns false where there is none. */
  async #makeRoom(): Promise<boolean> {
    const oldest = oldestFirst(await this.states());
    if (oldest.length === 0) return false;
    const gone = oldest.slice(0, Math.ceil(oldest.length / 10));
    await this.#drop(gone.map(({ id }) => id));
    return true;
  }

  async #drop(ids: readonly string[]): Promise<void> {
    const change = (await this.#open()).transaction(['stamps', 'documents', 'weights', 'sources'], 'readwrite');
    const stamps = change.objectStore('stamps');
    for (const id of ids) await Promise.all([stamps.delete(id), change.objectStore('documents').delete(id)]);
    const needed = new Set((await stamps.getAll()).flatMap(({ sources }) => sources));
    for (const hash of await change.objectStore('weights').getAllKeys())
      if (!needed.has(hash))
        await Promise.all([change.objectStore('sources').delete(hash), change.objectStore('weights').delete(hash)]);
    await change.done;
  }

  /** A handle that cannot be kept is asked for again at the next visit: no reason to keep nothing at all. */
  async #keepFile({ job, file }: KeepNote): Promise<void> {
    if (this.#files.get(job) === file) return;
    this.#files.set(job, file);
    const db = await this.#open();
    if (file === null) return await db.delete('files', job);
    await db.put('files', file, job).catch(() => db.put('files', { ...file, handle: null }, job));
  }

  async forget(job: string): Promise<void> {
    await this.#drop((await this.states()).filter((stamp) => stamp.job === job).map(({ id }) => id));
    await (await this.#open()).delete('files', job);
  }

  async rename(job: string, to: string): Promise<void> {
    const change = (await this.#open()).transaction(['stamps', 'documents', 'files'], 'readwrite');
    const [stamps, documents] = [change.objectStore('stamps'), change.objectStore('documents')];
    for (const stamp of (await stamps.getAll()).filter((one) => one.job === job)) {
      const id = stamp.id.slice(0, -job.length) + to;
      const project = await documents.get(stamp.id);
      await Promise.all([stamps.delete(stamp.id), documents.delete(stamp.id)]);
      if (project !== undefined)
        await Promise.all([stamps.put({ ...stamp, id, job: to }, id), documents.put(project, id)]);
    }
    await change.objectStore('files').delete(job);
    await change.done;
  }

  async loadWishes(): Promise<Wishes | null> {
    return (await (await this.#open()).get('wishes', 'window')) ?? null;
  }

  async saveWishes(wishes: Wishes): Promise<void> {
    await (await this.#open()).put('wishes', wishes, 'window');
  }

  #open(): Promise<OpenShelves> {
    this.#opening ??= this.#try();
    return this.#opening;
  }

  /** A refusal is not for ever: the next call asks again. */
  async #try(): Promise<OpenShelves> {
    try {
      return await openShelves(this.name, (isNewer) => {
        this.#opening = null;
        if (isNewer) this.onNewer();
      });
    } catch (error) {
      this.#opening = null;
      throw error;
    }
  }
}
