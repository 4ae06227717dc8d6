import { ok, type Result } from '../../base/result.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { PlainWork } from '../../model/plain-piece.ts';
import type { ShapePart } from '../../project/plain-part.ts';
import { sizesOfFoam } from '../../steps/shapes/foam-of-shape.ts';
import { shapeWork } from '../../steps/shapes/shape-work.ts';
import { findShape, shapeFrom } from '../shapes.ts';

/** A shape in a foam: its thickness and neutral fraction are the foam's, where the shape asks for them and none was typed. */
export function shapePartWork({ shape, sizes }: ShapePart, foam: FoamSheet): Result<PlainWork> {
  const kind = findShape(shape);
  if (!kind.ok) return kind;
  const { thicknessMm, neutralFraction } = foam;
  const own = Object.entries(sizes);
  const typed = [...own, ...sizesOfFoam(kind.value.sizes, own, foam)];
  const made = shapeFrom(shape, typed);
  return made.ok ? ok(shapeWork(made.value, { thicknessMm, neutralFraction }), made.notes) : made;
}
