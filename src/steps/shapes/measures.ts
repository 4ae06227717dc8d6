import type { ShapeMeasure } from '../../model/shape.ts';
import { deg } from '../../geom/vec.ts';

/** A figure and its unit, before it has a name. */
export type Figure = Pick<ShapeMeasure, 'value' | 'unit'>;

export const mm = (value: number | readonly number[]): Figure => ({ value, unit: 'mm' });
export const mm2 = (value: number | readonly number[]): Figure => ({ value, unit: 'mm²' });
export const mm3 = (value: number): Figure => ({ value, unit: 'mm³' });
/** From radians. */
export const degrees = (radians: number | readonly number[]): Figure => ({
  value: typeof radians === 'number' ? deg(radians) : radians.map(deg),
  unit: 'deg',
});
export const plain = (value: number | readonly number[], unit = ''): Figure => ({ value, unit });
export const percent = (value: number | readonly number[]): Figure => ({ value, unit: '%' });

/** Figures by their names. @param of  the part they belong to, where several parts have the same. */
export function measures(figures: Readonly<Record<string, Figure | undefined>>, of?: string): ShapeMeasure[] {
  return Object.entries(figures).flatMap(([name, one]) =>
    one === undefined ? [] : [{ name, ...one, ...(of === undefined ? {} : { of }) }],
  );
}
