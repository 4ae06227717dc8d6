import { seededRandom } from '../../src/base/random.ts';

/** Lines that stand together in one draw. */
const STRETCH_LINES = 12;

/** How often stretches are drawn anew to tell how far a score may be off. */
const DRAWS = 2000;

export const linesOf = (text: string): number => text.split('\n').length;

/** A change as the tool reports it, with the file it was made in. */
export interface Mutant {
  readonly file: string;
  /** Of the whole file. */
  readonly source: string;
  readonly status: string;
  readonly mutatorName: string;
  readonly replacement?: string;
  readonly location: { readonly start: { readonly line: number; readonly column: number } };
}

export interface Score {
  readonly noticed: number;
  readonly overlooked: readonly Mutant[];
  readonly unreached: readonly Mutant[];
  /** Changes that say nothing. */
  readonly left: number;
}

/**
 * Stretches of lines, `FILE:FROM-TO`, that hold a share of all lines.
 * @param files  with how many lines each has
 * @param share  above 0, up to 1
 */
export function drawStretches(
  files: readonly { readonly file: string; readonly count: number }[],
  share: number,
  seed: number,
): readonly string[] {
  const all = files.flatMap(({ file, count }) =>
    Array.from({ length: Math.ceil(count / STRETCH_LINES) }, (_, i) => {
      const from = STRETCH_LINES * i + 1;
      return { text: `${file}:${from}-${Math.min(count, from + STRETCH_LINES - 1)}`, key: 0 };
    }),
  );
  const draw = seededRandom(seed);
  for (const one of all) one.key = draw();
  const most = Math.max(1, Math.round(share * all.length));
  return all
    .sort((a, b) => a.key - b.key)
    .slice(0, most)
    .map(({ text }) => text)
    .sort();
}

const NOTICED = new Set(['Killed', 'Timeout']);

/** Which changes were noticed, which not, and how many say nothing. */
export function scoreOf(mutants: readonly Mutant[]): Score {
  const noticed = mutants.filter(({ status }) => NOTICED.has(status)).length;
  const overlooked = mutants.filter(({ status }) => status === 'Survived');
  const unreached = mutants.filter(({ status }) => status === 'NoCoverage');
  return { noticed, overlooked, unreached, left: mutants.length - noticed - overlooked.length - unreached.length };
}

/** Between which scores 95 of 100 draws of as many stretches lie (bootstrap over stretches: changes that stand together live and die together). */
export function intervalOf(
  mutants: readonly Mutant[],
  stretches: readonly string[],
): { readonly low: number; readonly high: number } {
  const groups = stretches
    .map((text) => {
      const [file, range] = text.split(':');
      const [from, to] = (range ?? '1-1000000').split('-').map(Number);
      const { noticed, overlooked, unreached } = scoreOf(
        mutants.filter(({ file: own, location: { start } }) => own === file && start.line >= from && start.line <= to),
      );
      return { noticed, all: noticed + overlooked.length + unreached.length };
    })
    .filter(({ all }) => all > 0);
  if (groups.length === 0) return { low: 0, high: 1 };
  const draw = seededRandom(1);
  const scores = Array.from({ length: DRAWS }, () => {
    let [noticed, all] = [0, 0];
    for (let i = 0; i < groups.length; i += 1) {
      const one = groups[Math.floor(draw() * groups.length)];
      noticed += one.noticed;
      all += one.all;
    }
    return noticed / all;
  }).sort((a, b) => a - b);
  return { low: scores[Math.floor(0.025 * DRAWS)], high: scores[Math.ceil(0.975 * DRAWS) - 1] };
}
