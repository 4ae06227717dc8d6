import type { Project } from '../project/project.ts';
import type { KeepNote } from './files/kept-job.ts';
import { refusalOf, type Refusal, type SavedSource, type Storage } from './storage.ts';

/** `looking`: another window works on the job, so that nothing is written here. */
export type SaveState = 'saved' | 'saving' | 'refused' | 'looking';

/** Quiet time before a change is written, ms: a drag is written once. */
const QUIET_MS = 200;

interface Waiting {
  readonly project: Project;
  readonly note: KeepNote;
}

/** Writes the job to the browser's storage soon after each change, one write at a time, the newest last. */
export class Autosave {
  #state: SaveState = 'saved';
  #refusal: Refusal = 'off';
  #waiting: Waiting | null = null;
  #fresh: SavedSource[] = [];
  #timer: ReturnType<typeof setTimeout> | undefined;
  #writing: Promise<void> = Promise.resolve();

  constructor(
    readonly storage: Storage,
    /** Called when the state changed; `refused` comes once, until something can be written again. */
    readonly onState: (state: SaveState) => void,
    /** Whether this window may write the job. */
    readonly mayWrite: (job: string) => Promise<boolean> = () => Promise.resolve(true),
  ) {}

  get state(): SaveState {
    return this.#state;
  }

  /** Why it was refused last. */
  get refusal(): Refusal {
    return this.#refusal;
  }

  /** A source file to go with the next write. */
  addSource(source: SavedSource): void {
    this.#fresh.push(source);
  }

  later(project: Project, note: KeepNote): void {
    const before = this.#waiting;
    // What waits of another job is written first.
    if (before !== null && before.note.job !== note.job) void this.flush();
    const isOpened = note.isOpened || (before?.note.job === note.job && before.note.isOpened);
    this.#waiting = { project, note: { ...note, isOpened } };
    if (this.#state !== 'refused') this.#set('saving');
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), QUIET_MS);
  }

  /** Writes what waits, at once. */
  flush(): Promise<void> {
    clearTimeout(this.#timer);
    const [waiting, fresh] = [this.#waiting, this.#fresh];
    if (waiting === null) return this.#writing;
    this.#waiting = null;
    this.#fresh = [];
    this.#writing = this.#writing.then(() => this.#write(waiting, fresh));
    return this.#writing;
  }

  async #write({ project, note }: Waiting, fresh: readonly SavedSource[]): Promise<void> {
    try {
      if (!(await this.mayWrite(note.job))) {
        this.#fresh.unshift(...fresh);
        return this.#set('looking');
      }
      await this.storage.save(project, fresh, note);
      if (this.#waiting === null) this.#set('saved');
    } catch (error) {
      // Private window, full disk, storage switched off: the job goes on in memory, and the maker is told once. Each change tries again.
      this.#refusal = refusalOf(error);
      this.#fresh.unshift(...fresh);
      this.#set('refused');
    }
  }

  #set(state: SaveState): void {
    if (state === this.#state) return;
    this.#state = state;
    this.onState(state);
  }
}
