import type { Project } from '../project/project.ts';
import type { SavedSource, Storage } from './storage.ts';

export type SaveState = 'saved' | 'saving' | 'refused';

/** Quiet time before a change is written, ms: a drag is written once. */
const QUIET_MS = 200;

/** Writes the job to the browser's storage soon after each change, one write at a time, the newest last. */
export class Autosave {
  #state: SaveState = 'saved';
  #waiting: Project | null = null;
  #fresh: SavedSource[] = [];
  #timer: ReturnType<typeof setTimeout> | undefined;
  #writing: Promise<void> = Promise.resolve();

  constructor(
    readonly storage: Storage,
    /** Called when the state changed; `refused` comes once and then stays. */
    readonly onState: (state: SaveState) => void,
  ) {}

  get state(): SaveState {
    return this.#state;
  }

  /** A source file to go with the next write. */
  addSource(source: SavedSource): void {
    this.#fresh.push(source);
  }

  later(project: Project): void {
    if (this.#state === 'refused') return;
    this.#waiting = project;
    this.#set('saving');
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), QUIET_MS);
  }

  /** Writes what waits, at once. */
  flush(): Promise<void> {
    clearTimeout(this.#timer);
    this.#writing = this.#writing.then(() => this.#write());
    return this.#writing;
  }

  async #write(): Promise<void> {
    const project = this.#waiting;
    if (project === null) return;
    const fresh = this.#fresh;
    this.#waiting = null;
    this.#fresh = [];
    try {
      await this.storage.save(project, fresh);
      if (this.#waiting === null) this.#set('saved');
    } catch {
      // Private window, full disk, storage switched off: the job goes on in memory, and the maker is told once.
      this.#set('refused');
    }
  }

  #set(state: SaveState): void {
    if (state === this.#state) return;
    this.#state = state;
    this.onState(state);
  }
}
