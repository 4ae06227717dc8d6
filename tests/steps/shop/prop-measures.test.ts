import { expect, it } from 'vitest';
import { propMeasures, type FormInPlace } from '../../../src/steps/shop/prop-measures.ts';

/** A solid of four corners with a square one at x, y, z, and legs of 40 mm along the axes. */
const cornerAt = (x: number, y: number, z: number, massG: number): FormInPlace => ({
  positions: [x, y, z, x + 40, y, z, x, y + 40, z, x, y, z + 40],
  triangles: [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3],
  isClosed: true,
  massG,
});

it('takes the middle of all parts by their mass, wherever they stand', () => {
  // The middle of such a solid lies a quarter of each leg from its square corner (the mean of its four corners).
  const { centre, sizeMm } = propMeasures([], [cornerAt(1000, 0, 0, 30), cornerAt(0, 100, -500, 10)]);
  expect(centre?.map((mm) => mm.toFixed(6))).toEqual(['760.000000', '35.000000', '-115.000000']);
  expect(sizeMm).toEqual([1040, 140, 540]);
});

it('takes the middle of a surface where a part bounds no body, and beside sculpts counts both', () => {
  const sheet: FormInPlace = {
    positions: [0, 0, 0, 30, 0, 0, 0, 30, 0],
    triangles: [0, 1, 2],
    isClosed: false,
    massG: 8,
  };
  expect(propMeasures([], [sheet]).centre?.map((mm) => mm.toFixed(9))).toEqual([
    '10.000000000',
    '10.000000000',
    '0.000000000',
  ]);
  // A plate of 100 × 100 × 10 mm and 80 kg/m³ weighs 8 g.
  const plate = {
    triangles: [0, 1, 2, 0, 2, 3],
    face: [0, 0, 10, 100, 0, 10, 100, 100, 10, 0, 100, 10],
    back: [0, 0, 0, 100, 0, 0, 100, 100, 0, 0, 100, 0],
    densityKgM3: 80,
    isOutside: true,
  };
  const { centre } = propMeasures([plate], [sheet]);
  expect(centre?.map((mm) => mm.toFixed(6))).toEqual(['30.000000', '30.000000', '2.500000']);
});
