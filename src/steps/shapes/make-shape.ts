import { ok, type Result } from '../../base/result.ts';
import type { Shape } from '../../model/shape.ts';
import { seamsOf } from './pieces.ts';
import type { ShapeKind } from './shape-kind.ts';
import type { Sizes } from './sizes.ts';

/** Develops a shape of given sizes. */
export function makeShape(kind: ShapeKind, sizes: Sizes): Result<Shape> {
  const developed = kind.develop(sizes);
  if (!developed.ok) return developed;
  const { measures, pieces = [], warnings = [], patches = [], solid = null } = developed.value;
  return ok({
    name: kind.name,
    sizes: sizes.values,
    measures,
    pieces,
    seams: seamsOf(pieces),
    warnings,
    patches,
    solid,
  });
}
