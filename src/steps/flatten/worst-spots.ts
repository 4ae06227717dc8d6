import type { SparseGraph } from '../../geom/sparse-graph.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { WorstSpot } from '../../model/forming.ts';
import type { Patch } from '../../model/patch.ts';
import type { RestShapes } from './rest-shapes.ts';
import { giveAtVertices, type Give } from './spot-give.ts';

/** Spots told of at most. */
const MOST_SPOTS = 5;
/** A spot is what is joined to a peak and gives at least this share of it. */
const SPOT_SHARE = 0.6;
/** Less than this is nothing to a maker, per cent (shop judgement). */
const LEAST_PERCENT = 0.5;
/** A spot smaller than this share of the piece is no place to warm (shop judgement). */
const LEAST_AREA_SHARE = 1e-3;
/** Directions are asked for where a spot gives at least this share of its peak. */
const TOP_SHARE = 0.8;
/** The place gives alike in every direction when it gives this share of the most across it too. */
const ALIKE_SHARE = 0.7;
/** How well directions of a place must agree to be one: 1 all alike, 0 all round. */
const AGREED = 0.7;
/** Mean square cosine between the directions at the border and the border from which they run along it. */
const ALONG_EDGE = 0.75;
/** Peaks are told apart, and put in order, by their per cent to this; of like ones the first by place, so that numbering plays no part. */
const PERCENT_STEP = 1e-4;

/**
 * The few separate places of a flat piece where the foam must give most. What counts is the mean by area round each vertex, so a needle or
 * an empty triangle makes no spot. A spot is a peak that no way joins to a higher one without falling under 60 % of its own height.
 * @param graph  which vertices of the patch are joined by a side.
 * @returns stretch and squash together, the worst first, at most five; none for a developable piece.
 */
export function worstSpots(
  patch: Patch,
  rest: RestShapes,
  graph: SparseGraph,
  flat: Pick<FlatPiece, 'uv' | 'major' | 'minor' | 'majorAngle'>,
): readonly WorstSpot[] {
  const spots = (['stretch', 'squash'] as const).flatMap((kind) => {
    const give = giveAtVertices(rest, flat, kind);
    return spotsOf(rest, graph, give).map((vertices) => describe(patch, rest, flat.uv, give, vertices));
  });
  return spots
    .filter(({ areaMm2 }) => areaMm2 >= LEAST_AREA_SHARE * rest.totalArea)
    .sort((one, other) => stepOf(other.percent) - stepOf(one.percent) || comparePlaces(one.point, other.point))
    .slice(0, MOST_SPOTS);
}

const stepOf = (percent: number): number => Math.round(percent / PERCENT_STEP);

function comparePlaces(p: ArrayLike<number>, q: ArrayLike<number>): number {
  return p[0] - q[0] || p[1] - q[1] || p[2] - q[2];
}

/** Vertices of each separate place, its peak first. */
function spotsOf({ points }: RestShapes, graph: SparseGraph, { percent }: Give): readonly (readonly number[])[] {
  const { starts, neighbours, size } = graph;
  const peaks: number[] = [];
  for (let v = 0; v < size; v += 1) {
    if (!(percent[v] >= LEAST_PERCENT)) continue;
    let isPeak = true;
    for (let i = starts[v]; i < starts[v + 1] && isPeak; i += 1) isPeak = percent[neighbours[i]] <= percent[v];
    if (isPeak) peaks.push(v);
  }
  const placeOf = (v: number): Float64Array => points.subarray(3 * v, 3 * v + 3);
  peaks.sort((v, w) => stepOf(percent[w]) - stepOf(percent[v]) || comparePlaces(placeOf(v), placeOf(w)));
  // For each vertex the peak whose place it belongs to, counted from 1.
  const owner = new Int32Array(size);
  const spots: number[][] = [];
  for (const [i, peak] of peaks.entries()) {
    // No more than this many of one kind can be among the worst; those that come later are lower.
    if (spots.length === 2 * MOST_SPOTS) break;
    if (owner[peak] !== 0) continue;
    const own = i + 1;
    const found = [peak];
    owner[peak] = own;
    let isSeparate = true;
    for (let next = 0; next < found.length; next += 1) {
      const v = found[next];
      for (let j = starts[v]; j < starts[v + 1]; j += 1) {
        const w = neighbours[j];
        if (owner[w] === own || percent[w] < SPOT_SHARE * percent[peak]) continue;
        if (owner[w] !== 0) {
          isSeparate = false;
          continue;
        }
        owner[w] = own;
        found.push(w);
      }
    }
    if (isSeparate) spots.push(found);
  }
  return spots;
}

