import { describe, expect, it } from 'vitest';
import { ringArea } from '../../../src/geom/ring.ts';
import { isInRings } from '../../../src/geom/in-rings.ts';
import { length3, pointAt3, sub3, vec3 } from '../../../src/geom/vec.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { surfaceOf } from '../../../src/mesh/surface.ts';
import type { SurfaceTrace } from '../../../src/model/trace.ts';
import { enteringCore } from '../../../src/steps/assembly/entering.ts';
import { cutHoles } from '../../../src/steps/assembly/cut-holes.ts';
import { tracesOnPieces, type FlatGround } from '../../../src/steps/assembly/on-pieces.ts';
import { expectOk } from '../../support/expect-ok.ts';

const SIDES = 24;
const RINGS = 10;
const R = 50;
const STEP = 2 * R * Math.sin(Math.PI / SIDES);

/** A tube round z cut into pieces along its length at these sides, each unrolled exactly: x round, y up. One cut alone gives one piece with a closing seam. */
function rolledTube(cuts: readonly number[]): { mesh: Mesh; pieces: FlatGround[] } {
  const positions: number[] = [];
  for (let j = 0; j <= RINGS; j += 1)
    for (let i = 0; i < SIDES; i += 1)
      positions.push(R * Math.cos((2 * Math.PI * i) / SIDES), R * Math.sin((2 * Math.PI * i) / SIDES), 20 * j);
  const triangles: number[] = [];
  for (let i = 0; i < SIDES; i += 1)
    for (let j = 0; j < RINGS; j += 1) {
      const [a, b] = [j * SIDES + i, j * SIDES + ((i + 1) % SIDES)];
      triangles.push(a, b, b + SIDES, a, b + SIDES, a + SIDES);
    }
  const count = positions.length / 3;
  const numbers = Uint32Array.from({ length: count }, (_, v) => v);
  const mesh: Mesh = {
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from(triangles),
    faceOfTriangle: Uint32Array.from({ length: triangles.length / 3 }, (_, t) => t),
    faceCount: triangles.length / 3,
    fileVertex: numbers,
    vertexOfFile: Int32Array.from(numbers),
    groupNames: [],
    groupOfFace: new Int32Array(triangles.length / 3).fill(-1),
  };
  const pieces = cuts.map((from, p): FlatGround => {
    const wide = ((cuts[(p + 1) % cuts.length] - from + SIDES - 1) % SIDES) + 1;
    const at = (i: number, j: number): number => j * (wide + 1) + i;
    const meshTriangles: number[] = [];
    const local: number[] = [];
    for (let i = 0; i < wide; i += 1)
      for (let j = 0; j < RINGS; j += 1) {
        const t = 2 * (((from + i) % SIDES) * RINGS + j);
        meshTriangles.push(t, t + 1);
        local.push(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j), at(i + 1, j + 1), at(i, j + 1));
      }
    const order = meshTriangles.map((_, k) => k).sort((x, y) => meshTriangles[x] - meshTriangles[y]);
    const loop: number[] = [];
    for (let i = 0; i < wide; i += 1) loop.push(at(i, 0));
    for (let j = 0; j < RINGS; j += 1) loop.push(at(wide, j));
    for (let i = wide; i > 0; i -= 1) loop.push(at(i, RINGS));
    for (let j = RINGS; j > 0; j -= 1) loop.push(at(0, j));
    const uv = new Float64Array(2 * (wide + 1) * (RINGS + 1));
    for (let i = 0; i <= wide; i += 1) for (let j = 0; j <= RINGS; j += 1) uv.set([i * STEP, 20 * j], 2 * at(i, j));
    return {
      patch: {
        meshTriangles: Uint32Array.from(order, (k) => meshTriangles[k]),
        triangles: Uint32Array.from(order.flatMap((k) => local.slice(3 * k, 3 * k + 3))),
        loops: [Uint32Array.from(loop)],
      },
      uv,
    };
  });
  return { mesh, pieces };
}

/** The hole of a branch of radius 20 along +x, whose middle stands at half the height of the tube. */
function hole(mesh: Mesh, z = 101.3): SurfaceTrace {
  const face = surfaceOf(mesh);
  const core = {
    name: 'branch',
    point: vec3(0, 0, z),
    direction: vec3(1, 0, 0.001),
    diameterMm: 40,
    fromMm: 0,
    toMm: 90,
  };
  const { holes } = cutHoles({ face, neutral: face, back: face }, expectOk(enteringCore(core, 0)), 45);
  expect(holes.length).toBe(1);
  return holes[0].face;
}

