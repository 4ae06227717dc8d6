import { add3, dot3, pointAt3, rad, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { SolidScene } from './solid-scene.ts';

/** A way of looking along parallel sight: all three of length 1 and square to each other. */
export interface PictureView {
  readonly right: Vec3;
  readonly up: Vec3;
  /** Towards the eye. */
  readonly eye: Vec3;
}

/** A visible stretch of an edge, in the plane of the picture, mm at full size. */
export interface SeenLine {
  readonly plate: number;
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

/** A fold flatter than this is not drawn, unless the surface turns away from the eye there: the same as on templates, radians [J]. */
const CREASE_RAD = rad(20);

/** How far from an edge, along the surface and towards the eye, it is asked whether it is seen, mm: more than dry fits overlap, less than foam. */
const BESIDE_MM = 0.6;

/** Stretches shorter than this are not asked about, mm. */
const SPECK_MM = 0.05;

export const inPicture = ({ right, up }: PictureView, p: Vec3): { readonly x: number; readonly y: number } => ({
  x: dot3(p, right),
  y: dot3(p, up),
});

/**
 * The edges of all bodies as they are seen: creases, and where the surface turns away. An edge comes into sight or out of it only where an outline
 * crosses it in the picture (Appel 1967), so it is parted there and each part asked once, by a ray from its middle.
 */
export function seenLines(scene: SolidScene, view: PictureView): readonly SeenLine[] {
  const { edgeVertices, edgeTriangles, edgePlate, normals, positions } = scene;
  const faces = normals.map((normal) => dot3(normal, view.eye) > 0);
  const flat = new Float64Array((2 * positions.length) / 3);
  for (let v = 0; v < positions.length / 3; v += 1) {
    const { x, y } = inPicture(view, pointAt3(positions, v));
    flat[2 * v] = x;
    flat[2 * v + 1] = y;
  }
  const outlines: number[] = [];
  const drawn: number[] = [];
  for (let e = 0; e < edgePlate.length; e += 1) {
    const [s, t] = [edgeTriangles[2 * e], edgeTriangles[2 * e + 1]];
    const isOutline = t < 0 || faces[s] !== faces[t];
    if (isOutline) outlines.push(e);
    const isSeen = faces[s] || (t >= 0 && faces[t]);
    if (isSeen && (isOutline || dot3(normals[s], normals[t]) < Math.cos(CREASE_RAD))) drawn.push(e);
  }
  const grid = new OutlineGrid(flat, edgeVertices, outlines);
  const lines: SeenLine[] = [];
  for (const e of drawn) {
    const [v, w] = [edgeVertices[2 * e], edgeVertices[2 * e + 1]];
    const [ax, ay, bx, by] = [flat[2 * v], flat[2 * v + 1], flat[2 * w], flat[2 * w + 1]];
    const length = Math.hypot(bx - ax, by - ay);
    if (length < SPECK_MM) continue;
    const shares = [0, ...grid.crossings(ax, ay, bx, by).sort((p, q) => p - q), 1];
    const at = (share: number): [number, number] => [ax + share * (bx - ax), ay + share * (by - ay)];
    let from = -1;
    for (let i = 1; i < shares.length; i += 1) {
      const isSpeck = (shares[i] - shares[i - 1]) * length < SPECK_MM;
      const seen = isSpeck ? from >= 0 : isSeen(scene, view, faces, e, (shares[i - 1] + shares[i]) / 2);
      if (seen && from < 0) from = shares[i - 1];
      if (from >= 0 && (!seen || i + 1 === shares.length)) {
        const to = seen ? shares[i] : shares[i - 1];
        const [[px, py], [qx, qy]] = [at(from), at(to)];
        if ((to - from) * length >= SPECK_MM) lines.push({ plate: edgePlate[e], ax: px, ay: py, bx: qx, by: qy });
        from = -1;
      }
    }
  }
  return lines;
}

/** Whether a place of an edge is seen: asked a little beside it, on a side that faces the eye. */
function isSeen(scene: SolidScene, view: PictureView, faces: readonly boolean[], edge: number, share: number): boolean {
  const { edgeVertices, edgeTriangles, positions, triangles } = scene;
  const a = pointAt3(positions, edgeVertices[2 * edge]);
  const b = pointAt3(positions, edgeVertices[2 * edge + 1]);
  const place = add3(a, scale3(sub3(b, a), share));
  return [0, 1].some((k) => {
    const t = edgeTriangles[2 * edge + k];
    if (t < 0 || !faces[t]) return false;
    const middle = [0, 1, 2].reduce((sum, i) => add3(sum, scale3(pointAt3(positions, triangles[3 * t + i]), 1 / 3)), {
      x: 0,
      y: 0,
      z: 0,
    });
    return isFree(scene, view, add3(place, scale3(unit3(sub3(middle, place)), BESIDE_MM / 3)));
  });
}

/** Whether nothing lies between a place on a surface and the eye. */
export const isFree = ({ tree }: Pick<SolidScene, 'tree'>, { eye }: PictureView, place: Vec3): boolean =>
  tree.raycast(add3(place, scale3(eye, BESIDE_MM)), eye) === null;

/** Outlines in the picture on a square grid. */
class OutlineGrid {
  readonly #flat: Float64Array;
  readonly #ends: Uint32Array;
  readonly #cells = new Map<number, number[]>();
  readonly #mm: number;

  constructor(flat: Float64Array, ends: Uint32Array, edges: readonly number[]) {
    this.#flat = flat;
    this.#ends = ends;
    const lengths = edges.map((e) => {
      const [ax, ay, bx, by] = this.#of(e);
      return Math.hypot(bx - ax, by - ay);
    });
    this.#mm = Math.max(1, (4 * lengths.reduce((sum, mm) => sum + mm, 0)) / Math.max(1, edges.length));
    for (const e of edges) {
      const [ax, ay, bx, by] = this.#of(e);
      this.#each(ax, ay, bx, by, (cell) => {
        const list = this.#cells.get(cell);
        if (list === undefined) this.#cells.set(cell, [e]);
        else list.push(e);
      });
    }
  }

  /** Shares of a line at which outlines cross it, strictly inside both. */
  crossings(ax: number, ay: number, bx: number, by: number): number[] {
    const seen = new Set<number>();
    const shares: number[] = [];
    this.#each(ax, ay, bx, by, (cell) => {
      for (const e of this.#cells.get(cell) ?? []) {
        if (seen.has(e)) continue;
        seen.add(e);
        const [cx, cy, dx, dy] = this.#of(e);
        const turn = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx);
        if (turn === 0) continue;
        const share = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / turn;
        const other = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / turn;
        if (share > 0 && share < 1 && other > -EDGE && other < 1 + EDGE) shares.push(share);
      }
    });
    return shares;
  }

  #of(e: number): readonly [number, number, number, number] {
    const [v, w] = [this.#ends[2 * e], this.#ends[2 * e + 1]];
    return [this.#flat[2 * v], this.#flat[2 * v + 1], this.#flat[2 * w], this.#flat[2 * w + 1]];
  }

  /** All cells that the box of a short part of the line touches, part by part. */
  #each(ax: number, ay: number, bx: number, by: number, use: (cell: number) => void): void {
    const parts = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / this.#mm));
    const cellOf = (mm: number): number => Math.floor(mm / this.#mm);
    for (let k = 0; k < parts; k += 1) {
      const [x0, y0] = [ax + ((bx - ax) * k) / parts, ay + ((by - ay) * k) / parts];
      const [x1, y1] = [ax + ((bx - ax) * (k + 1)) / parts, ay + ((by - ay) * (k + 1)) / parts];
      for (let row = cellOf(Math.min(y0, y1)); row <= cellOf(Math.max(y0, y1)); row += 1) {
        for (let column = cellOf(Math.min(x0, x1)); column <= cellOf(Math.max(x0, x1)); column += 1)
          use(row * 65536 + column);
      }
    }
  }
}

/** An outline that ends on a line crosses it: shares may round by this much. */
const EDGE = 1e-9;
