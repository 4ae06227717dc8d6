import type { Patch } from '../../model/patch.ts';
import type { RestShapes } from './rest-shapes.ts';

/**
 * The border of a patch as points and edges that must not run into each other on the flat piece, and how near each point may come to each
 * edge before it counts.
 */
export interface BorderPairs {
  /** Local vertex of each border point. */
  readonly vertices: Uint32Array;
  /** The loops inside the outer one, as local vertices with the patch on their left: clockwise on a flat piece. */
  readonly windows: readonly Uint32Array[];
  /** Each point's share of the whole border: half of the edges at it. The shares add up to 1. */
  readonly shares: Float64Array;
  /** Local vertices of each edge: from `tails`, with the patch on the left, to `heads`. Edge i begins at point i and ends at point `pointAt[i]`. */
  readonly tails: Uint32Array;
  readonly heads: Uint32Array;
  readonly pointAt: Uint32Array;
  /** True length of each edge, mm. */
  readonly lengths: Float64Array;
  /** The largest reach of any pair, mm. */
  readonly gap: number;
  /** Distance at which a pair begins to count, mm; 0 for a pair that never does. */
  reachOf(point: number, edge: number): number;
}

/** What a knife wants between two edges, mm: common practice. */
const KNIFE_GAP_MM = 1;

/**
 * Pairs along the border count at this share of the way between them, so that a corner or the end of a dart, where border is always
 * near border, raises no alarm before it closes to about a degree.
 */
const WAY_SHARE = 0.01;

/** Foam narrower than this many gaps lies between the two sides of a limb: what is near through the foam is no danger. */
const NARROW_GAPS = 3;

/** @param rest the patch's triangles and points at their true size. */
export function borderPairs(patch: Patch, rest: RestShapes): BorderPairs {
  const vertices = Uint32Array.from(patch.loops.flatMap((loop) => Array.from(loop)));
  const pointAt = new Uint32Array(vertices.length);
  let first = 0;
  for (const loop of patch.loops) {
    for (let i = 0; i < loop.length; i += 1) pointAt[first + i] = first + ((i + 1) % loop.length);
    first += loop.length;
  }
  const heads = pointAt.map((point) => vertices[point]);
  const lengths = Float64Array.from(vertices, (v, i) => distance(rest.points, v, heads[i]));
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  const gap = Math.min(KNIFE_GAP_MM, whole / lengths.length);
  const shares = new Float64Array(vertices.length);
  lengths.forEach((length, i) => {
    shares[i] += length / 2 / whole;
    shares[pointAt[i]] += length / 2 / whole;
  });
  const { loopOf, along, round } = placesOnLoops(patch, lengths);
  const throughFoam = pairsThroughFoam(patch, rest, vertices, heads, NARROW_GAPS * gap);
  return {
    vertices,
    windows: patch.loops.slice(1),
    shares,
    tails: vertices,
    heads,
    pointAt,
    lengths,
    gap,
    reachOf: (point, edge) => {
      if (throughFoam[point].has(edge)) return 0;
      if (loopOf[point] !== loopOf[edge]) return gap;
      const total = round[loopOf[point]];
      const ahead = (along[edge] - along[point] + total) % total;
      const behind = (along[point] - along[edge] - lengths[edge] + 2 * total) % total;
      return Math.min(gap, WAY_SHARE * Math.min(ahead, behind));
    },
  };
}

/** The loop of each border point, how far along it lies, and the length of each loop, mm. */
function placesOnLoops(patch: Patch, lengths: Float64Array) {
  const loopOf = new Uint32Array(lengths.length);
  const along = new Float64Array(lengths.length);
  let at = 0;
  const round = patch.loops.map((loop, l) => {
    let sum = 0;
    for (let i = 0; i < loop.length; i += 1, at += 1) {
      loopOf[at] = l;
      along[at] = sum;
      sum += lengths[at];
    }
    return sum;
  });
  return { loopOf, along, round };
}

/**
 * For each border point the edges it is near to through foam: in one triangle, or over triangles that come no farther from it than
 * `reach`. Left out are the two sides of a dart, which lie on each other in space: round the end of a dart they are near as well, but an
 * edge that begins or ends in the point's own place on the sculpt is on the other side.
 */
function pairsThroughFoam(
  patch: Patch,
  rest: RestShapes,
  vertices: Uint32Array,
  heads: Uint32Array,
  reach: number,
): readonly ReadonlySet<number>[] {
  const edgeFrom = new Map<number, number>();
  vertices.forEach((v, i) => edgeFrom.set(v, i));
  const fans = trianglesAtVertices(patch.triangles, rest.vertexCount);
  const seen = new Int32Array(patch.triangles.length / 3).fill(-1);
  return Array.from(vertices, (v, point) => {
    const near = new Set<number>();
    const queue = [...fans.items.subarray(fans.starts[v], fans.starts[v + 1])];
    for (const t of queue) seen[t] = point;
    const own = queue.length;
    for (const [n, t] of queue.entries()) {
      for (let k = 0; k < 3; k += 1) {
        const a = patch.triangles[3 * t + k];
        const b = patch.triangles[3 * t + ((k + 1) % 3)];
        const edge = edgeFrom.get(a);
        if (edge !== undefined && heads[edge] === b) {
          const isTwin = [a, b].some((w) => w !== v && patch.meshVertices[w] === patch.meshVertices[v]);
          if (n < own || !isTwin) near.add(edge);
        }
        if (distance(rest.points, v, a) > reach) continue;
        for (let i = fans.starts[a]; i < fans.starts[a + 1]; i += 1) {
          if (seen[fans.items[i]] === point) continue;
          seen[fans.items[i]] = point;
          queue.push(fans.items[i]);
        }
      }
    }
    return near;
  });
}

/** For each vertex its triangles: `items[starts[v] .. starts[v + 1])`. */
function trianglesAtVertices(triangles: Uint32Array, vertexCount: number) {
  const starts = new Uint32Array(vertexCount + 1);
  for (const v of triangles) starts[v + 1] += 1;
  for (let v = 0; v < vertexCount; v += 1) starts[v + 1] += starts[v];
  const put = starts.slice();
  const items = new Uint32Array(triangles.length);
  for (let h = 0; h < triangles.length; h += 1) items[put[triangles[h]]++] = Math.floor(h / 3);
  return { starts, items };
}

function distance(points: Float64Array, v: number, w: number): number {
  return Math.hypot(
    points[3 * w] - points[3 * v],
    points[3 * w + 1] - points[3 * v + 1],
    points[3 * w + 2] - points[3 * v + 2],
  );
}
