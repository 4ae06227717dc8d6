import { borderHalfedges, eachPlateTriangle } from '../../geom/plate.ts';
import type { PropPlate } from '../../model/bench-view.ts';

/** A closed body with a name: one piece of the finished prop, thick. */
export interface Solid {
  readonly name: string;
  /** Packed x y z, mm: the sculpt's own axes. */
  readonly points: Float64Array;
  /** Three points each, counter-clockwise seen from outside. */
  readonly triangles: Uint32Array;
}

/**
 * A plate of the prop as a closed body: face, back and the cut edges between them.
 * @param share size of what is written to the size of the prop: 1 for true size, 0.1 for a tenth.
 */
export function solidOfPlate({ triangles, face, back }: PropPlate, name: string, share: number): Solid {
  const corners: number[] = [];
  eachPlateTriangle({ triangles, face, borders: borderHalfedges(triangles) }, (a, b, c) => corners.push(a, b, c));
  const points = new Float64Array(face.length + back.length);
  points.set(face);
  points.set(back, face.length);
  return { name, points: share === 1 ? points : points.map((mm) => share * mm), triangles: Uint32Array.from(corners) };
}
