import { expect, it } from 'vitest';
import { shapeFrom } from '../../../src/pipeline/shapes.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { layShapeFlat } from './lay-shape.ts';

/** A mesh with twice the facets misses a quarter of what it missed before: order 2. All shapes: `npm run bench:exact`. */
it.each(['tapered_wrap', 'square_to_round'])(
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
