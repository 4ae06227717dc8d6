import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { move4, turnRound4 } from '../../../src/geom/matrix4.ts';
import { cross3, dot3, length3, pointAt3, sub3, vec3 } from '../../../src/geom/vec.ts';
import { placeOf } from '../../../src/mesh/lines/mesh-point.ts';
import { triangleNormal } from '../../../src/mesh/measure.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { surfaceOf } from '../../../src/mesh/surface.ts';
import { surfaceTreeOf } from '../../../src/mesh/surface-tree.ts';
import type { SurfaceTrace } from '../../../src/model/trace.ts';
import { meetingCurves, type StandingSurface } from '../../../src/steps/assembly/meeting-curves.ts';
import { placedMesh } from '../../../src/steps/assembly/placing.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, meshOf, torusMesh } from '../../support/meshes.ts';
import { rodMesh } from '../../support/rod-meshes.ts';
import { ballMesh, sheetMesh } from '../../support/round-meshes.ts';

const standing = (mesh: Mesh): StandingSurface => ({ surface: surfaceOf(mesh), tree: surfaceTreeOf(mesh) });
const moved = (mesh: Mesh, x: number, y: number, z: number): Mesh =>
  placedMesh(mesh, { matrix: move4(vec3(x, y, z)), isMirrored: false });
const lengthOf = ({ places, closed }: SurfaceTrace): number => {
  let sum = 0;
  const count = places.length / 3;
  for (let i = closed ? 0 : 1; i < count; i += 1)
    sum += length3(sub3(pointAt3(places, i), pointAt3(places, (i + count - 1) % count)));
  return sum;
};

/** What has to be so of any two surfaces: points lie where both surfaces say, stretches join, and run along normal x normal. */
function checkCurves(a: Mesh, b: Mesh) {
  const met = meetingCurves(standing(a), standing(b));
  for (const { onFirst, onSecond } of met.curves) {
    for (const [trace, mesh] of [
      [onFirst, a],
      [onSecond, b],
    ] as const) {
      const surface = surfaceOf(mesh);
      const count = trace.points.length;
      expect(trace.triangles.length).toBe(trace.closed ? count : count - 1);
      expect(trace.ends.length).toBe(trace.triangles.length);
      trace.points.forEach((p, i) => {
        expect(length3(sub3(placeOf(surface, p), pointAt3(trace.places, i)))).toBeLessThan(1e-5);
      });
      trace.ends.forEach((ends, i) =>
        ends.forEach((weights, end) => {
          expect(Math.min(...weights)).toBeGreaterThanOrEqual(0);
          const at = [0, 1, 2].map((axis) =>
            weights.reduce(
              (sum, w, k) => sum + w * mesh.positions[3 * mesh.triangles[3 * trace.triangles[i] + k] + axis],
              0,
            ),
          );
          expect(length3(sub3(vec3(at[0], at[1], at[2]), pointAt3(trace.places, (i + end) % count)))).toBeLessThan(
            1e-5,
          );
        }),
      );
    }
    onFirst.triangles.forEach((t, i) => {
      const u = onSecond.triangles[i];
      const way = cross3(triangleNormal(a.positions, a.triangles, t), triangleNormal(b.positions, b.triangles, u));
      const step = sub3(pointAt3(onFirst.places, (i + 1) % onFirst.points.length), pointAt3(onFirst.places, i));
      expect(dot3(way, step)).toBeGreaterThanOrEqual(-1e-9);
    });
  }
  return met;
}