/** Whether each flat point comes back to where it was, and how long all of it is. */
function checkBack(mesh: Mesh, trace: SurfaceTrace, pieces: readonly FlatGround[]) {
  const laid = tracesOnPieces([trace], pieces);
  let length = 0;
  for (const { piece, places, points, of, closed } of laid.traces) {
    const { patch, uv } = pieces[piece];
    places.forEach(({ triangle, weights }, i) => {
      const t = patch.meshTriangles[triangle];
      const back = [0, 1, 2].map((axis) =>
        weights.reduce((sum, w, k) => sum + w * mesh.positions[3 * mesh.triangles[3 * t + k] + axis], 0),
      );
      expect(length3(sub3(vec3(back[0], back[1], back[2]), pointAt3(trace.places, of[i])))).toBeLessThan(1e-11);
      for (const axis of [0, 1])
        expect(points[2 * i + axis]).toBeCloseTo(
          weights.reduce((sum, w, k) => sum + w * uv[2 * patch.triangles[3 * triangle + k] + axis], 0),
          12,
        );
    });
    const count = points.length / 2;
    for (let i = closed ? 0 : 1; i < count; i += 1) {
      const j = (i + count - 1) % count;
      length += Math.hypot(points[2 * i] - points[2 * j], points[2 * i + 1] - points[2 * j + 1]);
    }
  }
  return { laid, length };
}

const lengthOf = ({ places, closed }: SurfaceTrace): number => {
  const count = places.length / 3;
  let sum = 0;
  for (let i = closed ? 0 : 1; i < count; i += 1)
    sum += length3(sub3(pointAt3(places, i), pointAt3(places, (i + count - 1) % count)));
  return sum;
};

describe('tracesOnPieces', () => {
  it('keeps a hole within one piece a ring, counter-clockwise, as long as on the surface', () => {
    const { mesh, pieces } = rolledTube([8, 16]);
    const trace = hole(mesh);
    const { laid, length } = checkBack(mesh, trace, pieces);
    expect(laid.traces.length).toBe(1);
    expect(laid.traces[0]).toMatchObject({ piece: 1, closed: true });
    expect(laid.notches).toEqual([]);
    expect(ringArea(laid.traces[0].points)).toBeGreaterThan(0);
    expect(length).toBeCloseTo(lengthOf(trace), 9);
  });

  it('cuts a hole that crosses a seam out of both pieces; both notches together are the whole hole', () => {
    const { mesh, pieces } = rolledTube([8, 16]);
    const whole = ringArea(tracesOnPieces([hole(mesh)], pieces).traces[0].points);
    const parted = rolledTube([0, 12]);
    const trace = hole(parted.mesh);
    const { laid, length } = checkBack(parted.mesh, trace, parted.pieces);
    expect(laid.traces.map(({ piece, closed }) => ({ piece, closed }))).toHaveLength(2);
    expect(laid.traces.every(({ closed }) => !closed)).toBe(true);
    expect(laid.notches.map(({ piece }) => piece)).toEqual([0, 1]);
    expect(laid.notches.reduce((sum, { ring }) => sum + ringArea(ring), 0)).toBeCloseTo(whole, 8);
    expect(length).toBeCloseTo(lengthOf(trace), 9);
    // The middle of the hole lies on the seam: at x 0 of the one, at its far side of the other.
    expect(isInRings([laid.notches[0].ring], 0.01, 101.3)).toBe(true);
    expect(isInRings([laid.notches[1].ring], 12 * STEP - 0.01, 101.3)).toBe(true);
  });

  it('parts a hole at a seam that closes a piece on itself', () => {
    const { mesh, pieces } = rolledTube([0]);
    const { laid } = checkBack(mesh, hole(mesh), pieces);
    expect(laid.traces.map(({ piece, closed }) => ({ piece, closed }))).toEqual([
      { piece: 0, closed: false },
      { piece: 0, closed: false },
    ]);
    expect(laid.notches.length).toBe(2);
    expect(laid.notches.every(({ ring }) => ringArea(ring) > 100)).toBe(true);
  });

  it('joins lines that cut across a piece from seam to seam into one notch each, and leaves out what no piece holds', () => {
    // Pieces so narrow that the hole covers some of their width from seam to seam: two lines bound one notch.
    const { mesh, pieces } = rolledTube([22, 23, 0, 1, 2, 12]);
    const trace = hole(mesh);
    const { laid } = checkBack(mesh, trace, pieces);
    const across = laid.notches.filter(({ traces }) => traces.length === 2);
    expect(across.length).toBeGreaterThan(0);
    const whole = rolledTube([8, 16]);
    const area = ringArea(tracesOnPieces([hole(whole.mesh)], whole.pieces).traces[0].points);
    expect(laid.notches.reduce((sum, { ring }) => sum + ringArea(ring), 0)).toBeCloseTo(area, 8);
    const one = tracesOnPieces([trace], pieces.slice(0, 1));
    expect(one.traces.every(({ piece }) => piece === 0)).toBe(true);
    expect(tracesOnPieces([trace], []).traces).toEqual([]);
  });
});
