import { MinHeap } from '../../base/min-heap.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { edgeDistances, edgesOfVertices, pathTo } from '../../mesh/edge-distance.ts';
import { diagonalEdges, edgeFolds, edgeLengths } from '../../mesh/edge-fold.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf } from '../../mesh/topology.ts';

/**
 * The shortest way along the sculpt's edges from one corner to another, as mesh vertices, both ends included.
 * Diagonals inside a polygon of the file are taken only where no way without them exists.
 * Fails with `seams/no-path` when the two lie on surfaces that do not touch.
 */
export function edgePath(mesh: Mesh, from: number, to: number): Result<readonly number[]> {
  const lengths = edgeLengths(mesh);
  return firstWay(from, to, [visibleOf(mesh, lengths), lengths], (weights) =>
    pathTo(mesh, edgeDistances(mesh, [from], weights, to), to),
  );
}

/** The way a maker's hand would take. */
export interface HandWish {
  /** Edges that may be taken, by number; left out: all. */
  readonly isOpenTo?: (edge: number) => boolean;
  /** Vertices the hand came by: edges between two of them cost half, at one of them a quarter less. */
  readonly trail?: ReadonlySet<number>;
  /** 1 per edge that is taken only where the way round it is {@link CLEAR_PRICE} times as long; left out: none. */
  readonly clear?: Uint8Array;
}

/** A ridge or valley this sharp costs a third less than a flat edge; far sharper ones up to {@link MOST_EASE} less, radians. */
const EASY_FOLD = Math.PI / 6;
/** Share of its length that the sharpest crease is spared. */
const MOST_EASE = 0.65;
/** Share of its cost that an edge is spared for each of its ends that the hand came by. */
const TRAIL_EASE = 0.25;
/** What a right angle on the way costs, as a share of the shorter of the two edges it lies between. */
const TURN_COST = 1;

/** What an edge that is to be kept clear costs beside another: a long way round is taken, and one in its midst leaves it soon (shop judgement). */
export const CLEAR_PRICE = 20;

/** What does not change from one way to the next. */
interface HandGround {
  readonly lengths: Float64Array;
  /** Length of each edge, less what a crease spares. */
  readonly eased: Float64Array;
  readonly diagonal: Uint8Array;
  /** Edges at each vertex. */
  readonly starts: Uint32Array;
  readonly edges: Uint32Array;
}

const grounds = new WeakMap<Mesh, HandGround>();

/** Found once for each mesh: a way must follow the pointer. */
function groundOf(mesh: Mesh): HandGround {
  let ground = grounds.get(mesh);
  if (ground === undefined) {
    const lengths = edgeLengths(mesh);
    const folds = edgeFolds(mesh);
    const eased = lengths.map((length, e) => {
      const sharp = Math.abs(folds[e]) / EASY_FOLD;
      return length * (1 - MOST_EASE * (sharp / (sharp + 1)));
    });
    ground = { lengths, eased, diagonal: diagonalEdges(mesh), ...edgesOfVertices(mesh) };
    grounds.set(mesh, ground);
  }
  return ground;
}

/**
 * As {@link edgePath}, but as a hand would draw it: creases cost less than flat edges and every turn costs something, so that the line keeps to
 * ridges, valleys and the smooth lines of the sculpt's edges instead of going up and down steps. Dijkstra (1959) over edges with a direction,
 * which a turn needs to be known.
 */
export function handPath(
  mesh: Mesh,
  from: number,
  to: number,
  { isOpenTo, trail, clear }: HandWish = {},
): Result<readonly number[]> {
  const ground = groundOf(mesh);
  const { edgeVertices } = topologyOf(mesh);
  const nearness = (e: number): number =>
    trail === undefined ? 0 : Number(trail.has(edgeVertices[2 * e])) + Number(trail.has(edgeVertices[2 * e + 1]));
  const rate = (e: number): number => (clear?.[e] === 1 ? CLEAR_PRICE : 1) * (1 - TRAIL_EASE * nearness(e));
  const price = (e: number): number => (isOpenTo?.(e) === false ? Infinity : ground.eased[e] * rate(e));
  const visiblePrice = (e: number): number => (ground.diagonal[e] === 1 ? Infinity : price(e));
  return firstWay(from, to, [visiblePrice, price], (priceOf) => turningPath(mesh, from, to, ground, priceOf));
}

