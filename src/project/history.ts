import type { Command } from './commands.ts';
import { versionsOf, withVersions } from './kept-version.ts';
import type { Project } from './project.ts';
import { VersionShelf } from './version-shelf.ts';

/** A state of the document in this session. */
export interface HistoryStep {
  /** Its own in this history; a later one is higher. */
  readonly id: number;
  /** What was done to come here, as its command calls it; null for the state it was opened in. */
  readonly label: string | null;
  /** When, ms since 1970 as the caller told it. */
  readonly atMs: number;
  readonly project: Project;
}

/** Steps that were taken back, and then something else was done. */
export interface LeftBehind {
  /** The step that something else was done after; null where it is no longer kept. */
  readonly after: HistoryStep | null;
  /** From there on, one or more; the last is where that way ended. */
  readonly steps: readonly HistoryStep[];
}

/** The history as it can be walked; a new object when it has changed. */
export interface Trail {
  /** From the oldest that is kept to the farthest that redo leads to. */
  readonly steps: readonly HistoryStep[];
  /** Index of the step the document is at. */
  readonly at: number;
  /** The one that was left last first. */
  readonly left: readonly LeftBehind[];
  /** True once the oldest steps, or ways, were let go. */
  readonly isCutShort: boolean;
}

interface Node extends HistoryStep {
  project: Project;
  readonly mergeKey: string | undefined;
  parent: Node | null;
}

/** How many steps back are kept. Documents share what did not change, so a step costs little. */
export const MOST_STEPS = 500;

/** How many ways that were left are kept, the last ones. */
export const MOST_LEFT = 20;

/**
 * The document and the way it came about. Undo puts the old document back as it was, so everything derived from it is remembered too.
 * Commands in a row with the same `mergeKey` undo as one. What was undone stays until something else is done, and is then left behind: a step
 * is a place in a tree, of which one line is walked by undo and redo. Kept versions stand beside it (`VersionShelf`).
 *
 *     opened ── A ── B ── C        left behind
 *                └── D ── E        the line; undo from D leads to A
 */
export class History {
  /** From the opened document to the farthest step. */
  #line: Node[];
  #at = 0;
  /** The last steps of ways that were left, oldest first. */
  #left: Node[] = [];
  /** Highest revision given out: a number printed on paper is never used for other content, even after undo. */
  #highest: number;
  #lastId = 0;
  #isCutShort = false;
  #trail: Trail | null = null;
  readonly #shelf: VersionShelf;

  /** @param atMs  when it was opened, ms since 1970. */
  constructor(project: Project, atMs = 0) {
    const versions = versionsOf(project);
    this.#shelf = new VersionShelf(versions);
    this.#line = [{ id: 0, label: null, atMs, project, mergeKey: undefined, parent: null }];
    this.#highest = Math.max(project.revision, ...versions.map(({ document }) => document.revision));
  }