describe('meetingCurves', () => {
  it('finds the square in which one box stands in another', () => {
    const { curves, flatPairs, isWhole } = checkCurves(boxMesh(10), moved(boxMesh(4), 3.1, 3.2, 7.3));
    expect(curves.length).toBe(1);
    expect(curves[0].onFirst.closed).toBe(true);
    expect(lengthOf(curves[0].onFirst)).toBeCloseTo(16, 12);
    expect(flatPairs).toEqual([]);
    expect(isWhole).toBe(true);
  });

  it('has nothing to say of parts that are apart, within each other or empty', () => {
    const none = meshOf([], []);
    for (const [a, b] of [
      [boxMesh(10), moved(boxMesh(4), 30, 0, 0)],
      [boxMesh(10), moved(boxMesh(4), 3.5, 3.5, 3.5)],
      [boxMesh(10), none],
      [none, none],
    ])
      expect(meetingCurves(standing(a), standing(b)).curves).toEqual([]);
  });

  it('tells of faces that lie on each other, and still gives whole lines', () => {
    // Flush on three sides: what lies on each other is one corner of the large box's three faces.
    const { curves, flatPairs } = checkCurves(boxMesh(10), boxMesh(4));
    expect(flatPairs.length).toBeGreaterThanOrEqual(6);
    expect(curves.every(({ onFirst }) => onFirst.closed)).toBe(true);
    // The same box twice; and one that stands on the other.
    for (const b of [boxMesh(10), moved(boxMesh(4), 3, 3, 10), moved(boxMesh(10), 10, 0, 0)]) {
      const met = checkCurves(boxMesh(10), b);
      expect(met.flatPairs.length).toBeGreaterThan(0);
      expect(met.curves.every(({ onFirst }) => onFirst.closed)).toBe(true);
    }
    // Only an edge or a corner in common.
    for (const b of [moved(boxMesh(10), 10, 10, 0), moved(boxMesh(10), 10, 10, 10)])
      expect(checkCurves(boxMesh(10), b).flatPairs).toEqual([]);
  });

  it('gives closed lines of closed surfaces, whatever lies on what (corners on a coarse grid)', () =>
    forAll(
      (rand) => {
        const whole = (): number => Math.floor(5 * rand());
        // A box of grid points, corners shaken onto grid points without turning a face over is not asked for: any closed mesh will do.
        const lump = (): Mesh => {
          const box = boxMesh(4);
          const positions = box.positions.map((value) => value + (rand() < 0.4 ? Math.floor(3 * rand()) - 1 : 0));
          return { ...box, positions };
        };
        return { a: lump(), b: moved(lump(), whole() - 2, whole() - 2, whole() - 2) };
      },
      ({ a, b }) => {
        const { curves } = meetingCurves(standing(a), standing(b));
        for (const { onFirst } of curves) expect(onFirst.closed).toBe(true);
        const back = meetingCurves(standing(b), standing(a)).curves;
        expect(back.every(({ onFirst }) => onFirst.closed)).toBe(true);
      },
      { runs: 150 },
    ));

  it('ends lines at open edges alone', () => {
    const sheet = sheetMesh(7, 5, 20, 20);
    const { curves } = checkCurves(sheet, moved(ballMesh(2, 6), 0.3, 10.2, 0.7));
    expect(curves.length).toBe(1);
    expect(curves[0].onFirst.closed).toBe(false);
    const [first, last] = [0, curves[0].onFirst.points.length - 1].map((i) => pointAt3(curves[0].onFirst.places, i));
    expect([first.x, last.x]).toEqual([0, 0]);
  });

  it('puts what lies within the other surface on the left', () => {
    const sheet = sheetMesh(3, 3, 20, 20);
    const { curves } = checkCurves(sheet, moved(rodMesh(12, 4, -5, 5), 10.1, 9.7, 0));
    const { places } = curves[0].onFirst;
    let area = 0;
    for (let i = 0; i < places.length; i += 3) {
      const j = (i + 3) % places.length;
      area += (places[i] * places[j + 1] - places[j] * places[i + 1]) / 2;
    }
    expect(area).toBeCloseTo(6 * 16 * Math.sin(Math.PI / 6), 9); // a polygon of 12 sides, counter-clockwise
  });

  it('meets a ring in two circles whose length comes true with the square of the fineness', () => {
    // A plane through the middle of a ring, square to its axis: circles of R + r and R - r (in the ring's own polygon).
    const errors = [12, 24, 48].map((n) => {
      const ring = torusMesh(n, n, 30, 10);
      const { curves } = checkCurves(ring, moved(sheetMesh(1, 1, 200, 200), -100.3, -99.1, 1.5));
      expect(curves.length).toBe(2);
      const half = Math.sqrt(100 - 1.5 * 1.5);
      const sum = curves.reduce((all, { onFirst }) => all + lengthOf(onFirst), 0);
      return Math.abs(sum / (2 * Math.PI * (30 + half) + 2 * Math.PI * (30 - half)) - 1);
    });
    expect(errors[0] / errors[1]).toBeGreaterThan(3);
    expect(errors[1] / errors[2]).toBeGreaterThan(3);
  });

  it('is the same wherever both stand, and numbered otherwise', async () => {
    const rand = seededRandom(3);
    const [a, b] = [ballMesh(2, 10), moved(torusMesh(12, 8, 9, 3), 6, 1, 2)];
    const before = meetingCurves(standing(a), standing(b))
      .curves.map(({ onFirst }) => lengthOf(onFirst))
      .sort();
    expect(before.length).toBeGreaterThan(0);
    const turn = turnRound4(vec3(3, 2, 1), vec3(rand(), rand(), rand()), 77);
    const [c, d] = [a, b].map((mesh) => placedMesh(mesh, { matrix: turn, isMirrored: false }));
    const after = meetingCurves(standing(c), standing(d))
      .curves.map(({ onFirst }) => lengthOf(onFirst))
      .sort();
    expect(after.length).toBe(before.length);
    after.forEach((value, i) => expect(value).toBeCloseTo(before[i], 9));
  });

  it('passes over empty triangles and far, tiny and huge numbers', () => {
    const flat = meshOf(
      [
        [0, 0, 0],
        [1, 1, 1],
        [2, 2, 2],
        [5, 0, 0],
      ],
      [
        [0, 1, 2],
        [0, 1, 3],
      ],
    );
    expect(() => meetingCurves(standing(flat), standing(boxMesh(1)))).not.toThrow();
    for (const size of [1e-9, 1e9]) {
      const met = meetingCurves(standing(boxMesh(size)), standing(moved(boxMesh(size), size / 2, size / 3, size / 5)));
      expect(met.curves.length).toBe(1);
    }
  });
});
