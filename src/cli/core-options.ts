import {
  GOLDEN_TURN_DEG,
  USUAL_WEIGHTS,
  type BuildUpWish,
  type CapWish,
  type CorePlace,
  type ProfileCorner,
  type StavesWish,
  type WindingWish,
} from '../pipeline/build-up.ts';
import { readProfile } from '../project/core-text.ts';
import { USUAL_ROOM_MM, USUAL_WOUND_MM } from '../project/new-core.ts';
import { WrongUsage } from './exit.ts';
import { decimal, given, number, oneOf } from './option-values.ts';

/** What the command line said of a core; its diameter may be that of a pipe that is still to be looked up. */
export interface CoreOptions {
  readonly list: boolean;
  readonly pipe?: string;
  readonly wish?: BuildUpWish;
  readonly out?: string;
  readonly json: boolean;
}

/** Options of core alone. */
export const CORE_ONLY = [
  ...(['pipe', 'diameter', 'length', 'profile', 'wind', 'skin', 'staves', 'start-cap', 'end-cap'] as const),
  ...(['glue-room', 'seam-turn', 'wrap-price', 'sheet-size'] as const),
];

const CORE_OPTIONS: readonly string[] = [...CORE_ONLY, 'place', 'sheets', 'rule', 'neutral', 'out', 'json', 'list'];

/** How far a skin stands off smooth stretches, mm, where nothing else is said. */
const USUAL_DEVIATION_MM = 0.5;

const MOST_MM = 1e5;

/** `core --pipe "PVC 32" --length 900 --profile 0:20,300:24 --sheets 10,6,2 …`. @throws WrongUsage */
export function coreOptionsFrom(words: readonly string[], values: Readonly<Record<string, unknown>>): CoreOptions {
  const stray = Object.keys(values).find((name) => !CORE_OPTIONS.includes(name));
  if (stray !== undefined) throw new WrongUsage(`--${stray} is no option of core.`);
  if (words.length > 0) throw new WrongUsage(`core takes no file, but ${words.join(', ')} was given.`);
  const text = (name: string): string | undefined => {
    const value = values[name];
    return typeof value === 'string' ? value : undefined;
  };
  const texts = (name: string): readonly string[] =>
    Array.isArray(values[name]) ? (values[name] as readonly string[]) : [];
  const json = values.json === true;
  if (values.list === true) return { list: true, json };
  const [pipe, diameter, long] = [
    text('pipe'),
    number('diameter', text('diameter'), { over: 0, most: 2000 }),
    text('length'),
  ];
  if ((pipe === undefined) === (diameter === undefined))
    throw new WrongUsage('core needs --pipe NAME or --diameter MM; core --list gives the pipes.');
  const overallMm = number('length', long, { over: 0, most: MOST_MM });
  if (overallMm === undefined) throw new WrongUsage('core needs its length from end to end: add --length 900 in mm.');
  const neutralFraction = number('neutral', text('neutral'), { least: 0, most: 1 }) ?? 0.5;
  const size = sizeFrom(text('sheet-size'));
  const sheetsText = text('sheets');
  const profile = profileFrom(text('profile'));
  if (sheetsText === undefined && profile.length > 0)
    throw new WrongUsage('core needs the sheets in hand for its profile: add --sheets 10,6,2 in mm.');
  const skinMm = number('skin', text('skin'), { over: 0, most: 50 });
  return {
    list: false,
    ...given('pipe', pipe),
    ...given('out', text('out')),
    json,
    wish: {
      core: {
        diameterMm: diameter ?? 0,
        overallMm,
        glueRoomMm: number('glue-room', text('glue-room'), { least: 0, most: 20 }) ?? USUAL_ROOM_MM,
        ...given('startCap', capFrom('start-cap', text('start-cap'))),
        ...given('endCap', capFrom('end-cap', text('end-cap'))),
        places: texts('place').map(placeFrom),
      },
      profile,
      sheets: (sheetsText === undefined ? [] : numbers('sheets', sheetsText, '10,6,2')).map((thicknessMm) => ({
        thicknessMm,
        neutralFraction,
        ...given('sizeMm', size),
      })),
      rule: oneOf('rule', ruleWord(texts('rule')), ['sand', 'middle', 'fill']) ?? 'sand',
      weights: {
        ...USUAL_WEIGHTS,
        ...given('wrap', number('wrap-price', text('wrap-price'), { least: 0, most: 1e6 })),
      },
      seamTurnDeg: number('seam-turn', text('seam-turn'), { least: 0, most: 360 }) ?? GOLDEN_TURN_DEG,
      ...given('skin', skinMm === undefined ? undefined : { sheetMm: skinMm, deviationMm: USUAL_DEVIATION_MM }),
      staves: texts('staves').map(stavesFrom),
      windings: texts('wind').map((word) => windingFrom(word, profile, overallMm)),
    },
  };
}

/** `--rule` may be repeated for make; here it is one word. */
function ruleWord(words: readonly string[]): string | undefined {
  if (words.length > 1) throw new WrongUsage('core takes one --rule: sand, middle or fill.');
  return words[0];
}

function numbers(name: string, word: string, example: string): readonly number[] {
  const list = word.split(',').map(decimal);
  if (!list.every(Number.isFinite))
    throw new WrongUsage(`--${name} takes numbers of mm with commas between, as ${example}.`);
  return list;
}

