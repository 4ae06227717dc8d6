import { STRAIGHT_CORNER_SHARE } from '../base/tolerance.ts';
import { coveredRegions, type Region } from '../geom/polygon-boolean.ts';
import type { Ring } from '../geom/ring.ts';
import { triangulateRings } from '../geom/triangulate.ts';
import type { Mesh } from './mesh.ts';
import { plainMesh } from './plain-mesh.ts';

/** Areas of one height, mm: a slab from `bottom` to `top`. */
export interface Slab {
  readonly regions: readonly Region[];
  readonly bottom: number;
  readonly top: number;
}

/**
 * Slabs on each other as one closed surface: walls, the lowest floor, and of each slab's top what the next does not cover. Each slab lies within the
 * one under it and begins where that ends; slabs whose walls stand over each other come out with one wall.
 * @returns null where the rings lie so that no closed surface comes of them.
 */
export function terraced(slabs: readonly Slab[]): Mesh | null {
  const surface = new Surface();
  for (const [i, { regions, bottom, top }] of slabs.entries()) {
    const above = i + 1 < slabs.length ? slabs[i + 1].regions : [];
    for (const { outer, holes } of regions) for (const ring of [outer, ...holes]) surface.wall(ring, bottom, top);
    if (i === 0) for (const region of regions) surface.cap(region, bottom, false);
    const bare = above.length === 0 ? regions : coveredRegions([...ringsOf(regions), ...ringsOf(above).map(turned)]);
    for (const region of bare) surface.cap(region, top, true);
  }
  return surface.mesh();
}

const ringsOf = (regions: readonly Region[]): readonly Ring[] =>
  regions.flatMap(({ outer, holes }) => [outer, ...holes]);

const turned = (ring: Ring): Ring => ring.map((_, k) => ring[ring.length - 2 - 2 * (k >> 1) + (k & 1)]);

class Surface {
  readonly #numbers = new Map<string, number>();
  readonly #positions: number[] = [];
  readonly #triangles: number[] = [];

  wall(ring: Ring, bottom: number, top: number): void {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [a, b] = [this.#at(ring, i, bottom), this.#at(ring, j, bottom)];
      const [c, d] = [this.#at(ring, j, top), this.#at(ring, i, top)];
      this.#triangles.push(a, b, c, a, c, d);
    }
  }

  cap({ outer, holes }: Region, z: number, isUp: boolean): void {
    const rings = [outer, ...holes];
    const corners = rings.flatMap((ring) =>
      Array.from({ length: ring.length / 2 }, (_, i) => this.#at(ring, 2 * i, z)),
    );
    const triangles = meeting(triangulateRings(outer, holes), { outer, holes });
    for (let i = 0; i < triangles.length; i += 3) {
      const [a, b, c] = [corners[triangles[i]], corners[triangles[i + 1]], corners[triangles[i + 2]]];
      if (isUp) this.#triangles.push(a, b, c);
      else this.#triangles.push(a, c, b);
    }
  }

  mesh(): Mesh | null {
    const triangles = this.#triangles;
    const open = new Map<number, number>();
    const count = this.#positions.length / 3;
    for (let i = 0; i < triangles.length; i += 1) {
      const [a, b] = [triangles[i], triangles[i % 3 === 2 ? i - 2 : i + 1]];
      if (a === b) return null;
      const [key, by] = a < b ? [a * count + b, 1] : [b * count + a, -1];
      const sum = (open.get(key) ?? 0) + by;
      if (sum === 0) open.delete(key);
      else open.set(key, sum);
    }
    return open.size > 0 ? null : plainMesh(Float64Array.from(this.#positions), Uint32Array.from(triangles));
  }

  #at(ring: Ring, i: number, z: number): number {
    const key = `${ring[i]} ${ring[i + 1]} ${z}`;
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    const number = this.#positions.length / 3;
    this.#numbers.set(key, number);
    this.#positions.push(ring[i], ring[i + 1], z);
    return number;
  }
}

/** Triangles whose sides run past corners that lie on them, which earcut leaves, are split there, so that neighbours meet side by side. */
function meeting(triangles: number[], { outer, holes }: Region): number[] {
  const xy = [outer, ...holes].flatMap((ring) => [...ring]);
  const count = xy.length / 2;
  const taken = new Set<number>();
  let first = 0;
  for (const { length } of [outer, ...holes]) {
    const own = length / 2;
    for (let k = 0; k < own; k += 1) taken.add((first + k) * count + first + ((k + 1) % own));
    first += own;
  }
  const sides = new Set(triangles.map((a, i) => a * count + triangles[i % 3 === 2 ? i - 2 : i + 1]));
  const open = triangles.map((_, i) => i);
  const most = 8 * count;
  for (let tries = 0; open.length > 0 && tries < most + triangles.length; tries += 1) {
    const i = open.pop() ?? 0;
    const next = i % 3 === 2 ? i - 2 : i + 1;
    const [a, b, apex] = [triangles[i], triangles[next], triangles[3 * Math.floor(i / 3) + ((i + 2) % 3)]];
    if (taken.has(a * count + b) || sides.has(b * count + a)) continue;
    const corner = cornerOn(xy, a, b);
    if (corner < 0) continue;
    triangles[next] = corner;
    triangles.push(corner, b, apex);
    sides.delete(a * count + b);
    for (const [from, to] of [
      [a, corner],
      [corner, b],
      [corner, apex],
      [apex, corner],
    ] as const)
      sides.add(from * count + to);
    // Sides that were passed before may meet a new one or not: they are looked at again only where they are new.
    open.push(i, triangles.length - 3);
  }
  return triangles;
}

/** The corner strictly within a side that is nearest to its first end; -1 where none lies on it. */
function cornerOn(xy: readonly number[], a: number, b: number): number {
  const [ax, ay] = [xy[2 * a], xy[2 * a + 1]];
  const [dx, dy] = [xy[2 * b] - ax, xy[2 * b + 1] - ay];
  const square = dx * dx + dy * dy;
  let best = { along: square, corner: -1 };
  for (let v = 0; v < xy.length / 2; v += 1) {
    const [px, py] = [xy[2 * v] - ax, xy[2 * v + 1] - ay];
    const along = px * dx + py * dy;
    if (along > 0 && along < best.along && Math.abs(px * dy - py * dx) <= STRAIGHT_CORNER_SHARE * square)
      best = { along, corner: v };
  }
  return best.corner;
}
