import type { FoamSheet } from '../model/foam-stock.ts';
import { freeLayerId } from '../project/layer-commands.ts';
import { MOST_LAYERS } from '../project/project-file.ts';
import type { LayerChoice } from '../project/project.ts';
import { isStagger, LEAST_STAGGER_MM, MOST_STAGGER_MM } from '../project/stagger-limits.ts';
import { WrongUsage } from './exit.ts';
import { decimal } from './option-values.ts';

/** Thickest sheet taken, mm. */
export const MOST_THICK_MM = 200;

/** `--wall MM,MM`: thickness of each sheet, from the inside outward. No decimal commas here: `1,5` is two sheets. @throws WrongUsage */
export function wallFrom(word: string | undefined): readonly number[] | undefined {
  if (word === undefined) return undefined;
  const sheets = word.split(',').map(decimal);
  const isWall = sheets.length <= MOST_LAYERS && sheets.every((mm) => mm > 0 && mm <= MOST_THICK_MM);
  if (!isWall)
    throw new WrongUsage(
      `--wall takes the mm of one to ${MOST_LAYERS} sheets from the inside outward, as 6,2, not ${word === '' ? 'nothing' : word}.`,
    );
  return sheets;
}

/** `--stagger MM`: how far seams of inner sheets lie beside those that are seen. @throws WrongUsage */
export function staggerFrom(word: string | undefined): number | undefined {
  if (word === undefined) return undefined;
  const mm = decimal(word);
  if (mm !== 0 && !isStagger(mm))
    throw new WrongUsage(
      `--stagger takes 0, or ${LEAST_STAGGER_MM} to ${MOST_STAGGER_MM} mm, below 0 to the other side, not ${word === '' ? 'nothing' : word}.`,
    );
  return mm;
}

/** What the command line says of every sheet; left out: as it is. */
export interface SheetWishes {
  /** Sheets from the inside outward, in place of those there are. */
  readonly wallMm?: readonly number[];
  /** Of every sheet, mm. */
  readonly thicknessMm?: number;
  readonly neutral?: number;
  /** How far the seams of inner sheets lie beside those of the outermost, mm: one after the other to either side; 0 over them. */
  readonly staggerMm?: number;
  /** True to allow for shrinkage in every sheet. */
  readonly shrinks: boolean;
}

/**
 * The sheets of the wall as they are wished. A sheet that gets another thickness comes from the stock's foam of that thickness, with its
 * neutral fraction, if there is one.
 * @param layers from the inside outward, one or more.
 */
export function wishedLayers(
  layers: readonly LayerChoice[],
  foams: readonly FoamSheet[],
  { wallMm, thicknessMm, neutral, staggerMm, shrinks }: SheetWishes,
): readonly LayerChoice[] {
  const sheets = wallMm === undefined ? layers : resized(layers, wallMm.length);
  return sheets.map((layer, i) => {
    const inward = sheets.length - 1 - i;
    const sheet = ofThickness(
      staggeredLayer(layer, inward, staggerMm),
      wallMm?.[i] ?? thicknessMm ?? layer.thicknessMm,
      foams,
    );
    return {
      ...sheet,
      neutralFraction: neutral ?? sheet.neutralFraction,
      allowForShrinkage: shrinks || sheet.allowForShrinkage,
    };
  });
}

/** @param inward  how many sheets lie outside of it. */
function staggeredLayer(layer: LayerChoice, inward: number, mm: number | undefined): LayerChoice {
  if (mm === undefined) return layer;
  const { staggerMm: _, ...plain } = layer;
  return inward === 0 || mm === 0 ? plain : { ...plain, staggerMm: inward % 2 === 1 ? mm : -mm };
}

/** So many sheets: those that are there, and then as many like the outermost. */
function resized(layers: readonly LayerChoice[], count: number): readonly LayerChoice[] {
  const sheets = layers.slice(0, count);
  while (sheets.length < count) sheets.push({ ...sheets[sheets.length - 1], id: freeLayerId(sheets) });
  return sheets;
}

function ofThickness(layer: LayerChoice, thicknessMm: number, foams: readonly FoamSheet[]): LayerChoice {
  if (thicknessMm === layer.thicknessMm) return layer;
  const foam = foams.find((sheet) => sheet.thicknessMm === thicknessMm);
  return foam === undefined
    ? { ...layer, thicknessMm }
    : { ...layer, thicknessMm, foam: foam.id, neutralFraction: foam.neutralFraction };
}
