import type { FoamPiece } from '../model/foam-piece.ts';
import type { CutBeside } from '../model/plain-piece.ts';
import type { Template } from '../model/template.ts';
import { sheetTaskOf } from '../pipeline/sheet-task.ts';
import type { Project } from '../project/project.ts';
import type {
  FoundLayout,
  FromSheetSearch,
  LayoutFigures,
  SheetSearchHearing,
  SheetSearchRun,
} from './sheet-search-api.ts';

/** What is laid on sheets, as the bench has it. */
export interface SheetSearchAsk {
  readonly project: Pick<Project, 'foams' | 'stock'>;
  readonly pieces: readonly FoamPiece[];
  readonly beside: readonly CutBeside[];
  /** One for each piece, then one for each thing beside them. */
  readonly templates: readonly Template[];
}

/** A thread of a search: the browser's, or one that a test puts in its place. */
export interface SheetSearchThread {
  post(message: unknown): void;
  end(): void;
}

/** Starts one. @param failed it will say nothing any more. */
export type StartSheetSearch = (heard: (message: FromSheetSearch) => void, failed: () => void) => SheetSearchThread;

/** Threads of one search: the window and the pipeline keep a core. */
const MOST_THREADS = 4;

/** Starts a search of several threads, each looking elsewhere; what one finds goes on from there in all. */
export function startSheetSearch(
  { project, pieces, beside, templates }: SheetSearchAsk,
  hearing: SheetSearchHearing,
  start: StartSheetSearch = startBrowserSearch,
  threads = Math.min(MOST_THREADS, Math.max(1, navigator.hardwareConcurrency - 1)),
): SheetSearchRun {
  const task = sheetTaskOf(project, [...pieces, ...beside], templates);
  const running = new Map<number, SheetSearchThread>();
  const moves = new Array<number>(threads).fill(0);
  let best: FoundLayout | null = null;
  let broken = 0;
  const over = (thread: number, isBroken = false): void => {
    if (!running.has(thread)) return;
    running.get(thread)?.end();
    running.delete(thread);
    if (isBroken) broken += 1;
    if (running.size === 0) hearing.ended(broken === threads);
  };
  const hear = (thread: number, message: FromSheetSearch): void => {
    if (!running.has(thread)) return;
    if (message.kind === 'ended') return over(thread);
    moves[thread] = message.moves;
    if (message.kind === 'found' && (best === null || isBetter(message.layout.figures, best.figures))) {
      best = message.layout;
      for (const [other, one] of running) if (other !== thread) one.post({ kind: 'offer', kept: best.kept });
      hearing.found(best);
    }
    hearing.looked(moves.reduce((sum, count) => sum + count, 0));
  };
  for (let thread = 0; thread < threads; thread += 1) {
    running.set(
      thread,
      start(
        (message) => hear(thread, message),
        () => over(thread, true),
      ),
    );
  }
  for (const [thread, one] of running) one.post({ kind: 'begin', task, seed: thread + 1 });
  return {
    end: () => {
      for (const thread of running.values()) thread.end();
      running.clear();
    },
  };
}

/** The first figure that differs decides; less is better. */
export function isBetter(one: LayoutFigures, other: LayoutFigures): boolean {
  for (const key of ['unlaid', 'bought', 'sheets', 'lastMm'] as const)
    if (one[key] !== other[key]) return one[key] < other[key];
  return false;
}

const startBrowserSearch: StartSheetSearch = (heard, failed) => {
  const worker = new Worker(new URL('./sheet-search-worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = (event: MessageEvent<FromSheetSearch>) => heard(event.data);
  worker.onerror = (event) => {
    event.preventDefault();
    failed();
  };
  worker.onmessageerror = failed;
  return {
    post: (message) => worker.postMessage(message),
    end: () => worker.terminate(),
  };
};
