import { DisjointSets } from '../base/disjoint-sets.ts';
import { overlappingTriangles } from './overlap.ts';

/** One place where a flat shape lies on itself: a connected group of overlapping triangle pairs. */
export interface OverlapPlace {
  /** Pairs of triangles; the first of each belongs to one limb, the second to the other. */
  readonly pairs: readonly (readonly [number, number])[];
  /**
   * Triangles of either limb, ascending. A limb that runs over itself more than once (a long helix) can stand in both.
   */
  readonly limbs: readonly [Uint32Array, Uint32Array];
  /** Area that lies double, mm²; where three layers lie on each other, each pair of layers counts. */
  readonly areaMm2: number;
  /** The pair with the largest common area, and the middle of that area, mm. */
  readonly pair: readonly [number, number];
  readonly point: { readonly x: number; readonly y: number };
}

/**
 * Where a shape without a flip lies on itself. Two overlapping pairs belong together when they share a triangle and their other ones share
 * a side: walking over that side leads from one common area into the other.
 * @param xy         packed corners, mm.
 * @param triangles  three corners each, counter-clockwise. Sides that were cut apart have corners of their own.
 * @returns the place of the largest area first; empty where nothing overlaps by more than a touch.
 */
export function overlapPlaces(xy: Float64Array, triangles: Uint32Array): readonly OverlapPlace[] {
  const { pairs } = overlappingTriangles(xy, triangles, Infinity);
  const next = neighboursOfPairs(triangles, pairs);
  const groups = new DisjointSets(pairs.length);
  next.forEach((list, i) => list.forEach(({ pair }) => groups.join(i, pair)));
  const members = new Map<number, number[]>();
  for (let i = 0; i < pairs.length; i += 1) {
    const list = members.get(groups.find(i));
    if (list === undefined) members.set(groups.find(i), [i]);
    else list.push(i);
  }
  return [...members.values()]
    .map((list) => makePlace(xy, triangles, sortedLimbs(pairs, next, list[0])))
    .sort((a, b) => b.areaMm2 - a.areaMm2 || a.pair[0] - b.pair[0] || a.pair[1] - b.pair[1]);
}

/** A pair that lies beside another one, and whether its triangles have to change places to fit. */
interface Beside {
  readonly pair: number;
  readonly turned: boolean;
}

/** For each pair those beside it. */
function neighboursOfPairs(triangles: Uint32Array, pairs: readonly (readonly [number, number])[]): Beside[][] {
  const count = triangles.length / 3;
  const pairAt = new Map(pairs.map(([a, b], i) => [a * count + b, i]));
  const across = trianglesAcross(triangles, new Set(pairs.flat()));
  return pairs.map(([a, b]) => {
    const beside: Beside[] = [];
    const add = (first: number, second: number): void => {
      const pair = pairAt.get(Math.min(first, second) * count + Math.max(first, second));
      if (pair !== undefined) beside.push({ pair, turned: first > second });
    };
    const [besideA, besideB] = [across.get(a) ?? [], across.get(b) ?? []];
    for (const c of besideA) add(c, b);
    for (const d of besideB) add(a, d);
    // Layers of one mesh can lie on each other side on side: then both triangles change at once.
    for (const c of besideA) for (const d of besideB) add(c, d);
    return beside;
  });
}

/** For each of the wanted triangles those that share a side with it and are wanted too. */
function trianglesAcross(triangles: Uint32Array, wanted: ReadonlySet<number>): Map<number, number[]> {
  const bySide = new Map<string, number>();
  const across = new Map<number, number[]>([...wanted].map((t) => [t, []]));
  for (const t of wanted) {
    for (let k = 0; k < 3; k += 1) {
      const v = triangles[3 * t + k];
      const w = triangles[3 * t + ((k + 1) % 3)];
      const other = bySide.get(`${w} ${v}`);
      bySide.set(`${v} ${w}`, t);
      if (other === undefined) continue;
      across.get(t)?.push(other);
      across.get(other)?.push(t);
    }
  }
  return across;
}

/** The pairs of the group that holds pair `first`, each turned so that the first triangles make one limb. */
function sortedLimbs(
  pairs: readonly (readonly [number, number])[],
  next: readonly (readonly Beside[])[],
  first: number,
): (readonly [number, number])[] {
  const turned = new Map([[first, false]]);
  const queue = [first];
  for (const i of queue) {
    for (const beside of next[i]) {
      if (turned.has(beside.pair)) continue;
      turned.set(beside.pair, turned.get(i) !== beside.turned);
      queue.push(beside.pair);
    }
  }
  return queue.map((i) => (turned.get(i) === true ? [pairs[i][1], pairs[i][0]] : pairs[i]));
}

function makePlace(xy: Float64Array, triangles: Uint32Array, pairs: (readonly [number, number])[]): OverlapPlace {
  let areaMm2 = 0;
  let most = -1;
  let pair = pairs[0];
  let point = { x: 0, y: 0 };
  for (const candidate of pairs) {
    const common = commonArea(xy, triangles, candidate[0], candidate[1]);
    areaMm2 += common.area;
    if (common.area > most) [most, pair, point] = [common.area, candidate, { x: common.x, y: common.y }];
  }
  return { pairs, limbs: [ascending(pairs, 0), ascending(pairs, 1)], areaMm2, pair, point };
}

const ascending = (pairs: readonly (readonly [number, number])[], side: 0 | 1): Uint32Array =>
  Uint32Array.from([...new Set(pairs.map((pair) => pair[side]))].sort((a, b) => a - b));

/** What two counter-clockwise triangles have in common: its area and its middle. One is clipped by the sides of the other. */
function commonArea(xy: Float64Array, triangles: Uint32Array, a: number, b: number) {
  const cornersOf = (t: number): number[][] =>
    [0, 1, 2].map((k) => [xy[2 * triangles[3 * t + k]], xy[2 * triangles[3 * t + k] + 1]]);
  let ring = cornersOf(a);
  const knife = cornersOf(b);
  for (let k = 0; k < 3 && ring.length > 0; k += 1) ring = leftPart(ring, knife[k], knife[(k + 1) % 3]);
  let [twice, x, y] = [0, 0, 0];
  const [x0, y0] = ring[0] ?? knife[0];
  for (let i = 1; i + 1 < ring.length; i += 1) {
    const [px, py, qx, qy] = [ring[i][0] - x0, ring[i][1] - y0, ring[i + 1][0] - x0, ring[i + 1][1] - y0];
    const cross = px * qy - py * qx;
    twice += cross;
    x += cross * (px + qx);
    y += cross * (py + qy);
  }
  if (!(twice > 0)) return { area: 0, x: x0, y: y0 };
  return { area: twice / 2, x: x0 + x / (3 * twice), y: y0 + y / (3 * twice) };
}

/** The part of a convex ring to the left of the line from `p` to `q`. */
function leftPart(ring: readonly number[][], p: readonly number[], q: readonly number[]): number[][] {
  const side = (r: readonly number[]): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return ring.flatMap((r, i) => {
    const s = ring[(i + 1) % ring.length];
    const [here, there] = [side(r), side(s)];
    const kept = here >= 0 ? [[r[0], r[1]]] : [];
    if (here >= 0 === there >= 0) return kept;
    const share = here / (here - there);
    return [...kept, [r[0] + share * (s[0] - r[0]), r[1] + share * (s[1] - r[1])]];
  });
}
