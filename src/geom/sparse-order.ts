import { dissectionOrder } from './sparse-dissection.ts';
import type { SparseGraph } from './sparse-graph.ts';
import { minimumDegreeOrder } from './sparse-min-degree.ts';

/** From this many nodes on, halving beats going by degree: measured on meshes, see DEVELOPERS.md. */
const LARGE_GRAPH = 150_000;

/** An order of elimination with little fill. */
export function fillReducingOrder(graph: SparseGraph): Int32Array {
  return graph.size < LARGE_GRAPH ? minimumDegreeOrder(graph) : dissectionOrder(graph);
}
