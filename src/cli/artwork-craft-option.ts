import type { ArtworkCraft, RaisedEdge, RepeatCount } from '../model/artwork-craft.ts';
import { WrongUsage } from './exit.ts';
import { given, number, oneOf } from './option-values.ts';

/** Options that say what is done with artwork; each beside the ones it goes with. */
const CRAFTS = {
  offset: ['corners'],
  inlay: ['corners', 'inlay-from', 'cut-width'],
  raised: ['edge', 'steps'],
  round: ['repeat', 'thickness', 'neutral', 'strip-width', 'spaced-on', 'as'],
  along: ['repeat', 'start', 'end', 'ends', 'stand'],
  scatter: ['least', 'edge-room', 'vary', 'turn', 'seed'],
} as const;

/** Taken by artwork alone. */
export const CRAFT_ONLY = [
  'offset',
  'corners',
  'inlay',
  'inlay-from',
  'raised',
  'edge',
  'steps',
  'repeat',
  'round',
  'strip-width',
  'spaced-on',
  'as',
  'along',
  'start',
  'end',
  'ends',
  'stand',
  'scatter',
  'least',
  'edge-room',
  'vary',
  'turn',
] as const;

/** Taken by artwork and by others. */
export const CRAFT_SHARED = ['thickness', 'neutral', 'cut-width', 'seed'] as const;

/** What is done with artwork, and the file of the drawing it goes along or over. */
export interface CraftOption {
  readonly craft: ArtworkCraft;
  readonly other?: string;
}

const MOST_MM = 100_000;
const USUAL_THICKNESS_MM = 6;

/** @param word  the text of an option, undefined where it was not given. @returns undefined where nothing is done. @throws WrongUsage */
export function craftFrom(word: (name: string) => string | undefined): CraftOption | undefined {
  const asked = (Object.keys(CRAFTS) as (keyof typeof CRAFTS)[]).filter((name) => word(name) !== undefined);
  if (asked.length > 1) throw new WrongUsage(`give one of --${asked.join(' and --')}.`);
  const craft = asked.length === 0 ? null : asked[0];
  const goes: readonly string[] = craft === null ? ['thickness'] : CRAFTS[craft];
  const stray = [...CRAFT_ONLY, ...CRAFT_SHARED].find(
    (name) => name !== craft && word(name) !== undefined && !goes.includes(name),
  );
  if (stray !== undefined)
    throw new WrongUsage(
      craft === null ? `--${stray} goes with ${hostsOf(stray)}.` : `--${stray} does not go with --${craft}.`,
    );
  const mm = (name: string, limits: { least?: number; over?: number }): number | undefined =>
    number(name, word(name), { ...limits, most: MOST_MM });
  const corners = oneOf('corners', word('corners'), ['round', 'sharp']) ?? 'round';
  const thicknessMm = number('thickness', word('thickness'), { over: 0, most: 200 });
  switch (craft) {
    case null:
      return thicknessMm === undefined ? undefined : { craft: { kind: 'cut', thicknessMm } };
    case 'offset':
      return { craft: { kind: 'offset', distanceMm: mm('offset', { least: -MOST_MM }) ?? 0, corners } };
    case 'inlay':
      return {
        craft: {
          kind: 'inlay',
          clearanceMm: mm('inlay', { least: 0 }) ?? 0,
          from: oneOf('inlay-from', word('inlay-from'), ['pocket', 'insert', 'both']) ?? 'pocket',
          kerfMm: mm('cut-width', { least: 0 }) ?? 0,
          corners,
        },
      };
    case 'raised':
      return {
        craft: {
          kind: 'raised',
          ...sheetsFrom(word('raised') ?? ''),
          edge: edgeFrom(word('edge')),
          rule: oneOf('steps', word('steps'), ['edge', 'middle']) ?? 'edge',
        },
      };
    case 'round':
      return {
        craft: {
          kind: 'round',
          repeat: repeatFrom(word('repeat')),
          spacedOn: oneOf('spaced-on', word('spaced-on'), ['outside', 'flat', 'inside']) ?? 'outside',
          barrelMm: mm('round', { over: 0 }) ?? 0,
          thicknessMm: thicknessMm ?? USUAL_THICKNESS_MM,
          neutralFraction: number('neutral', word('neutral'), { least: 0, most: 1 }) ?? 0.5,
          ...given('stripMm', mm('strip-width', { over: 0 })),
          as: oneOf('as', word('as'), ['engrave', 'placement']) ?? 'engrave',
        },
      };
    case 'along':
      return {
        craft: {
          kind: 'along',
          repeat: repeatFrom(word('repeat')),
          startMm: mm('start', { least: 0 }) ?? 0,
          endMm: mm('end', { least: 0 }) ?? 0,
          ends: oneOf('ends', word('ends'), ['both', 'first', 'none']) ?? 'both',
          stand: oneOf('stand', word('stand'), ['along', 'upright']) ?? 'along',
        },
        ...given('other', word('along')),
      };
    case 'scatter':
      return {
        craft: {
          kind: 'scatter',
          leastMm: mm('least', { least: 0 }) ?? 0,
          edgeMm: mm('edge-room', { least: 0 }) ?? 0,
          sizeShare: (number('vary', word('vary'), { least: 0, most: 90 }) ?? 0) / 100,
          turnRad: ((number('turn', word('turn'), { least: 0, most: 180 }) ?? 0) * Math.PI) / 180,
          seed: number('seed', word('seed'), { least: 0, most: 2 ** 31 }) ?? 1,
        },
        ...given('other', word('scatter')),
      };
  }
}

