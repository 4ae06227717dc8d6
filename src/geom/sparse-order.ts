import { dissectionOrder } from './sparse-dissection.ts';
import type { SparseGraph } from './sparse-graph.ts';
import { minimumDegreeOrder } from './sparse-min-degree.ts';

/** From this many nodes on the thinner factor of nested dissection is worth the longer search for it. */
const LARGE_GRAPH = 150_000;

/** An order of elimination with little fill. */
export function fillReducingOrder(graph: SparseGraph): Int32Array {
  return graph.size < LARGE_GRAPH ? minimumDegreeOrder(graph) : dissectionOrder(graph);
}
