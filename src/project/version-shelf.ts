import type { KeptVersion } from './kept-version.ts';

/** A change to what is kept, made while the document stood at one step of its history. */
interface Change {
  readonly label: string;
  readonly step: number;
  readonly before: readonly KeptVersion[];
  readonly after: readonly KeptVersion[];
}

/**
 * The kept versions and the way they came about, beside the steps of the document. They are no part of a step: who walks back and forth finds
 * all versions kept. Keeping, naming and removing one can be taken back as long as nothing else was done since, and so never by undoing
 * something else; later a version goes only by being removed.
 */
export class VersionShelf {
  #now: readonly KeptVersion[];
  #past: Change[] = [];
  #future: Change[] = [];

  constructor(now: readonly KeptVersion[]) {
    this.#now = now;
  }

  get now(): readonly KeptVersion[] {
    return this.#now;
  }

  /** What undo would take back here, or null. */
  get undoLabel(): string | null {
    return this.#past.at(-1)?.label ?? null;
  }

  /** @param step  id of the step the document stands at. */
  redoLabel(step: number): string | null {
    const next = this.#future.at(-1);
    return next?.step === step ? next.label : null;
  }

  take(after: readonly KeptVersion[], label: string, step: number): void {
    this.#past.push({ label, step, before: this.#now, after });
    this.#future = [];
    this.#now = after;
  }

  undo(): void {
    const last = this.#past.pop();
    if (last === undefined) return;
    this.#future.push(last);
    this.#now = last.before;
  }

  redo(): void {
    const next = this.#future.pop();
    if (next === undefined) return;
    this.#past.push(next);
    this.#now = next.after;
  }

  /** The document goes to another step: what was kept until now stays. */
  settle(): void {
    this.#past = [];
  }

  /** The document was changed: what was taken back is not done again. */
  close(): void {
    this.#past = [];
    this.#future = [];
  }
}
