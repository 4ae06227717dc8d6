import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Project } from '../project/project.ts';
import { neededSources, sourcesOfProject } from '../project/sources.ts';
import type { Wishes } from './view-state.ts';

/** A job as it is kept in this browser between visits. */
export interface SavedJob {
  readonly project: Project;
  readonly sources: readonly SavedSource[];
}

export interface SavedSource {
  readonly hash: string;
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

/** Where the window keeps the last job and the maker's wishes. Every call may reject: private windows and full disks refuse. */
export interface Storage {
  load(): Promise<SavedJob | null>;
  /** Saves the document with those of its sources that were not saved before. Sources of other jobs are let go. */
  save(project: Project, fresh: readonly SavedSource[]): Promise<void>;
  loadWishes(): Promise<Wishes | null>;
  saveWishes(wishes: Wishes): Promise<void>;
}

interface Shelves extends DBSchema {
  jobs: { key: 'last'; value: Project };
  sources: { key: string; value: SavedSource };
  wishes: { key: 'window'; value: Wishes };
}

/** The browser's own database. Opened on first use, so that a refusal is a rejected promise and not a broken start. */
export class BrowserStorage implements Storage {
  #opening: Promise<IDBPDatabase<Shelves>> | null = null;

  constructor(readonly name = 'foamloft') {}

  async load(): Promise<SavedJob | null> {
    const db = await this.#open();
    const project = await db.get('jobs', 'last');
    if (project === undefined) return null;
    const sources: SavedSource[] = [];
    for (const { hash } of sourcesOfProject(project)) {
      const source = await db.get('sources', hash);
      if (source !== undefined) sources.push(source);
    }
    if (neededSources(project).some(({ hash }) => !sources.some((source) => source.hash === hash))) return null;
    return { project, sources };
  }

  async save(project: Project, fresh: readonly SavedSource[]): Promise<void> {
    const db = await this.#open();
    const wanted = new Set(sourcesOfProject(project).map(({ hash }) => hash));
    const change = db.transaction(['jobs', 'sources'], 'readwrite');
    const sources = change.objectStore('sources');
    const kept = await sources.getAllKeys();
    await Promise.all([
      change.objectStore('jobs').put(project, 'last'),
      ...fresh.map((source) => sources.put(source, source.hash)),
      ...kept.filter((hash) => !wanted.has(hash)).map((hash) => sources.delete(hash)),
      change.done,
    ]);
  }

  async loadWishes(): Promise<Wishes | null> {
    return (await (await this.#open()).get('wishes', 'window')) ?? null;
  }

  async saveWishes(wishes: Wishes): Promise<void> {
    await (await this.#open()).put('wishes', wishes, 'window');
  }

  #open(): Promise<IDBPDatabase<Shelves>> {
    this.#opening ??= openDB<Shelves>(this.name, 1, {
      upgrade(db) {
        db.createObjectStore('jobs');
        db.createObjectStore('sources');
        db.createObjectStore('wishes');
      },
    });
    return this.#opening;
  }
}