function sizeFrom(word: string | undefined): readonly [number, number] | undefined {
  if (word === undefined) return undefined;
  const [a, b, ...rest] = word.split('x').map(decimal);
  if (rest.length > 0 || !(a > 0 && b > 0 && a <= MOST_MM && b <= MOST_MM))
    throw new WrongUsage('--sheet-size takes two lengths in mm, as 1000x2000.');
  return [a, b];
}

/** @throws WrongUsage */
function profileFrom(word: string | undefined): readonly ProfileCorner[] {
  if (word === undefined) return [];
  const read = readProfile(word);
  if (!read.ok) throw new WrongUsage(`--profile: ${read.problem.text}`);
  return read.value;
}

/** `10`, `10x2`: discs of sheet; `bought=5`: a cap that stands off so much. */
function capFrom(name: string, word: string | undefined): CapWish | undefined {
  if (word === undefined) return undefined;
  const bought = /^bought=(.+)$/.exec(word);
  if (bought !== null) {
    const standsOffMm = decimal(bought[1]);
    if (standsOffMm >= 0 && standsOffMm <= MOST_MM) return { kind: 'bought', standsOffMm };
  } else {
    const [sheetMm, count = 1, ...rest] = word.split('x').map(decimal) as [number, number?, ...number[]];
    if (rest.length === 0 && sheetMm > 0 && Number.isInteger(count) && count > 0)
      return { kind: 'discs', sheetMm, count };
  }
  throw new WrongUsage(
    `--${name} takes a sheet in mm as 10, several of it as 10x2, or bought=5: how far it stands off.`,
  );
}

/** `head=700-860`, `ring=20-40,foam`. */
function placeFrom(word: string): CorePlace {
  const [, name, fromWord, toWord, onWord] = /^([^=]+)=([\d.]+)-([\d.]+)(?:,(\w+))?$/.exec(word) ?? [];
  const [fromMm, toMm] = [decimal(fromWord ?? ''), decimal(toWord ?? '')];
  if (!Number.isFinite(fromMm) || !Number.isFinite(toMm))
    throw new WrongUsage(
      '--place looks like head=700-860: a name, and where it begins and ends in mm; with ,foam it sits on the foam.',
    );
  return { name, fromMm, toMm, on: oneOf('place', onWord, ['core', 'foam'], 'after its comma ') ?? 'core' };
}

/** `300-350=8,10`: from, to, how many, sheet. */
function stavesFrom(word: string): StavesWish {
  const [, fromWord, toWord, countWord, sheetWord] = /^([\d.]+)-([\d.]+)=(\d+),([\d.]+)$/.exec(word) ?? [];
  const [fromMm, toMm, count, sheetMm] = [fromWord, toWord, countWord, sheetWord].map((one) =>
    decimal((one as string | undefined) ?? ''),
  );
  if (![fromMm, toMm, count, sheetMm].every(Number.isFinite))
    throw new WrongUsage(
      '--staves looks like 300-350=8,10: from and to in mm, how many, and how thick their sheet is.',
    );
  return { fromMm, toMm, count, sheetMm };
}

const WIND_WORDS = [
  'width',
  'pitch',
  'overlap',
  'gap',
  'from',
  'to',
  'thick',
  'neutral',
  'starts',
  'hand',
  'keep',
  'cut',
  'crossed',
];

/** `width=25,pitch=22,from=0,to=300 …`; over all of the profile where nothing else is said. */
function windingFrom(word: string, profile: readonly ProfileCorner[], overallMm: number): WindingWish {
  const said = new Map<string, string>();
  for (const pair of word.split(',')) {
    const [name, value, ...rest] = pair.split('=');
    if (!WIND_WORDS.includes(name) || (value as string | undefined) === undefined || rest.length > 0 || said.has(name))
      throw new WrongUsage(
        `--wind looks like width=25,pitch=22; it takes ${WIND_WORDS.join(', ')}, each once, not ${pair}.`,
      );
    said.set(name, value);
  }
  const figure = (name: string): number | undefined => {
    const value = said.get(name);
    if (value === undefined) return undefined;
    const read = decimal(value);
    if (!Number.isFinite(read))
      throw new WrongUsage(`--wind ${name}= takes a number, not ${value === '' ? 'nothing' : value}.`);
    return read;
  };
  const [widthMm, pitchMm, overlap, gap] = ['width', 'pitch', 'overlap', 'gap'].map(figure);
  if (widthMm === undefined) throw new WrongUsage('--wind needs the width of the strip: width=25.');
  if ([pitchMm, overlap, gap].filter((one) => one !== undefined).length > 1)
    throw new WrongUsage('--wind takes one of pitch, overlap and gap.');
  const overlapMm = overlap ?? (gap === undefined ? 0 : -gap);
  return {
    fromMm: figure('from') ?? profile.at(0)?.atMm ?? 0,
    toMm: figure('to') ?? profile.at(-1)?.atMm ?? overallMm,
    widthMm,
    thicknessMm: figure('thick') ?? USUAL_WOUND_MM,
    neutralFraction: figure('neutral') ?? 0.5,
    by: pitchMm === undefined ? { overlapMm } : { pitchMm },
    keep:
      oneOf('wind', said.get('keep'), ['pitch', 'overlap', 'straight'], 'keep=') ??
      (pitchMm === undefined ? 'overlap' : 'pitch'),
    starts: figure('starts') ?? 1,
    hand: oneOf('wind', said.get('hand'), ['right', 'left'], 'hand=') ?? 'right',
    cut: oneOf('wind', said.get('cut'), ['straight', 'curved'], 'cut=') ?? 'straight',
    crossed: (oneOf('wind', said.get('crossed'), ['yes', 'no'], 'crossed=') ?? 'no') === 'yes',
  };
}
