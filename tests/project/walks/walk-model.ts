import type { Command } from '../../../src/project/commands.ts';
import type { KeptVersion } from '../../../src/project/kept-version.ts';
import type { Project } from '../../../src/project/project.ts';

/** A state as this model knows it: nothing is shared with the history it is held against but the commands themselves. */
interface State {
  readonly id: number;
  readonly label: string | null;
  readonly mergeKey: string | undefined;
  /** Without its versions. */
  readonly document: Project;
}

interface ShelfChange {
  readonly label: string;
  readonly at: number;
  readonly before: readonly KeptVersion[];
  readonly after: readonly KeptVersion[];
}

const bare = ({ versions: _, ...document }: Project): Project => document;

/** How many states back, and ways that were left, are kept: as the manual of the window promises. */
const MOST = { back: 500, ways: 20 };

/**
 * A document's history told as plainly as can be: lists of states from the first to the last, one of them walked, and a mark on it. Every way is
 * written out whole.
 */
export class WalkModel {
  line: State[];
  at = 0;
  /** Whole lines that were left, the oldest first. */
  left: State[][] = [];
  versions: readonly KeptVersion[];
  isCutShort = false;
  #undone: ShelfChange[] = [];
  #done: ShelfChange[] = [];
  #lastId = 0;
  #revision: number;

  constructor(project: Project) {
    this.versions = project.versions ?? [];
    this.line = [{ id: 0, label: null, mergeKey: undefined, document: bare(project) }];
    this.#revision = Math.max(project.revision, ...this.versions.map(({ document }) => document.revision));
  }

  get document(): Project {
    return this.line[this.at].document;
  }

  get undoLabel(): string | null {
    return this.#done.at(-1)?.label ?? this.line[this.at].label;
  }

  get redoLabel(): string | null {
    const next = this.#undone.at(-1);
    if (next?.at === this.line[this.at].id) return next.label;
    return this.line.at(this.at + 1)?.label ?? null;
  }

  run(command: Command, from: Project): void {
    const made = command.apply(from);
    if (made === from) return;
    const isSame = [...new Set([...Object.keys(made), ...Object.keys(from)])].every(
      (key) => key === 'versions' || made[key as keyof Project] === from[key as keyof Project],
    );
    if (isSame) {
      const after = made.versions ?? [];
      this.#done.push({ label: command.label, at: this.line[this.at].id, before: this.versions, after });
      this.#undone = [];
      this.versions = after;
      return;
    }
    this.#done = [];
    this.#undone = [];
    this.#revision += 1;
    const document = { ...bare(made), revision: this.#revision };
    const here = this.line[this.at];
    const { mergeKey, label } = command;
    const isLast = this.at === this.line.length - 1;
    // The first state that is kept has nothing before it to undo to.
    if (mergeKey !== undefined && mergeKey === here.mergeKey && isLast && this.at > 0) {
      this.line = [...this.line.slice(0, -1), { ...here, document }];
      return;
    }
    if (!isLast) this.left.push(this.line);
    this.#lastId += 1;
    this.line = [...this.line.slice(0, this.at + 1), { id: this.#lastId, label, mergeKey, document }];
    this.at += 1;
    this.#forget();
  }

  #forget(): void {
    if (this.line.length > MOST.back + 1) {
      this.line = this.line.slice(1);
      this.at -= 1;
      const [first] = this.line;
      this.left = this.left.filter((way) => way.includes(first)).map((way) => way.slice(way.indexOf(first)));
      this.isCutShort = true;
    }
    if (this.left.length > MOST.ways) {
      this.left = this.left.slice(1);
      this.isCutShort = true;
    }
  }

  undo(): void {
    const last = this.#done.pop();
    if (last === undefined) {
      if (this.at > 0) this.at -= 1;
      return;
    }
    this.#undone.push(last);
    this.versions = last.before;
  }

  redo(): void {
    const next = this.#undone.at(-1);
    if (next?.at === this.line[this.at].id) {
      this.#undone.pop();
      this.#done.push(next);
      this.versions = next.after;
    } else if (this.at < this.line.length - 1) {
      this.#done = [];
      this.at += 1;
    }
  }

  /** Every state that can be walked to. */
  get places(): readonly number[] {
    return [...new Set([this.line, ...this.left].flatMap((way) => way.map(({ id }) => id)))];
  }

  goTo(id: number): void {
    const place = this.line.findIndex((state) => state.id === id);
    if (place === this.at) return;
    if (place >= 0) {
      this.#done = [];
      this.at = place;
      return;
    }
    const way = this.left.findLastIndex((states) => states.some((state) => state.id === id));
    if (way < 0) return;
    const [taken] = this.left.splice(way, 1);
    this.left.push(this.line);
    this.line = taken;
    this.#done = [];
    this.at = this.line.findIndex((state) => state.id === id);
  }

  /** The ways that were left as a list tells of them: each with what no way before it has. */
  get told(): readonly { readonly after: number | null; readonly steps: readonly number[] }[] {
    const known = new Set(this.line.map(({ id }) => id));
    return [...this.left].reverse().map((way) => {
      const own = way.filter(({ id }) => !known.has(id)).map(({ id }) => id);
      for (const id of own) known.add(id);
      const before = way.findIndex(({ id }) => id === own[0]) - 1;
      return { after: before < 0 ? null : way[before].id, steps: own };
    });
  }
}
