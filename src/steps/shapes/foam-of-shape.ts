import type { Shape, ShapePiece } from '../../model/shape.ts';
import type { SizeField, SizeValues } from '../../model/shape-size.ts';
import type { TypedSize } from './read-sizes.ts';

/** Sizes that are the thickness of the sheet, by the names shapes give them. */
const THICKNESS_NAMES: readonly string[] = ['thickness', 'strip_thickness', 'layer'];

/** Foam a shape is made of: thickness, mm, and the place of its neutral surface from the inside of a bend, 0 to 1. */
export interface ShapeFoam {
  readonly thicknessMm: number;
  readonly neutralFraction: number;
}

/** The sizes a foam gives to a shape: its thickness and its neutral fraction, under the names the shape has for them, where none of them was typed. */
export function sizesOfFoam(
  sizes: readonly SizeField[],
  typed: readonly TypedSize[],
  { thicknessMm, neutralFraction }: ShapeFoam,
): readonly TypedSize[] {
  const isTyped = ({ name, also = [] }: SizeField): boolean =>
    typed.some(
      ([own]) => [name, ...also.map((one) => one.name)].includes(own.toLowerCase().replace(/-/g, '_')) || own === name,
    );
  return sizes.flatMap((field): TypedSize[] => {
    if (isTyped(field)) return [];
    if (THICKNESS_NAMES.includes(field.name)) return [[field.name, `${thicknessMm} mm`]];
    return field.name === 'K' ? [['K', String(neutralFraction)]] : [];
  });
}

/** The foam of a shape: as its own sizes say, else as it is asked for. A thickness of 0 says nothing of the foam. */
export function foamOfShape({ sizes }: Pick<Shape, 'sizes'>, asked: ShapeFoam): ShapeFoam {
  const own = THICKNESS_NAMES.map((name) => numberOf(sizes, name)).find((one) => one !== null && one > 0);
  return { thicknessMm: own ?? asked.thicknessMm, neutralFraction: numberOf(sizes, 'K') ?? asked.neutralFraction };
}

/** Thickness of one of its pieces, mm: of two slabs that meet the second may have its own. */
export const thicknessOfPiece = ({ sizes }: Pick<Shape, 'sizes'>, piece: ShapePiece, usualMm: number): number =>
  piece.name === 'second slab' ? (numberOf(sizes, 'other_thickness') ?? usualMm) : usualMm;

const numberOf = (sizes: SizeValues, name: string): number | null => {
  const value = sizes[name];
  return typeof value === 'number' ? value : null;
};
