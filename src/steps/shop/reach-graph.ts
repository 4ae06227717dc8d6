import { MinHeap } from '../../base/min-heap.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import type { Patch } from '../../model/patch.ts';
import type { SeamChain } from '../../model/seams.ts';
import { REACHES } from '../../model/hand-reach.ts';

/** Ways over the foam between places on seams and open edges: as far as a hand may have to reach. */
export interface ReachGraph {
  /**
   * Places of side s (`SeamNet`) are `firstPlace[s]` up to, not including, `firstPlace[s + 1]`, in the order of the chain, so that both sides of a
   * seam have like places in one order.
   */
  readonly firstPlace: Uint32Array;
  /** Per place the piece it lies on, and its row among that piece's ways. */
  readonly pieceOf: Uint32Array;
  readonly rowOf: Uint32Array;
  /** From each place along the chain to the next of its side, mm; 0 at the last. */
  readonly gapMm: Float64Array;
  /** Ways over each piece. */
  readonly pieces: readonly PieceWays[];
}

export interface PieceWays {
  /** Places round the piece. */
  readonly places: Uint32Array;
  /** Shortest way along the sculpt's edges from each of them to each, row by row, mm; Infinity where it is longer than any arm. */
  readonly mm: Float64Array;
}

/** Places looked at along one chain at most, both its ends among them. */
const MOST_PLACES = 9;

const FARTHEST_MM = REACHES.reduce((most, { reachMm }) => Math.max(most, reachMm), 0);

/** @param positions x y z per vertex of the mesh, mm. */
export function* reachGraphSteps(
  chains: readonly SeamChain[],
  patches: readonly Patch[],
  positions: ArrayLike<number>,
): Stepwise<ReachGraph> {
  const firstPlace = new Uint32Array(2 * chains.length + 1);
  const onPiece = patches.map((): PlaceOnPiece[] => []);
  const pieceOf: number[] = [];
  const rowOf: number[] = [];
  const gapMm: number[] = [];
  chains.forEach(({ vertices, sides }, c) => {
    const count = Math.min(MOST_PLACES, vertices.length);
    const at = Array.from({ length: count }, (_, i) => Math.round((i * (vertices.length - 1)) / (count - 1)));
    for (let k = 0; k < 2; k += 1) {
      const side = sides.at(k);
      firstPlace[2 * c + k] = pieceOf.length;
      for (let i = 0; side !== undefined && i < count; i += 1) {
        const row = onPiece[side.patch].push({ place: pieceOf.length, vertex: side.localVertices[at[i]] }) - 1;
        gapMm.push(lengthAlong(vertices, positions, at[i], at[i + 1] ?? at[i]));
        pieceOf.push(side.patch);
        rowOf.push(row);
      }
    }
  });
  firstPlace[2 * chains.length] = pieceOf.length;
  const pieces: PieceWays[] = [];
  for (const [p, patch] of patches.entries()) pieces.push(yield* pieceWays(patch, positions, onPiece[p]));
  return {
    firstPlace,
    pieceOf: Uint32Array.from(pieceOf),
    rowOf: Uint32Array.from(rowOf),
    gapMm: Float64Array.from(gapMm),
    pieces,
  };
}

function lengthAlong(vertices: Uint32Array, positions: ArrayLike<number>, from: number, to: number): number {
  let mm = 0;
  for (let i = from; i < to; i += 1) mm += edgeLength(positions, vertices[i], vertices[i + 1]);
  return mm;
}

function edgeLength(positions: ArrayLike<number>, v: number, w: number): number {
  const [a, b] = [3 * v, 3 * w];
  return Math.hypot(
    positions[b] - positions[a],
    positions[b + 1] - positions[a + 1],
    positions[b + 2] - positions[a + 2],
  );
}

interface PlaceOnPiece {
  readonly place: number;
  /** Of the patch. */
  readonly vertex: number;
}

function* pieceWays(patch: Patch, positions: ArrayLike<number>, at: readonly PlaceOnPiece[]): Stepwise<PieceWays> {
  const edges = edgesOf(patch, positions);
  const mm = new Float64Array(at.length * at.length).fill(Infinity);
  for (const [row, { vertex }] of at.entries()) {
    const far = distancesFrom(edges, vertex);
    at.forEach((to, column) => (mm[row * at.length + column] = far[to.vertex]));
    yield;
  }
  return { places: Uint32Array.from(at, ({ place }) => place), mm };
}

interface PatchEdges {
  readonly starts: Uint32Array;
  readonly ends: Uint32Array;
  readonly mm: Float64Array;
}

function edgesOf({ triangles, meshVertices }: Patch, positions: ArrayLike<number>): PatchEdges {
  const starts = new Uint32Array(meshVertices.length + 1);
  // Every edge inside is met from both of its triangles and counted from both: no harm, and no search for doubles.
  for (const v of triangles) starts[v + 1] += 2;
  for (let v = 0; v < meshVertices.length; v += 1) starts[v + 1] += starts[v];
  const fill = starts.slice();
  const ends = new Uint32Array(2 * triangles.length);
  const mm = new Float64Array(2 * triangles.length);
  const add = (v: number, w: number): void => {
    ends[fill[v]] = w;
    mm[fill[v]++] = edgeLength(positions, meshVertices[v], meshVertices[w]);
  };
  for (let h = 0; h < triangles.length; h += 1) {
    const [v, w] = [triangles[h], triangles[h % 3 === 2 ? h - 2 : h + 1]];
    add(v, w);
    add(w, v);
  }
  return { starts, ends, mm };
}

/** Dijkstra's shortest paths (1959) as far as an arm reaches. */
function distancesFrom({ starts, ends, mm }: PatchEdges, source: number): Float64Array {
  const distance = new Float64Array(starts.length - 1).fill(Infinity);
  distance[source] = 0;
  const heap = new MinHeap();
  heap.push(0, source);
  while (heap.size > 0) {
    const { key, item: v } = heap.pop();
    if (key > distance[v]) continue;
    for (let i = starts[v]; i < starts[v + 1]; i += 1) {
      const reach = key + mm[i];
      if (reach >= distance[ends[i]] || reach > FARTHEST_MM) continue;
      distance[ends[i]] = reach;
      heap.push(reach, ends[i]);
    }
  }
  return distance;
}
