import type { StripTask } from './nest-instance.ts';
import { StripSearcher, type StripLayout } from './nest-strip.ts';

/** Searchers that work at one task. Always so many, however many cores there are, so that the same moves lead to the same layout everywhere. */
export const NEST_HANDS = 2;

/** Moves each searcher makes between two times at which all take over the best; each stretch is longer than the one before by a share. */
const FIRST_STRETCH = 2000;
const STRETCH_GROWTH = 1.25;

/** One searcher, in this thread or another. */
export interface NestHand {
  /**
   * Moves until so many moves are made in all, or it is told to stop.
   * @param offered  what the others found best, where it is better.
   * @returns the best it knows, and how many moves it has made.
   */
  run(untilMoves: number, offered: StripLayout | null): Promise<NestState>;
}

export interface NestState {
  readonly moves: number;
  readonly best: StripLayout;
}

/** A searcher that works in this thread. */
export class HomeHand implements NestHand {
  readonly #searcher: StripSearcher;
  readonly #isOver: () => boolean;

  /** @param isOver asked after every move; true ends a run. */
  constructor(task: StripTask, seed: number, hand: number, isOver: () => boolean) {
    this.#searcher = new StripSearcher(task, seed, hand);
    this.#isOver = isOver;
  }

  async run(untilMoves: number, offered: StripLayout | null): Promise<NestState> {
    if (offered !== null) this.#searcher.offer(offered);
    while (this.#searcher.moves < untilMoves && !this.#isOver()) this.#searcher.move();
    return { moves: this.#searcher.moves, best: this.#searcher.best };
  }
}

/**
 * Lets all searchers work, and brings them together again and again.
 * @param mostMoves  of all searchers together.
 * @param isOver     asked between two stretches.
 * @param found      called for each better layout, with the moves made until then.
 */
export async function nestTogether(
  hands: readonly NestHand[],
  mostMoves: number,
  isOver: () => boolean,
  found: (state: NestState) => void,
): Promise<NestState> {
  const most = hands.map((_, i) => Math.floor((mostMoves + i) / hands.length));
  let best: StripLayout | null = null;
  let [until, stretch] = [0, FIRST_STRETCH];
  for (;;) {
    until += stretch;
    stretch = Math.ceil(stretch * STRETCH_GROWTH);
    const offered: StripLayout | null = best;
    const states = await Promise.all(hands.map((hand, i) => hand.run(Math.min(until, most[i]), offered)));
    const moves = states.reduce((sum, state) => sum + state.moves, 0);
    const better = shortest(states, best);
    if (better !== best) found({ moves, best: better });
    best = better;
    if (isOver() || moves >= mostMoves) return { moves, best };
  }
}

function shortest(states: readonly NestState[], before: StripLayout | null): StripLayout {
  let best = before;
  for (const state of states) if (best === null || state.best.length < best.length) best = state.best;
  if (best === null) throw new RangeError('nest: nobody looks');
  return best;
}
