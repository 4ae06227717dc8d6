import { expect, it } from 'vitest';
import { shapeFrom } from '../../../src/pipeline/shapes.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { layPiecesFlat } from './lay-pieces.ts';
import { layShapeFlat } from './lay-shape.ts';
import { stackShape } from './stack-shape.ts';

/** A mesh with twice the facets misses a quarter of what it missed before: order 2. All shapes: `npm run bench:exact`. */
it.each(['tapered_wrap', 'square_to_round', 'bend'])(
  '%s as a mesh laid flat comes to its closed form',
  async (name) => {
    const shape = expectOk(shapeFrom(name, []));
    const [coarse, fine] = [await layShapeFlat(shape, 12), await layShapeFlat(shape, 24)];
    expect(Math.abs(fine.areaError)).toBeLessThan(0.004);
    expect(Math.log2(coarse.areaError / fine.areaError)).toBeGreaterThan(1.9);
    expect(Math.abs(fine.seamError)).toBeLessThan(0.004);
    expect(fine.worstStretchPct).toBeLessThan(1e-6);
  },
);

it('panels are the same from their mesh', async () => {
  const laid = await layShapeFlat(expectOk(shapeFrom('octahedron', [])), 8);
  expect(laid.pieces).toBe(8);
  expect(Math.abs(laid.areaError)).toBeLessThan(1e-9);
  expect(Math.abs(laid.seamError)).toBeLessThan(1e-9);
});

it('what lies flat anyway has the areas and borders of its outlines: order 2', async () => {
  const { pieces } = expectOk(shapeFrom('ring', [['segments', '3']]));
  const [coarse, fine] = [await layPiecesFlat(pieces, 24), await layPiecesFlat(pieces, 48)];
  for (const error of ['areaError', 'seamError'] as const) {
    expect(Math.abs(fine[error])).toBeLessThan(0.004);
    expect(Math.log2(coarse[error] / fine[error])).toBeGreaterThan(1.9);
  }
});

it('a stack of sheets has the layers of its closed form: order 2', () => {
  const shape = expectOk(shapeFrom('cone_layers', []));
  const [coarse, fine] = [stackShape(shape, 24), stackShape(shape, 48)];
  expect(fine.pieces).toBe(10);
  expect(Math.log2(coarse.areaError / fine.areaError)).toBeGreaterThan(1.9);
});
