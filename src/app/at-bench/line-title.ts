import type { Bench } from '../bench-state.ts';
import { AT_BENCH_WORDS } from './at-bench-words.ts';
import type { WorkLine } from './work-order.ts';

/** What is to be done, in a few words. */
export function titleOf(line: WorkLine, { paper }: Bench): string {
  const words = AT_BENCH_WORDS;
  switch (line.what) {
    case 'pages':
      return words.pages.title(paper?.pages.length ?? 0);
    case 'square':
    case 'fit':
      return words[line.what].title;
    case 'cut':
    case 'bevel':
    case 'form':
      return words[line.what].title(line.piece.number, line.piece.name);
    case 'glue':
      return words.glue.title(line.step.number, line.words.title);
    case 'part':
      return words.part.title(line.work.name, line.at + 1, line.work.steps.length);
    case 'finish':
      return line.words.title;
  }
}
