import { fail, type Result } from '../base/result.ts';
import type { Shape } from '../model/shape.ts';
import { SHAPE_KINDS } from '../steps/shapes/catalogue.ts';
import { makeShape } from '../steps/shapes/make-shape.ts';
import { readSizes, type TypedSize } from '../steps/shapes/read-sizes.ts';
import type { ShapeKind } from '../steps/shapes/shape-kind.ts';
import { SHAPE_FIGURES } from './shape-figures.ts';

/** Every shape and figure that is offered by name. */
export const ALL_SHAPES: readonly ShapeKind[] = [...SHAPE_KINDS, ...SHAPE_FIGURES];

/** The kind of a name; `-` and capitals serve as well as `_`. Fails with `shape/unknown`. */
export function findShape(name: string): Result<ShapeKind> {
  const key = name
    .trim()
    .toLowerCase()
    .replace(/[-\s]+/g, '_');
  const kind = ALL_SHAPES.find((one) => one.name === key || one.also?.includes(key) === true);
  if (kind !== undefined) return { ok: true, value: kind, notes: [] };
  const near = ALL_SHAPES.filter((one) => one.name.includes(key) || key.includes(one.name)).map((one) => one.name);
  const hint = near.length > 0 ? `there is ${near.join(', ')}` : 'shape --list names them all';
  return fail('shape/unknown', `There is no shape called “${name}”: ${hint}.`);
}

/** A shape from its name and its sizes as they were typed. */
export function shapeFrom(name: string, typed: readonly TypedSize[]): Result<Shape> {
  const kind = findShape(name);
  if (!kind.ok) return kind;
  const sizes = readSizes(kind.value, typed);
  return sizes.ok ? makeShape(kind.value, sizes.value) : sizes;
}
