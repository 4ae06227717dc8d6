import { type Matrix4, ShapeUtils, Vector2, Vector3 } from 'three';
import type { Stepwise } from '../base/stepwise.ts';

/** A hole through a sheet: two rings of packed xy in the sheet's drawing, the upper and the lower edge of a leaning cut. */
export interface SlabHole {
  readonly upper: ArrayLike<number>;
  readonly lower: ArrayLike<number>;
}

/** A solid between z 0 and `thickness`, mm, with holes. Outer rings counter-clockwise, holes clockwise or not: they are put right. */
export interface Slab {
  readonly outer: SlabHole;
  readonly holes: readonly SlabHole[];
  readonly thickness: number;
  readonly place: Matrix4;
}

/** Triangles of many slabs, one vertex a corner; `isCut` is 1 where a blade made the face. */
export interface SlabTriangles {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly isCut: Uint8Array;
}

/** In stretches: a sheet with many holes takes a while. */
export function* slabSteps(slabs: readonly Slab[]): Stepwise<SlabTriangles> {
  const positions: number[] = [];
  const normals: number[] = [];
  const isCut: number[] = [];
  const point = new Vector3();
  for (const { outer, holes, thickness, place } of slabs) {
    const up = new Vector3(0, 0, 1).transformDirection(place);
    const put = (x: number, y: number, z: number, normal: Vector3, cut: number): void => {
      point.set(x, y, z).applyMatrix4(place).toArray(positions, positions.length);
      normal.toArray(normals, normals.length);
      isCut.push(cut);
    };
    for (const [z, normal, side] of [
      [thickness, up, 'upper'],
      [0, up.clone().negate(), 'lower'],
    ] as const) {
      yield;
      const rings = [wound(outer[side], true), ...holes.map((hole) => wound(hole[side], false))];
      const corners = rings.flat();
      for (const triangle of ShapeUtils.triangulateShape(rings[0], rings.slice(1))) {
        for (const i of side === 'upper' ? triangle : [...triangle].reverse())
          put(corners[i].x, corners[i].y, z, normal, 0);
      }
    }
    yield;
    for (const [ring, isOuter] of [[outer, true] as const, ...holes.map((hole) => [hole, false] as const)]) {
      const upper = wound(ring.upper, isOuter);
      const lower = ring.lower.length === ring.upper.length ? wound(ring.lower, isOuter) : upper;
      for (let i = 0; i < upper.length; i += 1) {
        const j = (i + 1) % upper.length;
        const normal = new Vector3(upper[j].y - upper[i].y, upper[i].x - upper[j].x, 0).transformDirection(place);
        put(lower[i].x, lower[i].y, 0, normal, 1);
        put(lower[j].x, lower[j].y, 0, normal, 1);
        put(upper[j].x, upper[j].y, thickness, normal, 1);
        put(lower[i].x, lower[i].y, 0, normal, 1);
        put(upper[j].x, upper[j].y, thickness, normal, 1);
        put(upper[i].x, upper[i].y, thickness, normal, 1);
      }
    }
  }
  return {
    positions: Float32Array.from(positions),
    normals: Float32Array.from(normals),
    isCut: Uint8Array.from(isCut),
  };
}

function wound(xy: ArrayLike<number>, isOuter: boolean): Vector2[] {
  const ring: Vector2[] = [];
  for (let i = 0; i + 1 < xy.length; i += 2) ring.push(new Vector2(xy[i], xy[i + 1]));
  return ShapeUtils.area(ring) > 0 === isOuter ? ring : ring.reverse();
}