function describe(
  { meshTriangles, loops }: Patch,
  rest: RestShapes,
  uv: Float64Array,
  give: Give,
  vertices: readonly number[],
): WorstSpot {
  const [peak] = vertices;
  const triangle = triangleAt(rest, give, peak);
  let area = 0;
  let x = 0;
  let y = 0;
  for (const v of vertices) {
    area += give.area[v];
    x += give.area[v] * uv[2 * v];
    y += give.area[v] * uv[2 * v + 1];
  }
  const middle = middleOf(uv, vertices, x / area, y / area, area);
  return {
    kind: give.kind,
    triangle,
    meshTriangle: meshTriangles[triangle],
    percent: give.percent[peak],
    areaMm2: area,
    at: { x: uv[2 * middle], y: uv[2 * middle + 1] },
    point: [rest.points[3 * middle], rest.points[3 * middle + 1], rest.points[3 * middle + 2]],
    ...directionOf(
      loops,
      uv,
      give,
      vertices.filter((v) => give.percent[v] >= TOP_SHARE * give.percent[peak]),
    ),
  };
}

/** The vertex nearest to the middle; of a place that bends round its own middle, as along a border, the peak. */
function middleOf(uv: Float64Array, vertices: readonly number[], x: number, y: number, area: number): number {
  let best = vertices[0];
  let nearest = Infinity;
  for (const v of vertices) {
    const away = Math.hypot(uv[2 * v] - x, uv[2 * v + 1] - y);
    if (away < nearest) [best, nearest] = [v, away];
  }
  return nearest > Math.sqrt(area / Math.PI) / 2 ? vertices[0] : best;
}

/** Of the triangles at a vertex that are no slivers beside the largest there, the one that gives most. */
function triangleAt({ corners, area }: RestShapes, { figure }: Give, vertex: number): number {
  const at: number[] = [];
  for (let h = 0; h < corners.length; h += 1) if (corners[h] === vertex) at.push(Math.floor(h / 3));
  const largest = Math.max(...at.map((t) => area[t]));
  return at
    .filter((t) => area[t] >= largest / 4)
    .reduce((best, t) => (figure[t] > figure[best] || (figure[t] === figure[best] && area[t] > area[best]) ? t : best));
}

function directionOf(
  loops: readonly Uint32Array[],
  uv: Float64Array,
  give: Give,
  vertices: readonly number[],
): Pick<WorstSpot, 'alongRad' | 'way'> {
  const [peak] = vertices;
  let along = 0;
  let across = 0;
  let cos = 0;
  let sin = 0;
  let sizes = 0;
  for (const v of vertices) {
    along += give.area[v] * give.percent[v];
    across += give.area[v] * give.across[v];
    cos += give.area[v] * give.cos[v];
    sin += give.area[v] * give.sin[v];
    sizes += give.area[v] * Math.hypot(give.cos[v], give.sin[v]);
  }
  const atPeak = halfTurn(give.cos[peak], give.sin[peak]);
  if (across >= ALIKE_SHARE * along) return { alongRad: atPeak, way: 'all' };
  if (Math.hypot(cos, sin) >= AGREED * sizes) return { alongRad: halfTurn(cos, sin), way: 'one' };
  return { alongRad: atPeak, way: runsAlongEdge(loops, uv, give, vertices) ? 'edge' : 'varied' };
}

/** Direction of a doubled angle, 0 to pi. */
function halfTurn(cos: number, sin: number): number {
  const half = Math.atan2(sin, cos) / 2;
  return half < 0 ? half + Math.PI : half;
}

function runsAlongEdge(
  loops: readonly Uint32Array[],
  uv: Float64Array,
  { cos, sin }: Give,
  vertices: readonly number[],
): boolean {
  const own = new Set(vertices);
  let sum = 0;
  let length = 0;
  for (const loop of loops) {
    for (let i = 0; i < loop.length; i += 1) {
      const v = loop[i];
      const w = loop[(i + 1) % loop.length];
      if (!own.has(v) || !own.has(w)) continue;
      const dx = uv[2 * w] - uv[2 * v];
      const dy = uv[2 * w + 1] - uv[2 * v + 1];
      const square = dx * dx + dy * dy;
      const size = Math.hypot(cos[v] + cos[w], sin[v] + sin[w]);
      if (!(square > 0 && size > 0)) continue;
      // cos² of the angle between, from the doubled angles.
      const doubled = ((dx * dx - dy * dy) * (cos[v] + cos[w]) + 2 * dx * dy * (sin[v] + sin[w])) / (square * size);
      sum += (Math.sqrt(square) * (1 + doubled)) / 2;
      length += Math.sqrt(square);
    }
  }
  return length > 0 && sum >= ALONG_EDGE * length;
}
