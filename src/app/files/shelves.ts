import { openDB, type DBSchema, type IDBPDatabase, type IDBPTransaction, type StoreNames } from 'idb';
import type { Project } from '../../project/project.ts';
import type { SavedSource } from '../storage.ts';
import type { Wishes } from '../view-state.ts';
import { jobKeyOf, NO_NOTE, planKeeping, type JobFile, type KeptStamp } from './kept-job.ts';

/** The browser's database: stamps tell of states, documents and sources lie apart so that a list need not load them. */
export interface Shelves extends DBSchema {
  stamps: { key: string; value: KeptStamp };
  documents: { key: string; value: Project };
  /** Bytes of each source by its hash. */
  weights: { key: string; value: number };
  sources: { key: string; value: SavedSource };
  /** File of a job by the key of that. */
  files: { key: string; value: JobFile };
  wishes: { key: 'window'; value: Wishes };
  /** As it was before there were earlier states: one job. */
  jobs: { key: 'last'; value: Project };
}

export type OpenShelves = IDBPDatabase<Shelves>;

/**
 * How long a database may take to answer at first: one that never does is taken for one that is switched off. Told in turns of the window of so
 * many ms, since a window that is busy itself hears no answer.
 */
const ANSWER_TURNS = 20;
const TURN_MS = 250;

/**
 * Opens the database. Rejects where the browser keeps nothing, or does not answer.
 * @param onLost  it was closed; `isNewer`: for a newer version of the window, which opens it after its own manner.
 */
export async function openShelves(name: string, onLost: (isNewer: boolean) => void): Promise<OpenShelves> {
  const opening = openDB<Shelves>(name, 2, {
    upgrade: async (db, oldVersion, _, change) => {
      if (oldVersion === 0) for (const store of ['sources', 'wishes'] as const) db.createObjectStore(store);
      for (const store of ['stamps', 'documents', 'weights', 'files'] as const) db.createObjectStore(store);
      if (oldVersion === 1) {
        await moveLastJob(change);
        db.deleteObjectStore('jobs');
      }
    },
    // Another window has a newer version: it must not wait for this one.
    blocking: (_, __, event) => {
      (event.target as IDBDatabase).close();
      onLost(true);
    },
    terminated: () => onLost(false),
  });
  const db = await Promise.race([opening, silence()]);
  if (db !== null) return db;
  // What comes too late is not used, and must not stand in the way of another try.
  opening.then((late) => late.close()).catch(() => undefined);
  throw new Error('the browser does not answer');
}

async function silence(): Promise<null> {
  for (let turn = 0; turn < ANSWER_TURNS; turn += 1) await new Promise((resolve) => setTimeout(resolve, TURN_MS));
  return null;
}

type Upgrade = IDBPTransaction<Shelves, StoreNames<Shelves>[], 'versionchange'>;

/** The one job of the first version becomes the newest of all. */
async function moveLastJob(change: Upgrade): Promise<void> {
  const project = await change.objectStore('jobs').get('last');
  for (const { hash, bytes } of await change.objectStore('sources').getAll())
    await change.objectStore('weights').put(bytes.length, hash);
  if (project === undefined) return;
  const { now } = planKeeping([], new Map(), project, { ...NO_NOTE, job: jobKeyOf(project) }, Date.now());
  await change.objectStore('stamps').put(now, now.id);
  await change.objectStore('documents').put(project, now.id);
}
