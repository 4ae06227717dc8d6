import type { Stepwise } from '../../base/stepwise.ts';
import { add3, dot3, length3, pointAt3, scale3, sub3, type Vec3 } from '../../geom/vec.ts';
import { diagonalOf, triangleNormal } from '../../mesh/measure.ts';
import { triangleCount, type Mesh } from '../../mesh/mesh.ts';
import { shareVertex } from '../../mesh/share-vertex.ts';
import { surfaceTreeOf } from '../../mesh/surface-tree.ts';
import { offsetsOf, type Outward } from './mesh-offsets.ts';

/** What lies ahead of places of the sculpt on the way that foam grows there. One entry per place that has something ahead. */
export interface WallAhead {
  /** Triangle the place lies on, and the first one that its way meets. */
  readonly triangles: Uint32Array;
  readonly met: Uint32Array;
  /** The places and their moves for a distance of 1, x y z each. */
  readonly places: Float64Array;
  readonly ways: Float64Array;
  /** Height of the place over the plane of the triangle met, mm: > 0 on its outside, < 0 behind it. */
  readonly heights: Float64Array;
  /** How much of that height a move of 1 adds. */
  readonly climbs: Float64Array;
}

/** Places looked from, at most; of a finer sculpt every so many triangles are taken. */
const MOST_PLACES = 60_000;
/** Large triangles are looked from at places this share of the sculpt's diagonal apart, up to so many along a side. */
const SPACING_SHARE = 0.03;
const MOST_ALONG_SIDE = 8;
/** Share of the diagonal by which a way starts off its own triangle, so that it does not meet that one. */
const START_SHARE = 1e-9;
/** Places done in one stretch: a few milliseconds. */
const STRETCH = 256;

const KNOWN = new WeakMap<Mesh, Map<Outward, WallAhead>>();

/**
 * Looks from places all over the sculpt along the way their foam grows: outward to the face, inward to the back. Places of one triangle move
 * as its corners do, so that beside an edge the way runs along the plane that halves it and meets no neighbour before it folds over.
 * Remembered by sculpt, as it is the same for every thickness.
 */
export function* wallAheadOf(mesh: Mesh, outward: Outward): Stepwise<WallAhead> {
  const sides = KNOWN.get(mesh) ?? new Map<Outward, WallAhead>();
  KNOWN.set(mesh, sides);
  let ahead = sides.get(outward);
  if (ahead === undefined) {
    ahead = yield* lookAhead(mesh, outward);
    sides.set(outward, ahead);
  }
  return ahead;
}

function* lookAhead(mesh: Mesh, outward: Outward): Stepwise<WallAhead> {
  const { positions, triangles } = mesh;
  const { directions } = yield* offsetsOf(mesh);
  const tree = surfaceTreeOf(mesh);
  yield;
  const diagonal = diagonalOf(mesh);
  const found: { triangle: number; met: number; place: Vec3; way: Vec3; height: number; climb: number }[] = [];
  const every = Math.ceil(triangleCount(mesh) / MOST_PLACES);
  const isLookedFrom = new Uint8Array(positions.length / 3);
  let looked = 0;
  const look = (t: number, weights: Weights): void => {
    looked += 1;
    const place = mixed(positions, triangles, t, weights, 1);
    const way = mixed(directions, triangles, t, weights, outward);
    const length = length3(way);
    if (!(length > 0)) return;
    const hit = tree.raycast(add3(place, scale3(way, (START_SHARE * diagonal) / length)), way);
    if (hit === null || shareVertex(triangles, t, hit.triangle)) return;
    const normal = triangleNormal(positions, triangles, hit.triangle);
    const height = dot3(normal, sub3(place, pointAt3(positions, triangles[3 * hit.triangle])));
    found.push({ triangle: t, met: hit.triangle, place, way, height, climb: dot3(normal, way) });
  };
  for (let t = 0; t < triangleCount(mesh); t += every) {
    for (let k = 0; k < 3; k += 1) {
      const v = triangles[3 * t + k];
      if (isLookedFrom[v] === 0) look(t, CORNERS[k]);
      isLookedFrom[v] = 1;
    }
    for (const weights of MIDDLES[alongSide(mesh, t, SPACING_SHARE * diagonal) - 1]) {
      look(t, weights);
      if (looked % STRETCH === 0) yield;
    }
  }
  return {
    triangles: Uint32Array.from(found, ({ triangle }) => triangle),
    met: Uint32Array.from(found, ({ met }) => met),
    places: packed(found.map(({ place }) => place)),
    ways: packed(found.map(({ way }) => way)),
    heights: Float64Array.from(found, ({ height }) => height),
    climbs: Float64Array.from(found, ({ climb }) => climb),
  };
}

function packed(points: readonly Vec3[]): Float64Array {
  const xyz = new Float64Array(3 * points.length);
  points.forEach(({ x, y, z }, i) => {
    xyz[3 * i] = x;
    xyz[3 * i + 1] = y;
    xyz[3 * i + 2] = z;
  });
  return xyz;
}

/** Shares of a triangle's three corners in a place of it. */
type Weights = readonly [number, number, number];

/** A plane is nearest at a corner: each vertex is looked from once. */
const CORNERS: readonly Weights[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** Middles of the equal triangles that a triangle is split into with 1, 2 … of them along a side. */
const MIDDLES: readonly (readonly Weights[])[] = Array.from({ length: MOST_ALONG_SIDE }, (_, i) => middles(i + 1));

function middles(n: number): readonly Weights[] {
  const places: Weights[] = [];
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; i + j < n; j += 1) {
      places.push([(i + 1 / 3) / n, (j + 1 / 3) / n, 1 - (i + j + 2 / 3) / n]);
      if (i + j + 1 < n) places.push([(i + 2 / 3) / n, (j + 2 / 3) / n, 1 - (i + j + 4 / 3) / n]);
    }
  }
  return places;
}

/** How many places a triangle is looked from along a side, 1 to {@link MOST_ALONG_SIDE}. */
function alongSide({ positions, triangles }: Mesh, t: number, spacing: number): number {
  const [a, b, c] = [0, 1, 2].map((k) => pointAt3(positions, triangles[3 * t + k]));
  const longest = Math.max(length3(sub3(b, a)), length3(sub3(c, b)), length3(sub3(a, c)));
  return Math.min(MOST_ALONG_SIDE, Math.max(1, Math.ceil(longest / spacing)));
}

function mixed(xyz: Float64Array, triangles: Uint32Array, t: number, [wa, wb, wc]: Weights, scale: number): Vec3 {
  const [a, b, c] = [3 * triangles[3 * t], 3 * triangles[3 * t + 1], 3 * triangles[3 * t + 2]];
  const axis = (k: number): number => scale * (wa * xyz[a + k] + wb * xyz[b + k] + wc * xyz[c + k]);
  return { x: axis(0), y: axis(1), z: axis(2) };
}
