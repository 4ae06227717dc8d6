import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { hitCorners } from '../../src/viewport/ray.ts';
import { TriangleRuns } from '../../src/viewport/triangle-runs.ts';
import { forAll } from '../support/for-all.ts';

/** A wavy sheet of `side` by `side` squares over [0, 1], as local vertices; `bent` rolls it up. */
function wavySheet(side: number, bent: boolean): { places: Float32Array; triangles: Uint32Array } {
  const places = new Float32Array(3 * (side + 1) ** 2);
  const triangles: number[] = [];
  for (let row = 0; row <= side; row += 1) {
    for (let column = 0; column <= side; column += 1) {
      const [u, v] = [column / side, row / side];
      const at = bent ? [Math.cos(5 * u), v, Math.sin(5 * u)] : [u, v, 0.05 * Math.sin(20 * u * v)];
      const i = row * (side + 1) + column;
      places.set(at, 3 * i);
      if (row < side && column < side) triangles.push(i, i + 1, i + side + 2, i, i + side + 2, i + side + 1);
    }
  }
  return { places, triangles: Uint32Array.from(triangles) };
}

const cornersOf = ({ places, triangles }: ReturnType<typeof wavySheet>): Float32Array =>
  Float32Array.from([...triangles].flatMap((v) => [...places.subarray(3 * v, 3 * v + 3)]));

describe('runs of triangles in boxes', () => {
  it('meet what a search through all triangles meets, wherever they were bent to', async () => {
    const flat = wavySheet(23, false);
    const corners = cornersOf(flat);
    const numbers = Uint32Array.from({ length: flat.triangles.length / 3 }, (_, t) => t);
    const runs = new TriangleRuns(numbers, flat.triangles, flat.places);
    expect([...runs.order].sort((a, b) => a - b)).toEqual([...numbers]);
    let met = 0;
    for (const stand of [corners, cornersOf(wavySheet(23, true))]) {
      runs.measure(stand, [0]);
      await forAll(
        (random) => ({
          origin: new Vector3(4 * random() - 2, 4 * random() - 2, 3),
          to: new Vector3(2 * random() - 1, random(), random() - 0.5),
        }),
        ({ origin, to }) => {
          const direction = to.clone().sub(origin).normalize();
          const all = hitCorners(origin, direction, stand, null, 0, Infinity);
          const hit = runs.hit(origin, direction, stand, [0], Infinity);
          expect(hit?.distance).toBe(all?.distance);
          met += hit === null ? 0 : 1;
        },
      );
    }
    expect(met).toBeGreaterThan(20);
  });

  it('look at few triangles of many', () => {
    const sheet = wavySheet(100, false);
    const corners = cornersOf(sheet);
    const numbers = Uint32Array.from({ length: sheet.triangles.length / 3 }, (_, t) => t);
    const runs = new TriangleRuns(numbers, sheet.triangles, sheet.places);
    runs.measure(corners, [0]);
    let looked = 0;
    const counted = new Proxy(corners, {
      get: (target, key) => {
        looked += 1;
        return target[key as unknown as number];
      },
    });
    expect(runs.hit(new Vector3(0.31, 0.47, 3), new Vector3(0, 0, -1), counted, [0], Infinity)).not.toBeNull();
    // Nine numbers a triangle: of 20,000 fewer than 400 are asked.
    expect(looked).toBeLessThan(9 * 400);
  });
});
