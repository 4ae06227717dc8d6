import type { ArtworkChoice, ArtworkSize } from '../model/artwork-choice.ts';
import { USUAL_ARTWORK } from '../pipeline/artwork.ts';
import { craftFrom, CRAFT_ONLY, CRAFT_SHARED, type CraftOption } from './artwork-craft-option.ts';
import { pictureFrom, PICTURE_ONLY, type PictureOption } from './artwork-picture-option.ts';
import { WrongUsage } from './exit.ts';
import { decimal, given, number, oneOf } from './option-values.ts';

/** What the command line said of artwork. */
export interface ArtworkOptions {
  readonly input: string;
  /** Folder that artwork.json is written into. */
  readonly out?: string;
  readonly choice: ArtworkChoice;
  /** The same of a file that is a picture. */
  readonly picture: PictureOption;
  /** What is done with it; left out where it is only read. */
  readonly craft?: CraftOption;
  readonly json: boolean;
}

/** Taken by artwork alone. */
export const ARTWORK_ONLY = [
  'width',
  'known',
  'deviation',
  'close',
  'regularise',
  'symmetric',
  'strokes',
  ...PICTURE_ONLY,
  ...CRAFT_ONLY,
] as const;

const ARTWORK_OPTIONS: readonly string[] = [...ARTWORK_ONLY, ...CRAFT_SHARED, 'out', 'json'];

const MOST_MM = 100_000;

/** @param words  what stands after `artwork`: the file. @throws WrongUsage */
export function artworkOptionsFrom(
  words: readonly string[],
  values: Readonly<Record<string, string | boolean | string[] | undefined>>,
): ArtworkOptions {
  const [input, ...rest] = words as readonly (string | undefined)[];
  if (input === undefined) throw new WrongUsage('artwork needs a file: node dist/cli.js artwork FILE.');
  if (rest.length > 0)
    throw new WrongUsage(`artwork takes one file, but ${words.length} were given: ${words.join(', ')}.`);
  const stray = Object.keys(values).find((name) => !ARTWORK_OPTIONS.includes(name));
  if (stray !== undefined) throw new WrongUsage(`--${stray} is no option of artwork.`);
  const word = (name: string): string | undefined => {
    const value = values[name];
    return typeof value === 'string' ? value : undefined;
  };
  const mm = (name: string, limits: { least?: number; over?: number; most: number }): number | undefined =>
    number(name, word(name), limits);
  const [widthMm, known] = [mm('width', { over: 0, most: MOST_MM }), word('known')];
  if (widthMm !== undefined && known !== undefined) throw new WrongUsage('give --width or --known, not both.');
  const size: ArtworkSize =
    widthMm !== undefined ? { by: 'width', mm: widthMm } : known !== undefined ? knownFrom(known) : USUAL_ARTWORK.size;
  const choice: ArtworkChoice = {
    size,
    deviationMm: mm('deviation', { least: 0.0001, most: 100 }) ?? USUAL_ARTWORK.deviationMm,
    closeMm: mm('close', { least: 0, most: 100 }) ?? USUAL_ARTWORK.closeMm,
    regulariseMm: mm('regularise', { least: 0, most: 100 }) ?? USUAL_ARTWORK.regulariseMm,
    ...given('symmetricMm', mm('symmetric', { least: 0, most: 100 })),
    strokes: oneOf('strokes', word('strokes'), ['centre', 'outline']) ?? USUAL_ARTWORK.strokes,
  };
  return {
    input,
    ...given('out', word('out')),
    choice,
    picture: pictureFrom(values, choice),
    ...given('craft', craftFrom(word)),
    json: values.json === true,
  };
}

/** `A,B=MM` with two names, or `X,Y,X,Y=MM` with two points in numbers of the file. */
function knownFrom(text: string): ArtworkSize {
  const at = text.lastIndexOf('=');
  const mm = at < 0 ? undefined : number('known', text.slice(at + 1), { over: 0, most: MOST_MM });
  const words = text
    .slice(0, Math.max(0, at))
    .split(',')
    .map((one) => one.trim());
  const numbers = words.map(decimal);
  if (mm !== undefined && words.length === 4 && numbers.every(Number.isFinite))
    return { by: 'points', a: { x: numbers[0], y: numbers[1] }, b: { x: numbers[2], y: numbers[3] }, mm };
  if (mm !== undefined && words.length === 2 && words.every((one) => one !== ''))
    return { by: 'names', a: words[0], b: words[1], mm };
  throw new WrongUsage(
    `--known takes two names or two points and a length, as eye,tip=120 or 0,0,50,0=120, not ${text}.`,
  );
}
