import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { seededRandom } from '../../../src/base/random.ts';
import { cross3, dot3, length3, pointAt3, sub3, unit3, vec3 } from '../../../src/geom/vec.ts';
import { surfaceOf } from '../../../src/mesh/surface.ts';
import { modelOutlineSteps, rodOutline } from '../../../src/steps/wear/core-outline.ts';
import { boxMesh } from '../../support/meshes.ts';

describe('the outline of a rod', () => {
  it('lies on its side and reaches from end to end', () => {
    const random = seededRandom(4);
    for (let round = 0; round < 20; round += 1) {
      const rod = {
        point: vec3(10 * random(), -20 * random(), 5),
        direction: vec3(random() - 0.5, random() - 0.5, random() + 0.1),
        radiusMm: 3 + 20 * random(),
        lengthMm: 50 + 100 * random(),
      };
      const axis = unit3(rod.direction);
      const lines = rodOutline(new Float64Array(), rod);
      expect(lines).toHaveLength(4);
      for (const line of lines) {
        for (let i = 0; i < line.length / 3; i += 1) {
          const away = sub3(pointAt3(line, i), rod.point);
          expect(length3(cross3(away, axis))).toBeCloseTo(rod.radiusMm, 9);
          expect(Math.abs(dot3(away, axis))).toBeCloseTo(rod.lengthMm / 2, 9);
        }
      }
    }
  });

  it('reaches one radius past the foam where it has no ends', () => {
    const back = Float64Array.from([0, 0, -30, 5, 5, 70]);
    const rod = { point: vec3(0, 0, 0), direction: vec3(0, 0, 2), radiusMm: 8, lengthMm: Infinity };
    const heights = rodOutline(back, rod).flatMap((line) => [...line].filter((_, i) => i % 3 === 2));
    expect(Math.min(...heights)).toBeCloseTo(-38, 9);
    expect(Math.max(...heights)).toBeCloseTo(78, 9);
    expect(rodOutline(new Float64Array(), rod)).toEqual([]);
  });
});

it('shows a core of any form by lines on its surface, across all three axes', () => {
  const lines = runAtOnce(modelOutlineSteps(surfaceOf(boxMesh(20, 30, 50))));
  expect(lines).toHaveLength(15);
  const girths = lines.map((line) => {
    let sum = 0;
    for (let i = 0; i < line.length / 3; i += 1) {
      sum += length3(sub3(pointAt3(line, (i + 1) % (line.length / 3)), pointAt3(line, i)));
    }
    return Math.round(sum);
  });
  expect(girths).toEqual([...Array<number>(5).fill(160), ...Array<number>(5).fill(140), ...Array<number>(5).fill(100)]);
});
