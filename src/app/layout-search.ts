import { keepLayout } from '../project/stock-commands.ts';
import { startSheetSearch } from '../worker/client.ts';
import type { SheetSearchRun } from '../worker/sheet-search-api.ts';
import type { Bench } from './bench-state.ts';
import { LAYOUT_WORDS } from './layout-words.ts';
import type { LayoutSearch } from './view-state.ts';
import type { Workbench } from './workbench.ts';

/** Runs at most one search, beside all else: the pipeline and the window go on. */
export class LayoutSearchHand {
  readonly #bench: Workbench;
  readonly #start: typeof startSheetSearch;
  #run: SheetSearchRun | null = null;
  #of: readonly unknown[] = [];
  /** Time looked before it was gone on with, and since when it looks, ms. */
  #before = 0;
  #since = 0;

  constructor(bench: Workbench, start: typeof startSheetSearch = startSheetSearch) {
    this.#bench = bench;
    this.#start = start;
  }

  /** Begins anew; what was found before is put away. */
  begin(): void {
    const { project, bench } = this.#bench;
    const { pieces } = bench;
    if (project === null || pieces === null || bench.sheets === null) return;
    this.#run?.end();
    this.#of = subjectOf(this.#bench);
    this.#since = performance.now();
    this.#before = 0;
    this.#show({ state: 'looking', first: null, best: null, seconds: 0, moves: 0 });
    this.#bench.say(LAYOUT_WORDS.spoken.begun);
    this.#run = this.#start(
      {
        project,
        pieces: [...pieces.pieces, ...(pieces.others ?? [])],
        beside: [...(pieces.strips ?? []), ...(pieces.plain ?? [])],
        templates: pieces.templates,
      },
      {
        found: (best) => this.#change({ best, first: this.#state?.first ?? best.figures }),
        looked: (moves) => this.#change({ moves }),
        ended: (isBroken) => (isBroken ? this.#breakOff() : this.stop()),
      },
    );
  }

  /** Ends it; what was found stands. */
  stop(): void {
    this.#run?.end();
    this.#run = null;
    if (this.#state?.state !== 'looking') return;
    this.#change({ state: 'stopped' });
    this.#bench.say(LAYOUT_WORDS.spoken.stopped);
  }

  /** No thread is left that could look. */
  #breakOff(): void {
    this.#run = null;
    this.#change({ state: 'broken' });
    this.#bench.say(LAYOUT_WORDS.broken);
  }

  /** Makes what was found the layout of the job, as one change. */
  take(): void {
    const best = this.#state?.best;
    if (best == null || this.#state?.state === 'outdated') return;
    this.putAway();
    this.#bench.run(keepLayout(best.kept));
    this.#bench.say(LAYOUT_WORDS.spoken.taken);
  }

  putAway(): void {
    this.#run?.end();
    this.#run = null;
    this.#bench.setView({ layoutSearch: null });
  }

  /** Ends a search whose job changed. */
  follow(): void {
    const state = this.#state;
    if (state === null || state.state === 'outdated') return;
    const now = subjectOf(this.#bench);
    if (now.every((one, i) => one === this.#of[i])) return;
    this.#run?.end();
    this.#run = null;
    this.#change({ state: 'outdated', best: null });
    this.#bench.say(LAYOUT_WORDS.outdated);
  }

  get #state(): LayoutSearch | null {
    return this.#bench.view.layoutSearch;
  }

  #change(patch: Partial<LayoutSearch>): void {
    const state = this.#state;
    if (state === null) return;
    const seconds = state.state === 'looking' ? (this.#before + performance.now() - this.#since) / 1000 : state.seconds;
    this.#show({ ...state, seconds, ...patch });
  }

  #show(layoutSearch: LayoutSearch): void {
    this.#bench.setView({ layoutSearch });
  }
}

/** All that a layout depends on: where one of these is another, what was found for the old ones is worth nothing. */
const subjectOf = ({
  project,
  bench,
}: {
  readonly project: Workbench['project'];
  readonly bench: Bench;
}): readonly unknown[] => [project?.foams, project?.stock, bench.pieces?.templates];

/** True where what was found beats what it began with. */
export function hasBetter({ first, best }: LayoutSearch): boolean {
  if (first === null || best === null) return false;
  const { unlaid, bought, sheets, lastMm } = best.figures;
  return unlaid !== first.unlaid || bought !== first.bought || sheets !== first.sheets || lastMm !== first.lastMm;
}
