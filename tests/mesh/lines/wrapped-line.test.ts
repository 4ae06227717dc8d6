import { describe, expect, it } from 'vitest';
import type { Stroke } from '../../../src/geom/svg-path.ts';
import { length3, sub3, vec3, type Vec3 } from '../../../src/geom/vec.ts';
import { checkMeshLine } from '../../../src/mesh/lines/check-mesh-line.ts';
import { headingTowards, type Heading } from '../../../src/mesh/lines/heading.ts';
import type { MeshPoint } from '../../../src/mesh/lines/mesh-line.ts';
import { lineLength, placeOf, pointAtPlace } from '../../../src/mesh/lines/mesh-point.ts';
import { wrapStroke, type WrappedStroke } from '../../../src/mesh/lines/wrapped-line.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { surfaceOf } from '../../../src/mesh/surface.ts';
import { surfaceTreeOf } from '../../../src/mesh/surface-tree.ts';
import { forAll } from '../../support/for-all.ts';
import { tubeMesh } from '../../support/meshes.ts';
import { ballMesh, sheetMesh } from '../../support/round-meshes.ts';

const gap = (p: Vec3, q: Vec3): number => length3(sub3(p, q));

function wrap(mesh: Mesh, at: Vec3, x: Vec3, stroke: Stroke): WrappedStroke & { places: Vec3[] } {
  const surface = surfaceOf(mesh);
  const hit = surfaceTreeOf(mesh).nearest(at);
  const start: MeshPoint = pointAtPlace(surface, hit?.triangle ?? 0, at);
  const wrapped = wrapStroke(surface, start, headingTowards(surface, start, x) as Heading, stroke);
  expect(checkMeshLine(surface, wrapped.line)).toEqual([]);
  expect(lineLength(surface, wrapped.line)).toBeCloseTo(wrapped.lengthMm, 8);
  return { ...wrapped, places: wrapped.line.points.map((p) => placeOf(surface, p)) };
}

describe('a stroke laid round the surface', () => {
  it('is itself on a flat sheet', async () => {
    const sheet = sheetMesh(12, 12, 120, 120);
    await forAll(
      (rand) => Array.from({ length: 5 }, () => ({ x: Math.round(12 * rand()) * 5, y: 60 * rand() })),
      (points) => {
        const { places } = wrap(sheet, vec3(30 + points[0].x / 2, 30, 0), vec3(1, 0, 0), { points, closed: false });
        const [sx, sy] = [30 + points[0].x / 2 - points[0].x, 30 - points[0].y];
        const ends = points.map(({ x, y }) => vec3(x + sx, y + sy, 0));
        if (ends.some(({ x, y }) => Math.min(x, y) < 1 || Math.max(x, y) > 119)) return;
        for (const end of ends) expect(Math.min(...places.map((p) => gap(p, end)))).toBeLessThan(1e-7); // a place within 1e-9 of a side's end is that end
      },
      { runs: 60 },
    );
  });

  it('closes as it was drawn round a tube, over all its edges', () => {
    const [sides, r] = [24, 50];
    const tube = tubeMesh(sides, r, 200, 7);
    const square: Stroke = {
      points: [
        { x: 0, y: 0 },
        { x: 120, y: 0 },
        { x: 120, y: 90 },
        { x: 0, y: 90 },
      ],
      closed: true,
    };
    const { places, lengthMm, isAtOpenEdge } = wrap(tube, vec3(r, 0, 60), vec3(0, 1, 0.3), square);
    expect(isAtOpenEdge).toBe(false);
    expect(lengthMm).toBeCloseTo(420, 9);
    expect(gap(places[places.length - 1], places[0])).toBeLessThan(1e-7); // a place within 1e-9 of a side's end is that end
  });

  it('does not close over a dome, and ends at open edges', () => {
    const triangle: Stroke = {
      points: [
        { x: 0, y: 0 },
        { x: 90, y: 0 },
        { x: 45, y: 78 },
      ],
      closed: true,
    };
    const { places } = wrap(ballMesh(4, 100), vec3(0, 0, 100), vec3(1, 0, 0), triangle);
    expect(gap(places[places.length - 1], places[0])).toBeGreaterThan(10);
    const off = wrap(sheetMesh(4, 4, 40, 40), vec3(20, 20, 0), vec3(1, 0, 0), triangle);
    expect(off.isAtOpenEdge).toBe(true);
    expect(off.lengthMm).toBeCloseTo(20, 9);
  });
});
