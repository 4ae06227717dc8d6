import type { Project } from '../../project/project.ts';
import { Autosave, type SaveState } from '../autosave.ts';
import type { Storage } from '../storage.ts';
import { JobLock, type Hold, type LockDoor } from './job-lock.ts';
import { jobKeyOf, type JobFile } from './kept-job.ts';

/** Where a job is kept. */
export interface JobPlace {
  /** Its key in the browser. */
  readonly job: string;
  readonly file: JobFile | null;
  /** The document that the file holds; null where it has none, or that is not known. */
  readonly inFile: Project | null;
}

/** Where the job in hand is kept: in the browser after each change, and in a file when the maker says so; and which window may do that. */
export class Keeping {
  readonly autosave: Autosave;
  readonly lock: JobLock;
  readonly #storage: Storage;
  #place: JobPlace = { job: '', file: null, inFile: null };
  #isOpened = false;
  /** Pieces that were told of the document last written. */
  #pieces: number | null = null;
  /** Step of the history that it is at. */
  #step = -1;

  /** @param onHold called when another window took the job, or gave it. */
  constructor(storage: Storage, door: LockDoor | null, onState: (state: SaveState) => void, onHold: () => void) {
    this.#storage = storage;
    this.lock = new JobLock(door, onHold, () => this.autosave.flush());
    this.autosave = new Autosave(storage, onState, (job) => this.lock.isMine(job));
  }

  get place(): JobPlace {
    return this.#place;
  }

  get hold(): Hold {
    return this.lock.hold;
  }

  /** Another job is in hand. What waits of the one before is written first. */
  moveTo(place: JobPlace): void {
    void this.autosave.flush();
    this.#place = place;
    this.#isOpened = true;
    this.#pieces = null;
    this.lock.take(place.job);
  }

  /**
   * @param step   id of the step of the history that the document is at: the same as before where one gesture goes on.
   * @param pieces as far as they are known.
   */
  later(project: Project, what: string, step: number, pieces: number | null): void {
    const { job, file, inFile } = this.#place;
    const goesOn = step === this.#step && !this.#isOpened;
    this.#pieces = pieces;
    this.#step = step;
    const note = { job, what, pieces, file, isInFile: project === inFile, isOpened: this.#isOpened };
    this.autosave.later(project, note, goesOn);
    this.#isOpened = false;
  }

  /** Its pieces are known now: they are told where a list speaks of the state. */
  tell(project: Project, what: string, pieces: number): void {
    if (pieces !== this.#pieces) this.later(project, what, this.#step, pieces);
  }

  /** The document is in a file now, under whose name the job is known from now on. */
  async isSavedTo(file: JobFile, project: Project): Promise<void> {
    const { job } = this.#place;
    const isSameFile = this.#place.file?.name === file.name;
    const to = isSameFile ? job : jobKeyOf(project, file.name);
    this.#place = { job: to, file, inFile: project };
    // That it was written, and when, is put down at once: else the file would look changed by another after a power cut.
    this.#step = -1;
    if (to === job) return;
    await this.autosave.flush();
    this.lock.take(to);
    // What cannot be put under another key stays an earlier state of the job under the old one.
    await this.#storage.rename(job, to).catch(() => undefined);
  }
}
