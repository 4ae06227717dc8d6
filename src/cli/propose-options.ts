import { resolve } from 'node:path';
import type { HiddenSide } from '../model/hidden-side.ts';
import type { ScaleChoice } from '../model/source-model.ts';
import { HIDDEN_CHOICES } from '../project/hidden-commands.ts';
import type { LimitsKind } from '../pipeline/seam-ground.ts';
import { WrongUsage } from './exit.ts';
import { given, number, oneOf } from './option-values.ts';
import { MOST_THICK_MM } from './wall-option.ts';

/** When to stop looking: by the clock, counted from the start of the program, or after so many changes tried, which is the same everywhere. */
export type ProposeEnd = { readonly seconds: number } | { readonly moves: number };

/** What the command line said of a proposal of seams. */
export interface ProposeChoices {
  readonly input: string;
  /** Seam file to write. */
  readonly out: string;
  /** Report to write. */
  readonly report?: string;
  /** Seam file to begin from. */
  readonly from?: string;
  readonly scale?: ScaleChoice;
  readonly thicknessMm?: number;
  readonly kind: LimitsKind;
  readonly limitPct?: number;
  readonly pieces: 'few' | 'simple';
  /** True for seams alike on both sides. */
  readonly isMirrored: boolean;
  /** Side on which seams cost less; null: none, whatever the project says. */
  readonly hide?: HiddenSide | null;
  readonly end: ProposeEnd;
  readonly seed: number;
}

/** Options of `seams` that no other command has. */
export const PROPOSE_ONLY = [
  'report',
  'from',
  'limits',
  'limit',
  'pieces',
  'mirror',
  'hide',
  'seconds',
  'moves',
  'seed',
] as const;

/** Options of `seams` in all. */
const PROPOSE_OPTIONS: readonly string[] = [...PROPOSE_ONLY, 'out', 'unit', 'size', 'thickness'];

/** Looked for so long unless told otherwise, s: most of what a minute finds. */
const USUAL_SECONDS = 10;
const MOST_SECONDS = 86_400;
const MOST_MOVES = 1e9;
const MOST_SEED = 2 ** 32 - 1;
/** No foam is pulled longer than this, per cent. */
const MOST_LIMIT_PCT = 100;

/** @throws WrongUsage */
export function proposeChoicesFrom(
  input: string,
  values: Readonly<Record<string, string | boolean | string[] | undefined>>,
  scale: ScaleChoice | undefined,
): ProposeChoices {
  const stray = Object.keys(values).find((name) => !PROPOSE_OPTIONS.includes(name));
  if (stray !== undefined) throw new WrongUsage(`--${stray} is no option of seams.`);
  const word = (name: string): string | undefined => {
    const value = values[name];
    return typeof value === 'string' ? value : undefined;
  };
  const out = word('out');
  if (out === undefined) throw new WrongUsage('seams needs a file to write to: add --out FILE.json.');
  const report = word('report');
  // Letters of either case may be one name, and one of the two files would be lost.
  if (report !== undefined && resolve(report).toLowerCase() === resolve(out).toLowerCase())
    throw new WrongUsage('--out and --report need a file each.');
  const kind = oneOf('limits', word('limits'), ['foam', 'reference']) ?? 'foam';
  const thicknessMm = number('thickness', word('thickness'), { over: 0, most: MOST_THICK_MM });
  if (kind === 'reference' && thicknessMm !== undefined)
    throw new WrongUsage('--limits reference measures without thickness: leave --thickness out.');
  if (kind === 'reference' && values['mirror'] === true)
    throw new WrongUsage('--limits reference looks for the shortest seams, alike or not: leave --mirror out.');
  const hide = oneOf('hide', word('hide'), ['nowhere', ...HIDDEN_CHOICES]);
  if (kind === 'reference' && hide !== undefined)
    throw new WrongUsage('--limits reference looks for the shortest seams, seen or not: leave --hide out.');
  return {
    input,
    out,
    ...given('report', report),
    ...given('from', word('from')),
    ...given('scale', scale),
    ...given('thicknessMm', thicknessMm),
    kind,
    ...given('limitPct', number('limit', word('limit'), { over: 0, most: MOST_LIMIT_PCT })),
    pieces: oneOf('pieces', word('pieces'), ['few', 'simple']) ?? 'few',
    isMirrored: values['mirror'] === true,
    ...given('hide', hide === 'nowhere' ? null : hide),
    end: endFrom(word('seconds'), word('moves')),
    seed: whole('seed', word('seed'), MOST_SEED) ?? 1,
  };
}

function endFrom(secondsWord: string | undefined, movesWord: string | undefined): ProposeEnd {
  if (secondsWord !== undefined && movesWord !== undefined)
    throw new WrongUsage('give --seconds or --moves, not both.');
  const moves = whole('moves', movesWord, MOST_MOVES);
  if (moves !== undefined) return { moves };
  return { seconds: number('seconds', secondsWord, { over: 0, most: MOST_SECONDS }) ?? USUAL_SECONDS };
}

function whole(name: string, word: string | undefined, most: number): number | undefined {
  const value = number(name, word, { least: 0, most });
  if (value !== undefined && !Number.isInteger(value))
    throw new WrongUsage(`--${name} takes a whole number, not ${word}.`);
  return value;
}
