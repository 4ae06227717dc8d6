import { ok, type Result } from '../../base/result.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { PlainWork } from '../../model/plain-piece.ts';
import type { Shape } from '../../model/shape.ts';
import type { ShapePart } from '../../project/plain-part.ts';
import { sizesOfFoam, type ShapeFoam } from '../../steps/shapes/foam-of-shape.ts';
import { shapeWork } from '../../steps/shapes/shape-work.ts';
import { findShape, shapeFrom } from '../shapes.ts';

type ShapeSizes = Pick<ShapePart, 'shape' | 'sizes'>;

/** A shape in a foam: its thickness and neutral fraction are the foam's, where the shape asks for them and none was typed. */
export function shapeInFoam({ shape, sizes }: ShapeSizes, foam: ShapeFoam): Result<Shape> {
  const kind = findShape(shape);
  if (!kind.ok) return kind;
  const own = Object.entries(sizes);
  return shapeFrom(shape, [...own, ...sizesOfFoam(kind.value.sizes, own, foam)]);
}

/** The same with its pieces and the order of the work. */
export function shapePartWork(part: ShapeSizes, { thicknessMm, neutralFraction }: FoamSheet): Result<PlainWork> {
  const foam = { thicknessMm, neutralFraction };
  const made = shapeInFoam(part, foam);
  return made.ok ? ok(shapeWork(made.value, foam), made.notes) : made;
}
