import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { readSvgPath, type Stroke } from '../../../src/geom/svg-path.ts';
import { cross3, dot3, length3, sub3, unit3, vec3, type Vec3 } from '../../../src/geom/vec.ts';
import { layLine, pointAlong } from '../../../src/mesh/lines/along-line.ts';
import { checkMeshLine } from '../../../src/mesh/lines/check-mesh-line.ts';
import { lineLength, placeOf } from '../../../src/mesh/lines/mesh-point.ts';
import { projectStrokeSteps, type ProjectedStroke } from '../../../src/mesh/lines/projected-line.ts';
import { placeOnDrawing, type DrawingView } from '../../../src/mesh/lines/view-projection.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { surfaceOf } from '../../../src/mesh/surface.ts';
import { surfaceTreeOf } from '../../../src/mesh/surface-tree.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, torusMesh } from '../../support/meshes.ts';
import { ballMesh, sheetMesh } from '../../support/round-meshes.ts';

const FROM_ABOVE: DrawingView = { origin: vec3(0, 0, 300), u: vec3(1, 0, 0), v: vec3(0, 1, 0) };
const path = (text: string, tolerance = 0.05): readonly Stroke[] => expectOk(readSvgPath(text, tolerance));

function project(mesh: Mesh, strokes: readonly Stroke[], view = FROM_ABOVE): ProjectedStroke[] {
  const found = runAtOnce(projectStrokeSteps(surfaceOf(mesh), view, strokes));
  for (const { lines } of found) for (const line of lines) expect(checkMeshLine(surfaceOf(mesh), line)).toEqual([]);
  return [...found];
}

/** Every place of the lines is seen where the strokes are drawn, and nothing stands before it. */
function expectSeen(mesh: Mesh, view: DrawingView, stroke: Stroke, { lines }: ProjectedStroke): void {
  const surface = surfaceOf(mesh);
  const towards = cross3(view.u, view.v);
  for (const line of lines) {
    const laid = layLine(surface, line);
    for (let i = 0; i <= 20; i += 1) {
      const p = placeOf(surface, pointAlong(surface, laid, (laid.lengthMm * (i + 0.5)) / 21));
      const back = view.eye === undefined ? towards : unit3(sub3(view.eye, p));
      const height = dot3(sub3(view.origin, p), towards) / dot3(back, towards);
      const q = sub3({ x: p.x + height * back.x, y: p.y + height * back.y, z: p.z + height * back.z }, view.origin);
      expect(gapTo(stroke, dot3(q, view.u), dot3(q, view.v))).toBeLessThan(1e-7);
      const from = { x: p.x + 1e-6 * back.x, y: p.y + 1e-6 * back.y, z: p.z + 1e-6 * back.z };
      const before = surfaceTreeOf(mesh).raycast(from, back);
      if (before !== null) expect(before.distance).toBeLessThan(1e-4);
    }
  }
}

function gapTo({ points, closed }: Stroke, x: number, y: number): number {
  let least = Infinity;
  for (let i = closed ? 0 : 1; i < points.length; i += 1) {
    const [a, b] = [points[(i + points.length - 1) % points.length], points[i]];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const share = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
    least = Math.min(least, Math.hypot(a.x + share * dx - x, a.y + share * dy - y));
  }
  return least;
}

