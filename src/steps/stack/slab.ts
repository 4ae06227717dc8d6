import { ringArea, type Ring } from '../../geom/ring.ts';
import { cutOfSide, sectionWalks } from '../../mesh/lines/section-walk.ts';
import type { Solid } from './frame.ts';
import { turnedRing } from './regions.ts';

/** Whether a section is that just under its height or just over it: they differ where a flat face lies at the height. */
export type Side = 'under' | 'over';

/**
 * The section of a solid square to the axis, as rings: outer ones counter-clockwise, holes clockwise. Corners within the snap of the height lie
 * in it, and count as above it for the section under it, as below it for the section over it: so lines can neither tear nor branch, at
 * vertices, along edges and at flat faces.
 */
export function sectionAt(solid: Solid, height: number, side: Side): readonly Ring[] {
  const { surface } = solid;
  const sign = side === 'under' ? 1 : -1;
  const heights = snapped(solid, height).map((h) => sign * h + 0);
  return sectionWalks(surface, heights).flatMap(({ halfedges }) => {
    const points: number[] = [];
    for (const h of halfedges) {
      const [x, y] = cutPoint(solid, heights, h);
      const n = points.length;
      if (n >= 2 && points[n - 2] === x && points[n - 1] === y) continue;
      points.push(x, y);
    }
    while (points.length > 2 && points[0] === points[points.length - 2] && points[1] === points[points.length - 1])
      points.length -= 2;
    if (points.length < 6) return [];
    const ring = Float64Array.from(points);
    return [side === 'under' ? ring : turnedRing(ring)];
  });
}

/** Signed area of the section, mm². */
export const sectionArea = (rings: readonly Ring[]): number => rings.reduce((sum, ring) => sum + ringArea(ring), 0);

/** The part of a solid between two heights. */
export interface Slab {
  readonly volumeMm3: number;
  /** Rings round all that the surface between the heights covers, seen along the axis: each place as often as the surface lies over it. */
  readonly shadow: readonly Ring[];
  /** The surface between the heights as triangles, x, y and height over `from` per corner: nine numbers each. */
  readonly parts: Float64Array;
}

/**
 * Cuts out what lies between two heights. Exact but for the rounding of doubles: of each triangle the part between the heights is taken, and

 *     volume = integral of (z - from) n_z over these parts + (to - from) x area of the section under `to`
 *
 * by the divergence theorem. Neighbours that look the same way lose the edge between them, so that the shadow is drawn by its borders alone.
 */
export function slabBetween(solid: Solid, from: number, to: number): Slab {
  const { triangles } = solid.surface;
  const [low, high] = [snapped(solid, from), snapped(solid, to)];
  const corners = new Corners(solid, low, high, to - from);
  const edges = new Map<number, Map<number, number>>();
  const parts: number[] = [];
  let volume = (to - from) * sectionArea(sectionAt(solid, to, 'under'));
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]];
    if ((low[a] <= 0 && low[b] <= 0 && low[c] <= 0) || (high[a] >= 0 && high[b] >= 0 && high[c] >= 0)) continue;
    const part = corners.clip(a, b, c);
    if (part.length < 3) continue;
    let area = 0;
    const [x0, y0, h0] = corners.at(part[0], from);
    for (let i = 1; i + 1 < part.length; i += 1) {
      const [x1, y1, h1] = corners.at(part[i], from);
      const [x2, y2, h2] = corners.at(part[i + 1], from);
      const half = ((x1 - x0) * (y2 - y0) - (y1 - y0) * (x2 - x0)) / 2;
      area += half;
      parts.push(x0, y0, h0, x1, y1, h1, x2, y2, h2);
      volume += (half * (h0 + h1 + h2)) / 3;
    }
    if (area === 0) continue;
    for (let i = 0; i < part.length; i += 1) {
      const [p, q] = [part[i], part[(i + 1) % part.length]];
      if (area > 0) addEdge(edges, p, q);
      else addEdge(edges, q, p);
    }
  }
  return {
    volumeMm3: volume,
    shadow: chained(edges).map((ring) => corners.ringOf(ring)),
    parts: Float64Array.from(parts),
  };
}

/** Height of every corner over a height, 0 within the snap. */
function snapped({ surface: { positions }, snapMm }: Solid, height: number): Float64Array {
  const heights = new Float64Array(positions.length / 3);
  for (let v = 0; v < heights.length; v += 1) {
    const h = positions[3 * v + 2] - height;
    heights[v] = Math.abs(h) <= snapMm ? 0 : h;
  }
  return heights;
}

function cutPoint({ surface: { positions, triangles } }: Solid, heights: Float64Array, h: number): [number, number] {
  const { low, high, share } = cutOfSide(triangles, heights, h);
  return [
    between(positions[3 * low], positions[3 * high], share),
    between(positions[3 * low + 1], positions[3 * high + 1], share),
  ];
}

const between = (p: number, q: number, share: number): number => (share === 1 ? q : p + share * (q - p));

