import { seededRandom } from '../base/random.ts';
import type { SheetLayout } from '../model/sheet.ts';
import type { KeptSheet } from '../model/stock.ts';
import { firstLayout, keptPlaces } from '../steps/nest/foam-layout.ts';
import { FoamSearch } from '../steps/nest/foam-search.ts';
import type { FoamTask } from '../steps/nest/foam-task.ts';
import { foamTasks, joinedLayout, type SheetTask } from '../steps/nest/lay-on-sheets.ts';
import { keptOfLayout } from './kept-layout.ts';

/** What a layout comes to over all foams; the first figure that differs decides, less is better. */
export interface SheetScore {
  /** Copies without a place. */
  readonly unlaid: number;
  readonly bought: number;
  readonly sheets: number;
  /** How far the last sheet of each foam is filled, all together, mm. */
  readonly lastMm: number;
}

/**
 * Looks for better and better layouts on foam, for as long as it is asked to. Plain objects go in and come out, so that it can work in another thread:
 *
 *     const search = new SheetCrew(sheetTaskOf(project, cut, templates), 1);   // begins from the layout that `make` and the window show first
 *     for (; ;) { search.step(200); if (search.found > seen) post(search.kept, search.score); }
 *
 * `keepLayout(search.kept)` makes what it found the layout of the project. It is never worse than before; the same task, seed and number of moves
 * lead to the same layout. What is held stays.
 */
export class SheetCrew {
  readonly #task: SheetTask;
  readonly #foams: readonly FoamTask[];
  readonly #searches: readonly FoamSearch[];
  readonly #steps: (Generator<undefined, void, undefined> | null)[];
  #next = 0;
  #found = 0;
  #moves = 0;

  /** @param seed another one looks elsewhere. */
  constructor(task: SheetTask, seed: number) {
    this.#task = task;
    this.#foams = foamTasks(task, true);
    const kept = task.stock.kept ?? [];
    // It begins from what is shown, which is laid in fewer ways.
    const starts = foamTasks(task, false).map((one) => firstLayout(one, kept));
    this.#searches = this.#foams.map((foam, i) => new FoamSearch(foam, starts[i], seededRandom(seed * 8191 + i)));
    this.#steps = this.#searches.map((search) => search.moves());
  }

  /** Moves made so far. */
  get moves(): number {
    return this.#moves;
  }

  /** How often a better layout was found; 0: the first one still stands. */
  get found(): number {
    return this.#found;
  }

  /** True where no piece can move: more steps come to nothing. */
  get isDone(): boolean {
    return this.#steps.every((steps) => steps === null);
  }

  /** Makes so many moves, turn and turn about for each foam. A move takes about a millisecond. */
  step(moves: number): void {
    for (let move = 0; move < moves && !this.isDone; move += 1) this.#move();
  }

  /** Takes over a layout that another one found, foam by foam, where it is better. */
  offer(kept: readonly KeptSheet[]): void {
    for (const [i, foam] of this.#foams.entries()) {
      const { places, movedOn } = keptPlaces(foam, kept);
      if (movedOn.length === 0) this.#counting(i, () => this.#searches[i].offer(places));
    }
  }

  /** The best layout, as the project keeps it. */
  get kept(): readonly KeptSheet[] {
    return keptOfLayout(this.layout);
  }

  get layout(): SheetLayout {
    return joinedLayout(
      this.#task,
      this.#foams.map((task, i) => ({ task, places: this.#searches[i].best.places, movedOn: [] })),
    );
  }

  get score(): SheetScore {
    const scores = this.#searches.map(({ best }) => best.score);
    const sum = (of: (score: (typeof scores)[number]) => number): number =>
      scores.reduce((all, score) => all + of(score), 0);
    return {
      unlaid: sum(({ unlaid }) => unlaid),
      bought: sum(({ bought }) => bought),
      sheets: sum(({ sheets }) => sheets),
      lastMm: sum(({ filledMm }) => filledMm),
    };
  }

  #move(): void {
    while (this.#steps[this.#next] === null) this.#next = (this.#next + 1) % this.#steps.length;
    const at = this.#next;
    this.#next = (at + 1) % this.#steps.length;
    this.#counting(at, () => {
      if (this.#steps[at]?.next().done === true) this.#steps[at] = null;
      else this.#moves += 1;
    });
  }

  #counting(foam: number, change: () => void): void {
    const before = this.#searches[foam].best;
    change();
    if (this.#searches[foam].best !== before) this.#found += 1;
  }
}
