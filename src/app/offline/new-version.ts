import type { Project } from '../../project/project.ts';
import type { SaveState } from '../autosave.ts';
import { lastingOffer } from './lasting-notice.ts';
import type { QuietNotice } from './quiet-notice.ts';

/** What must be known of the job before the window may be loaded anew. */
export interface JobAtHand {
  readonly project: Project | null;
  readonly history: { readonly canUndo: boolean; readonly canRedo: boolean } | null;
  readonly autosave: { readonly state: SaveState; flush(): Promise<void> };
  /** `inFile`: the document that its file holds. */
  readonly keeping: { readonly place: { readonly inFile: Project | null } };
}

export interface VersionActions {
  /** Saves the job to a file. */
  save(): Promise<void>;
  /** Loads the window anew. */
  reload(): void;
}

/** Offers a new version in one line. It is taken up when the maker says so, and never before the job is kept in the browser or saved to a file. */
export class NewVersion {
  #takeOver: (() => Promise<void>) | null = null;
  #isElsewhere = false;

  constructor(
    readonly job: JobAtHand,
    readonly notice: QuietNotice,
    readonly actions: VersionActions,
  ) {}

  /** @param takeOver  puts it in force; awaited before the window is loaded anew. @param isElsewhere  another window did so already */
  offer(takeOver: () => Promise<void>, isElsewhere: boolean): void {
    this.#takeOver = takeOver;
    this.#isElsewhere = isElsewhere;
    this.#say();
  }

  #say(): void {
    if (this.#isUnkept()) return this.notice.say(lastingOffer('saveFirst', 'save', () => void this.#save()));
    const text = this.#isElsewhere ? 'newerElsewhere' : 'newer';
    this.notice.say(lastingOffer(text, 'takeUp', () => void this.#takeUp()));
  }

  /** Whether something would be lost: a job that was worked on, that this window cannot keep in the browser, and that lies in no file as it is now. */
  #isUnkept(): boolean {
    const { project, history, autosave, keeping } = this.job;
    const isWorkedOn = history !== null && (history.canUndo || history.canRedo);
    const isKept = autosave.state === 'saved' || autosave.state === 'saving';
    return isWorkedOn && !isKept && project !== keeping.place.inFile;
  }

  async #save(): Promise<void> {
    await this.actions.save();
    this.#say();
  }

  async #takeUp(): Promise<void> {
    if (!(await this.#keeps())) return this.#say();
    await this.#takeOver?.();
    // A quick hand may have changed something meanwhile.
    if (!(await this.#keeps())) return this.#say();
    this.actions.reload();
  }

  /** Writes what waits. @returns whether nothing would be lost now */
  async #keeps(): Promise<boolean> {
    const { autosave } = this.job;
    do await autosave.flush();
    while (autosave.state === 'saving');
    return !this.#isUnkept();
  }
}