describe('a drawing on the surface', () => {
  it('lies on a flat sheet as it was drawn', () => {
    const sheet = sheetMesh(13, 13, 100, 100);
    const [circle] = path('M30 -50 a20 20 0 1 0 40 0 a20 20 0 1 0 -40 0 z');
    const [drawn] = project(sheet, [circle]);
    expect(drawn.missedShare).toBe(0);
    expect(drawn.lines.map(({ closed }) => closed)).toEqual([true]);
    const round = circle.points.reduce((sum, p, i) => {
      const q = circle.points[(i + 1) % circle.points.length];
      return sum + Math.hypot(q.x - p.x, q.y - p.y);
    }, 0);
    expect(lineLength(surfaceOf(sheet), drawn.lines[0])).toBeCloseTo(round, 8);
    expectSeen(sheet, FROM_ABOVE, circle, drawn);
  });

  it('follows corners and edges it is drawn along', () => {
    const sheet = sheetMesh(4, 4, 40, 40);
    const [drawn] = project(sheet, path('M0 -10 L40 -10 L0 -40'));
    expect(drawn.lines).toHaveLength(1);
    expect(lineLength(surfaceOf(sheet), drawn.lines[0])).toBeCloseTo(40 + 50, 9);
    expect(drawn.lines[0].points.slice(0, 3)).toEqual([5, 6, 7].map((vertex) => ({ at: 'vertex', vertex })));
  });

  it('is half a great circle on a ball, on the side one looks at', () => {
    const ball = ballMesh(4, 100);
    const [drawn] = project(ball, path('M-150 0 L150 0.001'));
    expect(drawn.lines).toHaveLength(1);
    expect(drawn.missedShare).toBeCloseTo(1 / 3, 2);
    expect(lineLength(surfaceOf(ball), drawn.lines[0])).toBeCloseTo(Math.PI * 100, -0.5);
    for (const p of drawn.lines[0].points) expect(placeOf(surfaceOf(ball), p).z).toBeGreaterThan(-3);
  });

  it('leaves out a hole, and what lies behind', () => {
    const ring = torusMesh(60, 30, 100, 40);
    const across = path('M-200 0.3 L200 0.7');
    const [above] = project(ring, across);
    expect(above.lines).toHaveLength(2);
    expect(above.missedShare).toBeCloseTo((400 - 2 * 80) / 400, 2);
    expectSeen(ring, FROM_ABOVE, across[0], above);
    // From the side the near wall hides all others: one line, from end to end.
    const side: DrawingView = { origin: vec3(0, -300, 0), u: vec3(1, 0, 0), v: vec3(0, 0, 1) };
    const [beside] = project(ring, path('M-200 0.3 L200 0.7'), side);
    expect(beside.lines).toHaveLength(1);
    for (const p of beside.lines[0].points) expect(placeOf(surfaceOf(ring), p).y).toBeLessThan(1e-9);
  });

  it('breaks off where the surface turns away, and goes on behind', async () => {
    // Waves seen aslant: their backs are hidden.
    const waves = sheetMesh(40, 12, 200, 60, (x) => 12 * Math.sin(x / 8));
    const look = unit3(vec3(1, 0, 0.35));
    const v = unit3(cross3(look, vec3(0, 1, 0)));
    const aslant: DrawingView = { origin: vec3(400, 30, 120), u: vec3(0, 1, 0), v };
    expect(dot3(cross3(aslant.u, aslant.v), look)).toBeCloseTo(1, 12);
    await forAll(
      (rand) => ({
        a: { x: -25 + 50 * rand(), y: -120 + 240 * rand() },
        b: { x: -25 + 50 * rand(), y: -120 + 240 * rand() },
        isNear: rand() < 0.5,
      }),
      ({ a, b, isNear }) => {
        const view = isNear
          ? { ...aslant, eye: placeOnDrawing({ ...aslant, origin: vec3(700, 40, 240) }, { x: 0, y: 0 }) }
          : aslant;
        const stroke: Stroke = { points: [a, b], closed: false };
        if (Math.hypot(a.x - b.x, a.y - b.y) < 1) return;
        const [drawn] = project(waves, [stroke], view);
        expectSeen(waves, view, stroke, drawn);
      },
      { runs: 40 },
    );
    const [down] = project(
      waves,
      [
        {
          points: [
            { x: 0, y: 80 },
            { x: 1, y: -160 },
          ],
          closed: false,
        },
      ],
      aslant,
    );
    expect(down.lines.length).toBeGreaterThan(2);
  });

  it('is drawn from an eye on a cube as perspective has it', () => {
    const cube = boxMesh(10);
    const view: DrawingView = { origin: vec3(5, 5, 20), u: vec3(1, 0, 0), v: vec3(0, 1, 0), eye: vec3(5, 5, 30) };
    // The top is twice as far as the plane: 2 mm on the drawing are 4 mm on the cube.
    const [drawn] = project(
      cube,
      [
        {
          points: [
            { x: -2, y: -1 },
            { x: 1, y: 2 },
          ],
          closed: false,
        },
      ],
      view,
    );
    const places = drawn.lines[0].points.map((p) => placeOf(surfaceOf(cube), p));
    const gap = (p: Vec3, q: Vec3): number => length3(sub3(p, q));
    expect(gap(places[0], vec3(1, 3, 10))).toBeLessThan(1e-9);
    expect(gap(places[places.length - 1], vec3(7, 9, 10))).toBeLessThan(1e-9);
    expect(() => project(cube, [], { ...view, eye: vec3(5, 5, 10) })).toThrow(RangeError);
  });

  it('is nothing beside the surface', () => {
    expect(project(boxMesh(10), path('M100 100 L200 200'))).toEqual([{ lines: [], missedShare: 1 }]);
    expect(project(boxMesh(10), [])).toEqual([]);
  });
});
