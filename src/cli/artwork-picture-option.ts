import type { ArtworkChoice, PictureChoice } from '../model/artwork-choice.ts';
import { rectangleAt, USUAL_PICTURE } from '../pipeline/picture-artwork.ts';
import { WrongUsage } from './exit.ts';
import { decimal, given, number, oneOf } from './option-values.ts';

/** Taken by artwork from a picture alone. */
export const PICTURE_ONLY = [
  'height',
  'dpi',
  'square',
  'place',
  'check',
  'threshold',
  'invert',
  'smooth',
  'specks',
  'trace',
  'crop',
  'light',
] as const;

/** Taken by artwork from a drawing alone. */
const DRAWING_ONLY = ['close', 'strokes'] as const;

/** What the command line said of a picture, whether the file is one or not. */
export interface PictureOption {
  readonly choice: PictureChoice;
  /** The first option that a drawing does not take, and the first that a picture does not take; null for none. */
  readonly ofPictures: string | null;
  readonly ofDrawings: string | null;
}

const MOST_MM = 100_000;
const MOST_PX = 100_000;

type Values = Readonly<Record<string, string | boolean | string[] | undefined>>;

/** @param drawing  what was said of the size and of what pictures and drawings share. @throws WrongUsage */
export function pictureFrom(values: Values, drawing: ArtworkChoice): PictureOption {
  const word = (name: string): string | undefined => {
    const value = values[name];
    return typeof value === 'string' ? value : undefined;
  };
  const list = (name: string): readonly string[] => {
    const value = values[name];
    return Array.isArray(value) ? value : [];
  };
  const sizes = ['width', 'height', 'known', 'dpi', 'square', 'place'].filter((name) => values[name] !== undefined);
  if (sizes.length > 1) throw new WrongUsage(`give one of --${sizes.join(' and --')}.`);
  const trace = number('trace', word('trace'), { least: 0.001, most: 100 });
  const threshold = number('threshold', word('threshold'), { least: 0, most: 100 });
  const crop = word('crop');
  return {
    choice: {
      size: sizeFrom(word, list, drawing) ?? USUAL_PICTURE.size,
      thresholdPct: threshold ?? null,
      isInverted: values.invert === true,
      smoothPx: number('smooth', word('smooth'), { least: 0, most: 50 }) ?? USUAL_PICTURE.smoothPx,
      specksMm2: number('specks', word('specks'), { least: 0, most: 1e6 }) ?? USUAL_PICTURE.specksMm2,
      traceMm: trace ?? null,
      crop: crop === undefined ? null : cropFrom(crop),
      light: oneOf('light', word('light'), ['drawn', 'photo']) ?? null,
      checks: list('check').map((text) => {
        const [[ax, ay, bx, by], [mm]] = pair('check', text, 4, 1, '0,0,50,0=120');
        if (!(mm > 0)) throw new WrongUsage(`--check takes a length over 0 mm, not ${text}.`);
        return { a: { x: ax, y: ay }, b: { x: bx, y: by }, mm };
      }),
      deviationMm: drawing.deviationMm,
      regulariseMm: drawing.regulariseMm,
      ...given('symmetricMm', drawing.symmetricMm),
    },
    ofPictures: PICTURE_ONLY.find((name) => values[name] !== undefined) ?? null,
    ofDrawings:
      DRAWING_ONLY.find((name) => values[name] !== undefined) ??
      (drawing.size.by === 'names' ? 'known with names' : null),
  };
}

function sizeFrom(
  word: (name: string) => string | undefined,
  list: (name: string) => readonly string[],
  { size }: ArtworkChoice,
): PictureChoice['size'] | null {
  if (size.by === 'width' || size.by === 'points') return size;
  const heightMm = number('height', word('height'), { over: 0, most: MOST_MM });
  if (heightMm !== undefined) return { by: 'height', mm: heightMm };
  const dpi = number('dpi', word('dpi'), { least: 1, most: 20_000 });
  if (dpi !== undefined) return { by: 'dpi', dpi };
  const square = word('square');
  if (square !== undefined) {
    const [n, [w, h]] = pair(
      'square',
      square.replace(/[x×](?=[^x×]*$)/i, ','),
      8,
      2,
      '10,12,410,20,400,310,8,300=210x297',
    );
    if (!(w > 0 && h > 0 && w <= MOST_MM && h <= MOST_MM))
      throw new WrongUsage(`--square takes sizes over 0 mm, not ${square}.`);
    const at = (i: number): { x: number; y: number } => ({ x: n[2 * i], y: n[2 * i + 1] });
    return { by: 'photo', places: rectangleAt([at(0), at(1), at(2), at(3)], w, h) };
  }
  const places = list('place');
  if (places.length === 0) return null;
  return {
    by: 'photo',
    places: places.map((text) => {
      const [[x, y], [mmX, mmY]] = pair('place', text, 2, 2, '118,40=0,297');
      return { px: { x, y }, mm: { x: mmX, y: mmY } };
    }),
  };
}

function cropFrom(text: string): { x: number; y: number }[] {
  const numbers = numbersOf(text);
  if (numbers.length < 4 || numbers.length % 2 !== 0 || numbers.some((value) => !(Math.abs(value) <= MOST_PX)))
    throw new WrongUsage(`--crop takes two corners of a box or all of a figure, as 10,10,400,300, not ${text}.`);
  return Array.from({ length: numbers.length / 2 }, (_, i) => ({ x: numbers[2 * i], y: numbers[2 * i + 1] }));
}

const numbersOf = (text: string): number[] => text.split(',').map((one) => decimal(one.trim()));

/** Numbers before and after an equals sign. @throws WrongUsage */
function pair(name: string, text: string, before: number, after: number, sample: string): [number[], number[]] {
  const [left, right] = text.split('=').map(numbersOf);
  const isRight = (numbers: number[] | undefined, count: number): boolean =>
    numbers?.length === count && numbers.every((value) => Math.abs(value) <= MOST_MM);
  if (text.split('=').length !== 2 || !isRight(left, before) || !isRight(right, after))
    throw new WrongUsage(`--${name} takes numbers as ${sample}, not ${text}.`);
  return [left, right];
}
