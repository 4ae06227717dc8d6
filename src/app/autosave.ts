import type { Project } from '../project/project.ts';
import type { KeepNote } from './files/kept-job.ts';
import { refusalOf, type Refusal, type SavedSource, type Storage } from './storage.ts';

/** `looking`: another window works on the job, so that nothing is written here. */
export type SaveState = 'saved' | 'saving' | 'refused' | 'looking';

/** A change that goes on, as a drag does, is written so often, ms; one that begins is written at once. */
const GOES_ON_MS = 200;

interface Waiting {
  readonly project: Project;
  readonly note: KeepNote;
}

/**
 * Writes the job to the browser's storage, one write at a time, the newest last. The power may go at any moment: what has been done is written
 * as soon as the window has answered to it, and waits for nothing but the write before. Only what goes on rests between two writes, and it is
 * written while it lasts: who turns a knob for a minute does not lose the minute.
 */
export class Autosave {
  #state: SaveState = 'saved';
  #refusal: Refusal = 'off';
  /** What is to be written, one entry for each job in a row. */
  #waiting: Waiting[] = [];
  #fresh: SavedSource[] = [];
  /** Set while a write is to begin: in this very turn of the window, or when the timer says so. */
  #due: 'soon' | ReturnType<typeof setTimeout> | null = null;
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

  /** @param goesOn  true where it is the same gesture as before, or nothing was changed since. */
  later(project: Project, note: KeepNote, goesOn = false): void {
    const before = this.#waiting.at(-1);
    const isSame = before?.note.job === note.job;
    const isOpened = note.isOpened || (isSame && before.note.isOpened);
    const waits = { project, note: { ...note, isOpened } };
    // What waits of another job is written first.
    if (isSame) this.#waiting[this.#waiting.length - 1] = waits;
    else this.#waiting.push(waits);
    if (this.#state !== 'refused') this.#set('saving');
    if (this.#due === 'soon' || (this.#due !== null && goesOn)) return;
    this.#rest();
    if (goesOn) this.#due = setTimeout(() => void this.flush(), GOES_ON_MS);
    else {
      this.#due = 'soon';
      queueMicrotask(() => void this.flush());
    }
  }

  /** Writes what waits, at once. */
  flush(): Promise<void> {
    this.#rest();
    if (this.#waiting.length > 0) this.#writing = this.#writing.then(() => this.#writeAll());
    return this.#writing;
  }

  #rest(): void {
    if (this.#due !== 'soon') clearTimeout(this.#due ?? undefined);
    this.#due = null;
  }

  /** What comes while one is written is written after it, and of one job only the newest. */
  async #writeAll(): Promise<void> {
    for (let next = this.#waiting.shift(); next !== undefined; next = this.#waiting.shift()) {
      const fresh = this.#fresh;
      this.#fresh = [];
      await this.#write(next, fresh);
    }
  }

  async #write({ project, note }: Waiting, fresh: readonly SavedSource[]): Promise<void> {
    try {
      if (!(await this.mayWrite(note.job))) {
        this.#fresh.unshift(...fresh);
        return this.#set('looking');
      }
      await this.storage.save(project, fresh, note);
      if (this.#waiting.length === 0) this.#set('saved');
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
