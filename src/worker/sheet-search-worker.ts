/// <reference lib="webworker" />
import { SheetCrew } from '../pipeline/sheet-crew.ts';
import type { SheetTask } from '../steps/nest/lay-on-sheets.ts';
import { foundLayout } from './found-layout.ts';
import type { FromSheetSearch, ToSheetSearch } from './sheet-search-api.ts';

/** Time between two looks for what others found, and at least between two tellings, ms. */
const STRETCH_MS = 40;
const TELL_MS = 300;

let search: SheetCrew | null = null;

const tell = (message: FromSheetSearch): void => self.postMessage(message);

self.onmessage = ({ data }: MessageEvent<ToSheetSearch<SheetTask>>) => {
  if (data.kind === 'offer') return search?.offer(data.kept);
  search = new SheetCrew(data.task, data.seed);
  tell({ kind: 'found', layout: foundLayout(search), moves: 0 });
  void goOn(search);
};

/** Looks in short stretches and tells what is better; the thread is ended from outside. */
async function goOn(crew: SheetCrew): Promise<void> {
  let [told, toldAt] = [crew.found, performance.now()];
  while (!crew.isDone) {
    const end = performance.now() + STRETCH_MS;
    while (performance.now() < end && !crew.isDone) crew.step(1);
    if (performance.now() - toldAt >= TELL_MS) {
      tell(
        crew.found > told
          ? { kind: 'found', layout: foundLayout(crew), moves: crew.moves }
          : { kind: 'looked', moves: crew.moves },
      );
      [told, toldAt] = [crew.found, performance.now()];
    }
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
  tell({ kind: 'found', layout: foundLayout(crew), moves: crew.moves });
  tell({ kind: 'ended' });
}
