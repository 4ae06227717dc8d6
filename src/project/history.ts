import type { Command } from './commands.ts';
import type { Project } from './project.ts';

interface Entry {
  readonly label: string;
  readonly mergeKey: string | undefined;
  /** The document before the command. */
  readonly before: Project;
}

/** How many steps back are kept. Documents share what did not change, so a step costs little. */
const MOST_STEPS = 500;

/**
 * The document and the way it came about. Undo puts the old document back as it was, so everything derived from it is remembered too.
 * Commands in a row with the same `mergeKey` undo as one.
 */
export class History {
  #project: Project;
  /** Highest revision given out: a number printed on paper is never used for other content, even after undo. */
  #highest: number;
  #past: Entry[] = [];
  #future: { readonly label: string; readonly mergeKey: string | undefined; readonly after: Project }[] = [];

  constructor(project: Project) {
    this.#project = project;
    this.#highest = project.revision;
  }

  get project(): Project {
    return this.#project;
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  get canRedo(): boolean {
    return this.#future.length > 0;
  }

  /** Label of what undo would take back, or null. */
  get undoLabel(): string | null {
    return this.#past.at(-1)?.label ?? null;
  }

  get redoLabel(): string | null {
    return this.#future.at(-1)?.label ?? null;
  }

  /** Applies a command. One that changes nothing (returns the same document) leaves no trace. */
  run(command: Command): Project {
    const before = this.#project;
    const applied = command.apply(before);
    if (applied === before) return before;
    const last = this.#past.at(-1);
    const merges = command.mergeKey !== undefined && last?.mergeKey === command.mergeKey && this.#future.length === 0;
    if (!merges) {
      this.#past.push({ label: command.label, mergeKey: command.mergeKey, before });
      if (this.#past.length > MOST_STEPS) this.#past.shift();
    }
    this.#future = [];
    this.#highest += 1;
    this.#project = { ...applied, revision: this.#highest };
    return this.#project;
  }

  /** Puts the last document back; without one, nothing happens. */
  undo(): Project {
    const entry = this.#past.pop();
    if (entry !== undefined) {
      this.#future.push({ label: entry.label, mergeKey: entry.mergeKey, after: this.#project });
      this.#project = entry.before;
    }
    return this.#project;
  }

  redo(): Project {
    const entry = this.#future.pop();
    if (entry !== undefined) {
      this.#past.push({ label: entry.label, mergeKey: entry.mergeKey, before: this.#project });
      this.#project = entry.after;
    }
    return this.#project;
  }
}