const hostsOf = (name: string): string =>
  Object.entries(CRAFTS)
    .filter(([, own]) => (own as readonly string[]).includes(name))
    .map(([host]) => `--${host}`)
    .join(' or ');

/** `12`: so many; `25mm`: so far apart. */
function repeatFrom(text: string | undefined): RepeatCount {
  if (text === undefined) throw new WrongUsage('--repeat is missing: how many, as 12, or how far apart, as 25mm.');
  const spacing = /^(.*)mm$/.exec(text);
  const value = number('repeat', spacing === null ? text : spacing[1], { over: 0, most: MOST_MM });
  if (value === undefined || (spacing === null && !Number.isInteger(value)))
    throw new WrongUsage(`--repeat takes a whole number, as 12, or a spacing, as 25mm, not ${text}.`);
  return spacing === null ? { count: value } : { spacingMm: value };
}

/** `3x2mm`: three sheets of 2 mm. */
function sheetsFrom(text: string): { readonly layers: number; readonly thicknessMm: number } {
  const found = /^(\d{1,2})x(.+?)(?:mm)?$/.exec(text);
  const thicknessMm = found === null ? undefined : number('raised', found[2], { over: 0, most: 200 });
  if (found === null || thicknessMm === undefined || Number(found[1]) === 0)
    throw new WrongUsage(`--raised takes sheets and their thickness, as 3x2mm, not ${text}.`);
  return { layers: Number(found[1]), thicknessMm };
}

/** `square`, `bevel,30` in degrees from square, or `rounded,4` in mm. */
function edgeFrom(text: string | undefined): RaisedEdge {
  const [kind, size, ...rest] = (text ?? 'square').split(',');
  const wrong = new WrongUsage(`--edge takes square, bevel,DEGREES or rounded,MM, not ${text ?? ''}.`);
  if (rest.length > 0) throw wrong;
  if (kind === 'square' && (size as string | undefined) === undefined) return { kind };
  if (kind === 'bevel') return { kind, leanDeg: number('edge', size, { least: 0, most: 80 }) ?? 45 };
  const widthMm = number('edge', size, { over: 0, most: 1000 });
  if (kind !== 'rounded' || widthMm === undefined) throw wrong;
  return { kind, widthMm };
}