/** Weights with diagonals closed. */
function visibleOf(mesh: Mesh, weights: Float64Array): Float64Array {
  const diagonal = diagonalEdges(mesh);
  return weights.map((weight, e) => (diagonal[e] === 1 ? Infinity : weight));
}

function firstWay<Weights>(
  from: number,
  to: number,
  weightings: readonly Weights[],
  search: (weights: Weights) => readonly number[],
): Result<readonly number[]> {
  for (const weights of weightings) {
    const path = search(weights);
    if (path.length > 0) return ok(path);
  }
  return fail('seams/no-path', 'No edges lead from one point to the other: they lie on separate surfaces.', {
    vertices: [from, to],
  });
}

/** Vertices of the cheapest way where turns cost too; empty where no way leads. */
function turningPath(
  mesh: Mesh,
  from: number,
  to: number,
  { lengths, starts, edges }: HandGround,
  priceOf: (edge: number) => number,
): readonly number[] {
  if (from === to) return [from];
  const { edgeVertices } = topologyOf(mesh);
  // A state is an edge taken in a direction: 2 e towards its second vertex, 2 e + 1 towards its first.
  const cost = new Float64Array(edgeVertices.length).fill(Infinity);
  const before = new Int32Array(edgeVertices.length).fill(-1);
  const heap = new MinHeap();
  const headOf = (state: number): number => edgeVertices[state ^ 1];
  const reach = (state: number, key: number, via: number): void => {
    if (!(key < cost[state])) return;
    cost[state] = key;
    before[state] = via;
    heap.push(key, state);
  };
  const leaving = (v: number, use: (state: number, edge: number, price: number) => void): void => {
    for (let i = starts[v]; i < starts[v + 1]; i += 1) {
      const e = edges[i];
      const price = priceOf(e);
      if (price < Infinity) use(edgeVertices[2 * e] === v ? 2 * e : 2 * e + 1, e, price);
    }
  };
  leaving(from, (state, _, price) => reach(state, price, -1));
  while (heap.size > 0) {
    const { key, item: state } = heap.pop();
    if (key > cost[state]) continue;
    const at = headOf(state);
    if (at === to) return wayBack(state, before, edgeVertices);
    const came = state >> 1;
    leaving(at, (next, e, price) => {
      if (e === came) return;
      const turn =
        TURN_COST * Math.min(lengths[e], lengths[came]) * (1 - cosine(mesh, edgeVertices, state, next, lengths));
      reach(next, key + price + turn, state);
    });
  }
  return [];
}

/** Cosine of the turn between two edges taken one after the other. */
function cosine(
  { positions }: Mesh,
  edgeVertices: Uint32Array,
  one: number,
  next: number,
  lengths: Float64Array,
): number {
  const [a, b] = [3 * edgeVertices[one], 3 * edgeVertices[one ^ 1]];
  const c = 3 * edgeVertices[next ^ 1];
  const scale = lengths[one >> 1] * lengths[next >> 1];
  if (scale === 0) return 1;
  let dot = 0;
  for (let k = 0; k < 3; k += 1) dot += (positions[b + k] - positions[a + k]) * (positions[c + k] - positions[b + k]);
  return dot / scale;
}

function wayBack(last: number, before: Int32Array, edgeVertices: Uint32Array): number[] {
  const path = [edgeVertices[last ^ 1]];
  for (let state = last; state >= 0; state = before[state]) path.push(edgeVertices[state]);
  return path.reverse();
}
