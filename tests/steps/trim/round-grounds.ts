import { cross3, dot3, length3, scale3, sub3, add3, unit3, type Vec3 } from '../../../src/geom/vec.ts';
import type { MeshLine } from '../../../src/mesh/lines/mesh-line.ts';
import { surfaceOf, type Surface } from '../../../src/mesh/surface.ts';
import { centreAt, wayAtArc } from '../../../src/steps/trim/flat-centre.ts';
import type { StripStretch } from '../../../src/steps/trim/strip-stretches.ts';
import { meshOf } from '../../support/meshes.ts';

/** A surface given by two parameters, u round it and v along it; the outside lies left of u × v. */
export interface RoundForm {
  readonly at: (u: number, v: number) => Vec3;
  /** Nearest place of the exact surface, and its outward normal. */
  readonly project: (p: Vec3) => { readonly place: Vec3; readonly normal: Vec3 };
}

export const sphere = (r: number): RoundForm => ({
  at: (u, v) => ({ x: r * Math.cos(v) * Math.cos(u), y: r * Math.cos(v) * Math.sin(u), z: r * Math.sin(v) }),
  project: (p) => ({ place: scale3(unit3(p), r), normal: unit3(p) }),
});

/** About z, tube of radius `small` round a circle of radius `big`; v = 0 outside, pi / 2 on top. */
export const torus = (big: number, small: number): RoundForm => ({
  at: (u, v) => {
    const far = big + small * Math.cos(v);
    return { x: far * Math.cos(u), y: far * Math.sin(u), z: small * Math.sin(v) };
  },
  project: (p) => {
    const far = Math.hypot(p.x, p.y);
    const middle = { x: (p.x * big) / far, y: (p.y * big) / far, z: 0 };
    const normal = unit3(sub3(p, middle));
    return { place: add3(middle, scale3(normal, small)), normal };
  },
});

/** Radius v tan(half) at the height -v below its tip; half: half its opening angle. */
export const cone = (half: number): RoundForm => ({
  at: (u, v) => ({ x: v * Math.tan(half) * Math.cos(u), y: v * Math.tan(half) * Math.sin(u), z: -v }),
  project: (p) => {
    const far = Math.hypot(p.x, p.y);
    const slant = far * Math.sin(half) - p.z * Math.cos(half);
    const round = (slant * Math.sin(half)) / far;
    return {
      place: { x: p.x * round, y: p.y * round, z: -slant * Math.cos(half) },
      normal: unit3({ x: (p.x / far) * Math.cos(half), y: (p.y / far) * Math.cos(half), z: Math.sin(half) }),
    };
  },
});

export const cylinder = (r: number): RoundForm => ({
  at: (u, v) => ({ x: r * Math.cos(u), y: r * Math.sin(u), z: v }),
  project: (p) => {
    const far = Math.hypot(p.x, p.y);
    return { place: { x: (p.x * r) / far, y: (p.y * r) / far, z: p.z }, normal: { x: p.x / far, y: p.y / far, z: 0 } };
  },
});

/** A band of a form: `m` columns all the way round, rows at the given v. Vertex of column i in row j: `j * m + i`. */
export function bandSurface(form: RoundForm, m: number, rows: readonly number[], isDown = false): Surface {
  const points = rows.flatMap((v) =>
    Array.from({ length: m }, (_, i): [number, number, number] => {
      const { x, y, z } = form.at((2 * Math.PI * i) / m, v);
      return [x, y, z];
    }),
  );
  const faces: number[][] = [];
  for (let j = 0; j + 1 < rows.length; j += 1)
    for (let i = 0; i < m; i += 1) {
      const [a, b, c, d] = [j * m + i, j * m + ((i + 1) % m), (j + 1) * m + ((i + 1) % m), (j + 1) * m + i];
      // Diagonals turn about, so that the mesh favours no side.
      const quads =
        (i + j) % 2 === 0
          ? [
              [a, b, c],
              [a, c, d],
            ]
          : [
              [a, b, d],
              [b, c, d],
            ];
      faces.push(...(isDown ? quads.map((quad) => [...quad].reverse()) : quads));
    }
  return surfaceOf(meshOf(points, faces));
}

export const spaced = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

/** The row of vertices all round. */
export const ringLine = (m: number, row: number): MeshLine => ({
  points: Array.from({ length: m }, (_, i) => ({ at: 'vertex', vertex: row * m + i })),
  closed: true,
});

/** Length of middle run in one step when a strip is bent back, mm. */
const STEP_MM = 0.05;

/**
 * Bends a flat strip back on the exact surface: from a place and a direction it runs on as the surface bears it, turning in its plane by the curvature of the
 * flat strip alone. @returns the greatest distance from what it should cover, mm.
 */
export function bendBack(
  form: RoundForm,
  { centre, fromMm, toMm }: Pick<StripStretch, 'centre' | 'fromMm' | 'toMm'>,
  start: Vec3,
  heading: Vec3,
  distance: (p: Vec3) => number,
): number {
  let [p, t] = [form.project(start).place, unit3(heading)];
  const [first, last] = [centreAt(centre, fromMm).arc, centreAt(centre, toMm).arc];
  const steps = Math.ceil((last - first) / STEP_MM);
  const step = (last - first) / steps;
  let most = 0;
  const turnBy = (angle: number, normal: Vec3): void => {
    const flat = unit3(sub3(t, scale3(normal, dot3(t, normal))));
    t = add3(scale3(flat, Math.cos(angle)), scale3(cross3(normal, flat), Math.sin(angle)));
  };
  for (let i = 0; i < steps; i += 1) {
    const { curvature } = centreAt(centre, wayAtArc(centre, first + (i + 0.5) * step));
    turnBy((curvature * step) / 2, form.project(p).normal);
    // Half a step to the normal there, which bends the direction on the way as the surface does: second order.
    const middle = form.project(add3(p, scale3(t, step / 2)));
    t = unit3(sub3(t, scale3(middle.normal, dot3(t, middle.normal))));
    const next = form.project(add3(p, scale3(t, step)));
    p = next.place;
    turnBy((curvature * step) / 2, next.normal);
    most = Math.max(most, distance(p));
  }
  return most;
}

/** Distance from the circle about z of this radius and height, mm. */
export const fromCircle =
  (radius: number, z: number) =>
  (p: Vec3): number =>
    Math.hypot(Math.hypot(p.x, p.y) - radius, p.z - z);

export const size = length3;
