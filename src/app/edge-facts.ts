import type { SculptPart } from '../project/project.ts';
import type { Bench } from './bench-state.ts';

/** What can be said of one edge of the sculpt. */
export interface EdgeFacts {
  /** mm; in file units before the size is known. */
  readonly length: number;
  /** Turn of the surface at the edge, degrees: convex > 0. */
  readonly foldDeg: number;
  readonly isOpen: boolean;
  /** Index of the seam that runs through it, or -1. */
  readonly chain: number;
  /** Letter of that seam, or null. */
  readonly letter: string | null;
}

export function edgeFacts(bench: Bench, edge: number): EdgeFacts | null {
  const { sculpt, seams } = bench;
  if (sculpt === null || 2 * edge + 1 >= sculpt.edgeVertices.length) return null;
  const { positions, edgeVertices } = sculpt;
  const a = 3 * edgeVertices[2 * edge];
  const b = 3 * edgeVertices[2 * edge + 1];
  const chain = seams?.chainOfEdge[edge] ?? -1;
  return {
    length: Math.hypot(
      positions[b] - positions[a],
      positions[b + 1] - positions[a + 1],
      positions[b + 2] - positions[a + 2],
    ),
    foldDeg: (sculpt.edgeFoldRad[edge] * 180) / Math.PI,
    isOpen: sculpt.edgeIsOpen[edge] === 1,
    chain,
    letter: chain < 0 ? null : (seams?.chains[chain].letter ?? null),
  };
}

/** True for an edge along which the foam is parted, not for an open edge of the prop. */
export const isParted = (bench: Bench, edge: number): boolean => {
  const facts = edgeFacts(bench, edge);
  return facts !== null && facts.chain >= 0 && !facts.isOpen;
};

/** Edges of the sculpt a seam runs through. */
export function edgesOfChain(bench: Bench, chain: number): number[] {
  const edges: number[] = [];
  bench.seams?.chainOfEdge.forEach((owner, edge) => {
    if (owner === chain) edges.push(edge);
  });
  return edges;
}

/** True where the maker marked a seam, along edges or across faces. */
export const hasMarks = (part: SculptPart | null): boolean =>
  part !== null && part.seams.edges.length + part.seams.paths.length > 0;
