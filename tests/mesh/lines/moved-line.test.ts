import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { vec3, type Vec3 } from '../../../src/geom/vec.ts';
import { checkMeshLine } from '../../../src/mesh/lines/check-mesh-line.ts';
import { lineThrough } from '../../../src/mesh/lines/line-through.ts';
import type { MeshLine, MeshPoint } from '../../../src/mesh/lines/mesh-line.ts';
import { lineLength, placeOf, pointAtPlace } from '../../../src/mesh/lines/mesh-point.ts';
import { movedLineSteps } from '../../../src/mesh/lines/moved-line.ts';
import { surfaceOf } from '../../../src/mesh/surface.ts';
import { surfaceTreeOf } from '../../../src/mesh/surface-tree.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { sheetMesh } from '../../support/round-meshes.ts';

/** Flat, 200 x 100 mm, in squares of 10 mm. */
const mesh = sheetMesh(20, 10, 200, 100);
const surface = surfaceOf(mesh);
const on = (x: number, y: number): MeshPoint => {
  const hit = surfaceTreeOf(mesh).nearest(vec3(x, y, 0))!;
  return pointAtPlace(surface, hit.triangle, hit.point);
};
const through = (places: readonly (readonly [number, number])[], closed = false): MeshLine =>
  expectOk(
    lineThrough(
      surface,
      places.map(([x, y]) => on(x, y)),
      closed,
    ),
  );
const moved = (line: MeshLine, from: readonly [number, number], to: readonly [number, number]) => {
  const found = expectOk(runAtOnce(movedLineSteps(surface, line, vec3(...from, 0), on(...to))));
  expect(checkMeshLine(surface, found.line)).toEqual([]);
  return found;
};
const places = ({ points }: MeshLine): Vec3[] => points.map((p) => placeOf(surface, p));
const heightAt = (line: MeshLine, x: number): number => {
  const found = places(line).find((p) => Math.abs(p.x - x) < 1e-9);
  if (found === undefined) throw new Error(`no point at ${x}`);
  return found.y;
};

describe('a line dragged over a flat sheet', () => {
  // From side to side, 50 mm up.
  const across = through([
    [0, 50],
    [200, 50],
  ]);

  it('comes along for one and a half times as far as it is dragged, straight to both sides', () => {
    const { line, at } = moved(across, [100, 50], [100, 70]);
    // 20 mm up at the hand, from 30 mm to its left to 30 mm to its right.
    expect(lineLength(surface, line)).toBeCloseTo(140 + 2 * Math.hypot(30, 20), 9);
    expect(placeOf(surface, at)).toMatchObject({ x: 100, y: 70 });
    expect([70, 80, 90, 100, 130].map((x) => heightAt(line, x))).toEqual(
      [50, 50 + 20 / 3, 50 + 40 / 3, 70, 50].map((y) => expect.closeTo(y, 9) as number),
    );
  });

  it('keeps its ends but for one on an open edge that is itself taken hold of: that goes along open edges', () => {
    const near = moved(across, [20, 50], [20, 60]).line;
    expect(heightAt(near, 0)).toBeCloseTo(50, 9);
    const { line, at } = moved(across, [3, 50], [12, 62]);
    expect(placeOf(surface, at)).toMatchObject({ x: 0, y: 62 });
    expect(heightAt(line, 0)).toBeCloseTo(62, 9);
    expect(places(line).at(-1)).toMatchObject({ x: 200, y: 50 });
    // An end inside the sheet stays.
    const dart = through([
      [0, 50],
      [120, 50],
    ]);
    expect(places(moved(dart, [119, 50], [119, 60]).line).at(-1)).toMatchObject({ x: 120, y: 50 });
  });

  it('of a ring one side goes, wherever the ring begins', () => {
    const corners = [
      [60, 20],
      [140, 20],
      [140, 80],
      [60, 80],
    ] as const;
    for (let first = 0; first < 4; first += 1) {
      const ring = through([...corners.slice(first), ...corners.slice(0, first)], true);
      const { line } = moved(ring, [100, 80], [100, 90]);
      expect(line.closed).toBe(true);
      // The hand takes 8 in a hundred of 280 mm along to each side.
      expect(lineLength(surface, line)).toBeCloseTo(280 - 2 * 22.4 + 2 * Math.hypot(22.4, 10), 9);
    }
  });
});
