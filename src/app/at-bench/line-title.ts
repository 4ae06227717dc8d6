import type { Bench } from '../bench-state.ts';
import { toldText } from '../finding-text.ts';
import { AT_BENCH_WORDS } from './at-bench-words.ts';
import type { WorkLine } from './work-order.ts';

/** What is to be done. */
export interface LineTitle {
  /** A word or two, to be read from afar. */
  readonly far: string;
  /** What it is done to; empty where that is said. */
  readonly near: string;
}

/** So many seams of a step are named; of more only its number is told. */
const MOST_LETTERS = 3;

export function titleOf(line: WorkLine, { paper }: Bench): LineTitle {
  const words = AT_BENCH_WORDS;
  switch (line.what) {
    case 'pages':
      return { far: words.pages.title(paper?.pages.length ?? 0), near: '' };
    case 'square':
    case 'fit':
      return { far: words[line.what].title, near: '' };
    case 'cut':
    case 'bevel':
    case 'form':
      return { far: words[line.what].title(line.piece.number), near: line.piece.name };
    case 'glue': {
      const { step } = line;
      const letters = [...new Set(step.runs.map(({ letter }) => letter))];
      const isNamed = letters.length > 0 && letters.length <= MOST_LETTERS;
      return {
        far: isNamed ? words.glue.seams(letters) : words.glue.step(step.number),
        near: words.glue.title(step.number, toldText(line.words.title, 'mm')),
      };
    }
    case 'part':
      return { far: words.part.title(line.at + 1, line.work.steps.length), near: line.work.name };
    case 'finish':
      return { far: words.finish[line.work], near: line.words.title };
  }
}
