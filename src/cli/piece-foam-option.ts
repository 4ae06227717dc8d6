import type { FoamSheet } from '../model/foam-stock.ts';
import type { PieceSetting } from '../model/foam-settings.ts';
import { WrongUsage } from './exit.ts';
import { number } from './option-values.ts';

/** A piece, by a polygon of the file, that is cut from foam of another thickness. */
export interface PieceFoamChoice {
  readonly face: number;
  readonly thicknessMm: number;
}

/** Most polygons a file can have. */
const MOST_FACES = 2 ** 31;

/** `--piece-foam FACE=MM`, as often as wanted. @throws WrongUsage */
export function pieceFoamsFrom(words: readonly string[] | undefined): readonly PieceFoamChoice[] | undefined {
  return words?.map((word) => {
    const [faceWord, mmWord, ...rest] = word.split('=');
    const face = number('piece-foam', faceWord, { least: 0, most: MOST_FACES });
    const thicknessMm = number('piece-foam', mmWord, { over: 0, most: 200 });
    if (face === undefined || thicknessMm === undefined || rest.length > 0 || !Number.isInteger(face))
      throw new WrongUsage('--piece-foam looks like 12=10: a face of the file, counted from 0, and mm of foam.');
    return { face, thicknessMm };
  });
}

/** The same as wishes for pieces. @throws WrongUsage where no sheet of the stock is so thick. */
export function pieceFoamSettings(
  choices: readonly PieceFoamChoice[],
  foams: readonly FoamSheet[],
): readonly PieceSetting[] {
  return choices.map(({ face, thicknessMm }) => {
    const foam = foams.find((sheet) => sheet.thicknessMm === thicknessMm);
    if (foam === undefined) {
      const known = [...new Set(foams.map((sheet) => sheet.thicknessMm))].join(', ');
      throw new WrongUsage(`--piece-foam ${face}=${thicknessMm}: the stock has foam of ${known} mm.`);
    }
    return { face, foam: foam.id };
  });
}