/** Corners of the parts between two heights: those of the mesh by their number, and cuts of its edges, one for both triangles beside. */
class Corners {
  readonly #solid: Solid;
  readonly #low: Float64Array;
  readonly #high: Float64Array;
  readonly #count: number;
  readonly #thickness: number;
  readonly #numberOf = new Map<number, number>();
  readonly #cuts: number[] = [];
  /** The ends of the edge of the mesh that each cut lies on. */
  readonly #ends: (readonly [number, number])[] = [];

  constructor(solid: Solid, low: Float64Array, high: Float64Array, thickness: number) {
    this.#solid = solid;
    this.#thickness = thickness;
    this.#low = low;
    this.#high = high;
    this.#count = low.length;
  }

  /** Numbers of the corners of what of a triangle lies between the heights, in its own order. */
  clip(a: number, b: number, c: number): readonly number[] {
    const over = this.#cutBy([a, b, c], this.#low, 1, 0);
    return this.#cutBy(over, this.#high, -1, 1);
  }

  /** x y and height over `from`. */
  at(corner: number, from: number): readonly [number, number, number] {
    const { positions } = this.#solid.surface;
    if (corner < this.#count) {
      // Corners within the snap of a height lie in it.
      const own = positions[3 * corner + 2] - from;
      const z = this.#low[corner] === 0 ? 0 : this.#high[corner] === 0 ? this.#thickness : own;
      return [positions[3 * corner], positions[3 * corner + 1], z];
    }
    const i = 3 * (corner - this.#count);
    return [this.#cuts[i], this.#cuts[i + 1], this.#cuts[i + 2] - from];
  }

  ringOf(corners: readonly number[]): Ring {
    const ring = new Float64Array(2 * corners.length);
    for (const [i, corner] of corners.entries()) [ring[2 * i], ring[2 * i + 1]] = this.at(corner, 0);
    return ring;
  }

  /**
   * Keeps what lies over a height, or under it. @param sign 1 keeps what is over, -1 what is under. @param plane 0 or 1.
   * The corners before the second cut may be cuts of the first: the edge between two such lies in the first plane or in the triangle.
   */
  #cutBy(corners: readonly number[], heights: Float64Array, sign: number, plane: 0 | 1): number[] {
    const kept: number[] = [];
    for (let i = 0; i < corners.length; i += 1) {
      const [p, q] = [corners[i], corners[(i + 1) % corners.length]];
      const [hp, hq] = [sign * this.#heightOf(p, heights), sign * this.#heightOf(q, heights)];
      if (hp >= 0) kept.push(p);
      if ((hp > 0 && hq < 0) || (hp < 0 && hq > 0)) kept.push(this.#cut(p, q, heights, plane));
    }
    return kept;
  }

  #heightOf(corner: number, heights: Float64Array): number {
    if (corner < this.#count) return heights[corner];
    // A cut of the lower plane lies under the upper one.
    return -1;
  }

  /** A cut lies on a whole edge of the mesh: where the lower plane cut the edge already, its own ends say which. */
  #cut(p: number, q: number, heights: Float64Array, plane: 0 | 1): number {
    const [a, b] = this.#edgeOf(p, q);
    const key = 2 * (a * this.#count + b) + plane;
    let number = this.#numberOf.get(key);
    if (number === undefined) {
      const { positions } = this.#solid.surface;
      const share = heights[a] / (heights[a] - heights[b]);
      number = this.#count + this.#cuts.length / 3;
      this.#numberOf.set(key, number);
      for (let k = 0; k < 3; k += 1) this.#cuts.push(between(positions[3 * a + k], positions[3 * b + k], share));
      this.#ends.push([a, b]);
    }
    return number;
  }

  #edgeOf(p: number, q: number): readonly [number, number] {
    if (p >= this.#count) return this.#ends[p - this.#count];
    if (q >= this.#count) return this.#ends[q - this.#count];
    return p < q ? [p, q] : [q, p];
  }
}

/** Adds a directed edge, or takes away the one that runs against it. */
function addEdge(edges: Map<number, Map<number, number>>, p: number, q: number): void {
  const back = edges.get(q);
  const against = back?.get(p) ?? 0;
  if (against > 0 && back !== undefined) {
    if (against === 1) back.delete(p);
    else back.set(p, against - 1);
    return;
  }
  let out = edges.get(p);
  if (out === undefined) edges.set(p, (out = new Map<number, number>()));
  out.set(q, (out.get(q) ?? 0) + 1);
}

/** Closed walks that use every edge once: as many edges come to each corner as leave it. */
function chained(edges: Map<number, Map<number, number>>): number[][] {
  const walks: number[][] = [];
  for (const [start, out] of edges) {
    while (out.size > 0) {
      const walk: number[] = [];
      let here = start;
      do {
        walk.push(here);
        const ways = edges.get(here);
        const next = ways?.keys().next();
        if (ways === undefined || next === undefined || next.done === true) throw new Error('slab: a border ends');
        const count = ways.get(next.value) ?? 1;
        if (count === 1) ways.delete(next.value);
        else ways.set(next.value, count - 1);
        here = next.value;
      } while (here !== start);
      if (walk.length >= 3) walks.push(walk);
    }
  }
  return walks;
}
