import type { GivenScale } from '../model/source-model.ts';
import type { CoreWish, DowelWish, StackWish } from '../model/stack.ts';
import { WrongUsage } from './exit.ts';
import { decimal, given, number, oneOf } from './option-values.ts';

/** What the command line said of a stack. */
export interface StackChoices {
  /** A model, or a turned profile instead. */
  readonly input?: string;
  readonly turned?: readonly { readonly lengthMm: number; readonly radiusMm: number }[];
  readonly scale?: GivenScale;
  readonly wish: StackWish;
  readonly out?: string;
  readonly json: boolean;
}

const STACK_OPTIONS: readonly string[] = [
  ...['sheets', 'axis', 'seat', 'dowel', 'core-hole', 'core-at', 'clearance', 'hole-margin', 'turned', 'open'],
  ...['rule', 'wall', 'out', 'json', 'unit', 'size'],
];

/** Options of stack alone. */
export const STACK_ONLY = [
  ...([
    'sheets',
    'axis',
    'seat',
    'dowel',
    'core-hole',
    'core-at',
    'clearance',
    'hole-margin',
    'turned',
    'open',
  ] as const),
];

/** Wider than its pipe a hole is by this, and so much foam stays round it, mm, where nothing else is said. */
const USUAL_CLEARANCE_MM = 0.3;
const USUAL_MARGIN_MM = 5;

const MOST_MM = 1e5;

/**
 * `stack MODEL --sheets 10,6 …`.
 * @param inputs  words that stand after `stack`.
 * @throws WrongUsage
 */
export function stackChoicesFrom(
  inputs: readonly string[],
  values: Readonly<Record<string, unknown>>,
  scale: GivenScale | undefined,
): StackChoices {
  const stray = Object.keys(values).find((name) => !STACK_OPTIONS.includes(name));
  if (stray !== undefined) throw new WrongUsage(`--${stray} is no option of stack.`);
  const text = (name: string): string | undefined => {
    const value = values[name];
    return typeof value === 'string' ? value : undefined;
  };
  const turned = turnedFrom(text('turned'));
  if (inputs.length > 1)
    throw new WrongUsage(`stack takes one file, but ${inputs.length} were given: ${inputs.join(', ')}.`);
  const input = inputs[0] as string | undefined;
  if ((input === undefined) === (turned === undefined))
    throw new WrongUsage('stack needs a model, or a profile with --turned: stack MODEL --sheets 10,6.');
  const sheets = text('sheets');
  if (sheets === undefined) throw new WrongUsage('stack needs the sheets in hand: add --sheets 10,6 in mm.');
  const dowelMm = number('dowel', text('dowel'), { over: 0, most: 200 });
  const coreMm = number('core-hole', text('core-hole'), { over: 0, most: MOST_MM });
  const coreAt = text('core-at');
  if (coreAt !== undefined && coreMm === undefined)
    throw new WrongUsage('--core-at belongs to a core: say how thick with --core-hole 32.');
  const openAt = oneOf('open', text('open'), ['bottom', 'top', 'both']);
  if (openAt !== undefined && text('wall') === undefined)
    throw new WrongUsage('--open belongs to a hollow: say how thick its wall is with --wall 20.');
  const around = {
    clearanceMm: number('clearance', text('clearance'), { least: 0, most: 50 }) ?? USUAL_CLEARANCE_MM,
    marginMm: number('hole-margin', text('hole-margin'), { least: 0, most: 200 }) ?? USUAL_MARGIN_MM,
  };
  const dowels: DowelWish | undefined = dowelMm === undefined ? undefined : { diameterMm: dowelMm, ...around };
  const core: CoreWish | undefined =
    coreMm === undefined ? undefined : { diameterMm: coreMm, ...around, ...coreAtFrom(coreAt, turned !== undefined) };
  return {
    ...given('input', input),
    ...given('turned', turned),
    ...given('scale', scale),
    ...given('out', text('out')),
    json: values.json === true,
    wish: {
      axis: axisFrom(text('axis') ?? 'z'),
      rule: oneOf('rule', ruleWord(values.rule), ['larger', 'middle', 'smaller']) ?? 'larger',
      sheetsMm: numbers('sheets', sheets, '10,6').map((one) => {
        if (!(one >= 0.1 && one <= 500))
          throw new WrongUsage('--sheets takes thicknesses from 0.1 to 500 mm, as 10,6.');
        return one;
      }),
      seat: oneOf('seat', text('seat'), ['bottom', 'middle', 'top']) ?? 'bottom',
      ...given('dowels', dowels),
      ...given('core', core),
      ...given('openAt', openAt),
      ...given('wallMm', number('wall', text('wall'), { over: 0, most: 1000 })),
    },
  };
}

/** `--rule` may be repeated for make; here it is one word. */
function ruleWord(value: unknown): string | undefined {
  if (!Array.isArray(value)) return undefined;
  if (value.length > 1) throw new WrongUsage('stack takes one --rule: larger, middle or smaller.');
  return String(value[0]);
}

/** A turned solid has its core in its own axis. */
function coreAtFrom(word: string | undefined, isTurned: boolean): Pick<CoreWish, 'at'> {
  if (word === undefined) return isTurned ? { at: { x: 0, y: 0 } } : {};
  const [x, y, ...rest] = numbers('core-at', word, '0,12.5');
  if (rest.length > 0 || (y as number | undefined) === undefined)
    throw new WrongUsage('--core-at takes two numbers of mm across the axis, as 0,12.5.');
  return { at: { x, y } };
}

function axisFrom(word: string): StackWish['axis'] {
  const named = /^(-?)([xyz])$/.exec(word);
  if (named !== null) {
    const one = named[1] === '-' ? -1 : 1;
    return { x: named[2] === 'x' ? one : 0, y: named[2] === 'y' ? one : 0, z: named[2] === 'z' ? one : 0 };
  }
  const [x, y, z, ...rest] = word.split(',').map(decimal);
  if (rest.length > 0 || ![x, y, z].every(Number.isFinite) || Math.hypot(x, y, z) === 0)
    throw new WrongUsage('--axis takes x, y, z, -x, -y, -z or a direction as 1,0,2.');
  return { x, y, z };
}

function numbers(name: string, word: string, example: string): readonly number[] {
  const list = word.split(',').map(decimal);
  if (!list.every(Number.isFinite))
    throw new WrongUsage(`--${name} takes numbers of mm with commas between, as ${example}.`);
  return list;
}

/** `0:30,50:45,120:20`: lengths and radii. */
function turnedFrom(word: string | undefined): StackChoices['turned'] {
  if (word === undefined) return undefined;
  return word.split(',').map((pair) => {
    const [lengthMm, radiusMm, ...rest] = pair.split(':').map(decimal);
    if (rest.length > 0 || !Number.isFinite(lengthMm) || !Number.isFinite(radiusMm))
      throw new WrongUsage('--turned takes length:radius in mm with commas between, as 0:30,50:45,120:20.');
    return { lengthMm, radiusMm };
  });
}