  get project(): Project {
    const here = this.#here;
    here.project = withVersions(here.project, this.#shelf.now);
    return here.project;
  }

  /** Id of the step the document is at: the same as long as one gesture goes on. */
  get step(): number {
    return this.#here.id;
  }

  get canUndo(): boolean {
    return this.undoLabel !== null;
  }

  get canRedo(): boolean {
    return this.redoLabel !== null;
  }

  /** Label of what undo would take back, or null. */
  get undoLabel(): string | null {
    return this.#shelf.undoLabel ?? this.#here.label;
  }

  get redoLabel(): string | null {
    return this.#shelf.redoLabel(this.#here.id) ?? this.#line.at(this.#at + 1)?.label ?? null;
  }

  get trail(): Trail {
    this.#trail ??= {
      steps: [...this.#line],
      at: this.#at,
      left: this.#waysLeft(),
      isCutShort: this.#isCutShort,
    };
    return this.#trail;
  }

  /**
   * Applies a command. One that changes nothing (returns the same document) leaves no trace.
   * @param atMs  now, ms since 1970.
   */
  run(command: Command, atMs = 0): Project {
    const before = this.project;
    const applied = command.apply(before);
    if (applied === before) return before;
    this.#trail = null;
    if (isOfVersionsAlone(before, applied)) {
      this.#shelf.take(versionsOf(applied), command.label, this.#here.id);
      return this.project;
    }
    this.#shelf.close();
    this.#highest += 1;
    const project = { ...applied, revision: this.#highest };
    const { mergeKey, label } = command;
    const isAtEnd = this.#at === this.#line.length - 1;
    const here = this.#here;
    const merges = mergeKey !== undefined && here.mergeKey === mergeKey && isAtEnd && here.parent !== null;
    if (merges) this.#line[this.#at] = { ...here, atMs, project };
    else this.#goOn({ id: (this.#lastId += 1), label, atMs, project, mergeKey, parent: here });
    return this.project;
  }

  /** Puts the last document back; without one, nothing happens. */
  undo(): Project {
    this.#trail = null;
    if (this.#shelf.undoLabel !== null) this.#shelf.undo();
    else if (this.#at > 0) this.#at -= 1;
    return this.project;
  }

  redo(): Project {
    this.#trail = null;
    if (this.#shelf.redoLabel(this.#here.id) !== null) this.#shelf.redo();
    else if (this.#at < this.#line.length - 1) {
      this.#shelf.settle();
      this.#at += 1;
    }
    return this.project;
  }

  /**
   * Goes to a step: as many undos or redos as it is away. One on a way that was left makes that way the line, and leaves the other behind.
   * A step that is not kept is no place to go to: nothing happens.
   */
  goTo(id: number): Project {
    const place = this.#line.findIndex((node) => node.id === id);
    if (place === this.#at) return this.project;
    this.#trail = null;
    if (place >= 0) this.#walkTo(place);
    else {
      const tip = this.#left.findLast((end) => pathTo(end).some((node) => node.id === id));
      if (tip !== undefined) this.#takeWay(tip, id);
    }
    return this.project;
  }

  get #here(): Node {
    return this.#line[this.#at];
  }

  #walkTo(place: number): void {
    this.#shelf.settle();
    this.#at = place;
  }

  #takeWay(tip: Node, id: number): void {
    const end = this.#line[this.#line.length - 1];
    this.#left = this.#left.filter((node) => node !== tip);
    this.#left.push(end);
    this.#line = pathTo(tip);
    this.#walkTo(this.#line.findIndex((node) => node.id === id));
  }

  #goOn(node: Node): void {
    const end = this.#line[this.#line.length - 1];
    if (end !== this.#here) this.#left.push(end);
    this.#line = [...this.#line.slice(0, this.#at + 1), node];
    this.#at += 1;
    this.#letGo();
  }

  /** Lets go of the oldest where there are too many. */
  #letGo(): void {
    if (this.#line.length > MOST_STEPS + 1) {
      this.#line.shift();
      this.#at -= 1;
      this.#line[0].parent = null;
      const [first] = this.#line;
      this.#left = this.#left.filter((tip) => pathTo(tip)[0] === first);
      this.#isCutShort = true;
    }
    if (this.#left.length > MOST_LEFT) {
      this.#left.shift();
      this.#isCutShort = true;
    }
  }

  /** Each step that is on no other way stands with the one that was left last. */
  #waysLeft(): LeftBehind[] {
    const known = new Set<Node>(this.#line);
    return this.#left.toReversed().map((tip) => {
      const steps: Node[] = [];
      let node: Node | null = tip;
      for (; node !== null && !known.has(node); node = node.parent) steps.unshift(node);
      for (const own of steps) known.add(own);
      return { after: node, steps };
    });
  }
}

function pathTo(tip: Node): Node[] {
  const path: Node[] = [];
  for (let node: Node | null = tip; node !== null; node = node.parent) path.unshift(node);
  return path;
}

/** Whether two documents differ in nothing but the versions that are kept. */
function isOfVersionsAlone(before: Project, after: Project): boolean {
  const keys = new Set([...Object.keys(before), ...Object.keys(after)] as (keyof Project)[]);
  keys.delete('versions');
  return [...keys].every((key) => before[key] === after[key]);
}
