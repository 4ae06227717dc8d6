import type { Vec3 } from '../../geom/vec.ts';
import type { PatchSide, Shape, ShapePatch } from '../../model/shape.ts';

/** A finished shape as a mesh, for checking: corners, faces counter-clockwise seen from outside, and the edges that are cut. */
export interface ShapeMesh {
  readonly corners: readonly Vec3[];
  readonly faces: readonly (readonly number[])[];
  readonly seams: readonly (readonly [number, number])[];
}

/** Corners nearer than this share of the shape's size are one: rounding of what should be equal. */
const JOIN_SHARE = 1e-9;

/**
 * A shape as a mesh of flat facets with its corners on the true surface, as a modeller would draw it, from the finished surface alone: nothing
 * of the flat pieces goes into it.
 * @param facets  facets to a whole turn, > 2.
 * @returns null where the shape has no surface (a table, a flat piece).
 */
export function meshOfShape({ patches, solid }: Pick<Shape, 'patches' | 'solid'>, facets: number): ShapeMesh | null {
  if (solid !== null) return panels(solid.corners, solid.faces);
  if (patches.length === 0) return null;
  const grids = patches.map((patch) => gridOf(patch, facets));
  const size = grids
    .flatMap(({ points }) => points)
    .reduce((most, { x, y, z }) => Math.max(most, Math.abs(x), Math.abs(y), Math.abs(z)), 0);
  const join = new Joining(size * JOIN_SHARE);
  const faces: number[][] = [];
  const sidesOfEdge = new Map<string, number>();
  const cut = new Map<string, readonly [number, number]>();
  for (const { points, columns, rows, cutSides } of grids) {
    const numbers = points.map((p) => join.add(p));
    const at = (i: number, j: number): number => numbers[j * (columns + 1) + i];
    for (let j = 0; j < rows; j += 1)
      for (let i = 0; i < columns; i += 1) {
        const ring = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
        const face = ring.filter((v, k) => v !== ring[(k + 1) % 4]);
        if (new Set(face).size < 3) continue;
        faces.push(face);
        face.forEach((v, k) => {
          const name = edgeName(v, face[(k + 1) % face.length]);
          sidesOfEdge.set(name, (sidesOfEdge.get(name) ?? 0) + 1);
        });
      }
    const mark = (a: number, b: number): void => {
      if (a !== b) cut.set(edgeName(a, b), [a, b]);
    };
    for (let i = 0; i < columns; i += 1) {
      if (cutSides.includes('v0')) mark(at(i, 0), at(i + 1, 0));
      if (cutSides.includes('v1')) mark(at(i, rows), at(i + 1, rows));
    }
    for (let j = 0; j < rows; j += 1) {
      if (cutSides.includes('u0')) mark(at(0, j), at(0, j + 1));
      if (cutSides.includes('u1')) mark(at(columns, j), at(columns, j + 1));
    }
  }
  // A side at which nothing else begins is a rim.
  const seams = [...cut].filter(([name]) => sidesOfEdge.get(name) === 2).map(([, pair]) => pair);
  return { corners: join.corners, faces, seams };
}

const ALL_SIDES: readonly PatchSide[] = ['u0', 'u1', 'v0', 'v1'];

function gridOf({ solid, facets: shares = [1, 0], cut = ALL_SIDES }: ShapePatch, facets: number) {
  const [columns, rows] = shares.map((share) => Math.max(1, Math.round(facets * share)));
  const points = Array.from({ length: rows + 1 }, (_, j) =>
    Array.from({ length: columns + 1 }, (_, i) => solid(i / columns, j / rows)),
  ).flat();
  return { points, columns, rows, cutSides: cut };
}

const edgeName = (a: number, b: number): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** Gives places that are equal but for rounding one number. */
class Joining {
  readonly corners: Vec3[] = [];
  readonly #step: number;
  readonly #cells = new Map<string, number[]>();

  constructor(step: number) {
    this.#step = step;
  }

  add(p: Vec3): number {
    const [i, j, k] = [p.x, p.y, p.z].map((x) => Math.floor(x / this.#step / 4));
    for (const a of [i - 1, i, i + 1])
      for (const b of [j - 1, j, j + 1])
        for (const c of [k - 1, k, k + 1])
          for (const v of this.#cells.get(`${a} ${b} ${c}`) ?? []) {
            const q = this.corners[v];
            if (Math.hypot(q.x - p.x, q.y - p.y, q.z - p.z) <= this.#step) return v;
          }
    const name = `${i} ${j} ${k}`;
    this.#cells.set(name, [...(this.#cells.get(name) ?? []), this.corners.length]);
    return this.corners.push(p) - 1;
  }
}

/** Flat panels: every edge between two of them is cut, and corners that none has are left out. */
function panels(corners: readonly Vec3[], faces: readonly (readonly number[])[]): ShapeMesh {
  const used = [...new Set(faces.flat())].sort((a, b) => a - b);
  const numberOf = new Map(used.map((v, i) => [v, i]));
  const renumbered = faces.map((face) => face.map((v) => numberOf.get(v) ?? 0));
  const sides = new Map<string, { readonly pair: readonly [number, number]; count: number }>();
  for (const face of renumbered)
    face.forEach((a, i) => {
      const b = face[(i + 1) % face.length];
      const known = sides.get(edgeName(a, b));
      if (known === undefined) sides.set(edgeName(a, b), { pair: [a, b], count: 1 });
      else known.count += 1;
    });
  return {
    corners: used.map((v) => corners[v]),
    faces: renumbered,
    seams: [...sides.values()].filter(({ count }) => count === 2).map(({ pair }) => pair),
  };
}
