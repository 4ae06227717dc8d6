import { WrongUsage } from './exit.ts';
import { given, number } from './option-values.ts';

/** When to stop looking: by the clock, counted from the start of the program, or after so many moves, which is the same everywhere. */
export type NestEnd = { readonly seconds: number } | { readonly moves: number };

/** What the command line said of a strip task. */
export interface NestChoices {
  readonly input: string;
  /** Layout to write. */
  readonly out?: string;
  readonly end: NestEnd;
  readonly seed: number;
}

const NEST_OPTIONS: readonly string[] = ['seconds', 'moves', 'seed', 'out'];

/** Looked for so long unless told otherwise, s. */
const USUAL_SECONDS = 10;
const MOST_SECONDS = 86_400;
const MOST_MOVES = 1e12;
const MOST_SEED = 2 ** 32 - 1;

/** @throws WrongUsage */
export function nestChoicesFrom(
  input: string,
  values: Readonly<Record<string, string | boolean | string[] | undefined>>,
): NestChoices {
  const stray = Object.keys(values).find((name) => !NEST_OPTIONS.includes(name));
  if (stray !== undefined) throw new WrongUsage(`--${stray} is no option of nest.`);
  const word = (name: string): string | undefined => {
    const value = values[name];
    return typeof value === 'string' ? value : undefined;
  };
  const [seconds, moves] = [word('seconds'), whole('moves', word('moves'), MOST_MOVES)];
  if (seconds !== undefined && moves !== undefined) throw new WrongUsage('give --seconds or --moves, not both.');
  return {
    input,
    ...given('out', word('out')),
    end:
      moves !== undefined
        ? { moves }
        : { seconds: number('seconds', seconds, { least: 0, most: MOST_SECONDS }) ?? USUAL_SECONDS },
    seed: whole('seed', word('seed'), MOST_SEED) ?? 1,
  };
}

function whole(name: string, word: string | undefined, most: number): number | undefined {
  const value = number(name, word, { least: 0, most });
  if (value !== undefined && !Number.isInteger(value))
    throw new WrongUsage(`--${name} takes a whole number, not ${word}.`);
  return value;
}
