import type { Patch } from '../../model/patch.ts';
import type { SeamChain } from '../../model/seams.ts';

/** Seams and open edges as far as it matters which piece's edge follows which. */
export interface SeamNet {
  readonly pieceCount: number;
  /** In the order of the sculpt's chains. */
  readonly chains: readonly NetChain[];
  /**
   * Sides are numbered 2 × chain + side. For each the one that follows it along the border of its piece, which lies on its left; -1 where the
   * chain has no such side. Side 0 runs as its chain does, side 1 against it.
   *
   *        ── side 0 ──>
   *     a ═══════════════ b      what follows side 0 begins at b, what follows side 1 at a
   *       <── side 1 ───
   */
  readonly next: Int32Array;
}

export interface NetChain {
  /** Of side 0 and side 1; one alone at an open edge. */
  readonly pieces: readonly number[];
  /** > 0. */
  readonly lengthMm: number;
  readonly closed: boolean;
  /** Mean turn of the foam across it, by length, without its sign, radians. */
  readonly foldRad: number;
}

/**
 * @param positions x y z per vertex of the mesh, mm: where lengths are measured.
 */
export function seamNet(
  chains: readonly SeamChain[],
  patches: readonly Patch[],
  positions: ArrayLike<number>,
): SeamNet {
  const next = new Int32Array(2 * chains.length).fill(-1);
  const sideAt = sidesByEdge(chains, patches);
  patches.forEach(({ loops }, p) => {
    for (const loop of loops) {
      const row = sidesAlong(loop, (from, to) => sideAt[p].get(edgeKey(patches[p], from, to)));
      row.forEach((side, i) => (next[side] = row[(i + 1) % row.length]));
    }
  });
  return { pieceCount: patches.length, chains: chains.map((chain) => netChain(chain, positions)), next };
}

/** Chain of a side, and the side across from it. */
export const chainOf = (side: number): number => side >> 1;
export const mateOf = (side: number): number => side ^ 1;

/** Whether a chain joins two edges. */
export const isGlueable = ({ chains }: SeamNet, chain: number): boolean => chains[chain].pieces.length === 2;

function netChain({ vertices, sides, closed, foldRad }: SeamChain, positions: ArrayLike<number>): NetChain {
  let lengthMm = 0;
  let turned = 0;
  for (let i = 0; i + 1 < vertices.length; i += 1) {
    const [a, b] = [3 * vertices[i], 3 * vertices[i + 1]];
    const mm = Math.hypot(
      positions[b] - positions[a],
      positions[b + 1] - positions[a + 1],
      positions[b + 2] - positions[a + 2],
    );
    lengthMm += mm;
    turned += mm * Math.abs(foldRad[i]);
  }
  return {
    pieces: sides.map(({ patch }) => patch),
    lengthMm,
    closed,
    foldRad: lengthMm > 0 ? turned / lengthMm : 0,
  };
}

/** For each patch the side that runs along each border edge, by the edge's two local vertices in the order of the loop. */
function sidesByEdge(chains: readonly SeamChain[], patches: readonly Patch[]): readonly ReadonlyMap<number, number>[] {
  const found = patches.map(() => new Map<number, number>());
  chains.forEach(({ sides }, c) => {
    sides.forEach(({ patch, localVertices }, k) => {
      for (let i = 0; i + 1 < localVertices.length; i += 1) {
        const [a, b] = [localVertices[i], localVertices[i + 1]];
        found[patch].set(edgeKey(patches[patch], k === 0 ? a : b, k === 0 ? b : a), 2 * c + k);
      }
    });
  });
  return found;
}

const edgeKey = ({ meshVertices }: Patch, from: number, to: number): number => from * meshVertices.length + to;

/** The sides along a loop, each run once, from any of them on. */
function sidesAlong(loop: Uint32Array, sideAt: (from: number, to: number) => number | undefined): readonly number[] {
  const row: number[] = [];
  loop.forEach((from, i) => {
    const side = sideAt(from, loop[(i + 1) % loop.length]);
    if (side === undefined) throw new Error('sidesAlong: a border edge without a seam');
    if (row.at(-1) !== side) row.push(side);
  });
  // A run that the loop's beginning parts is one run.
  if (row.length > 1 && row[0] === row.at(-1)) row.pop();
  return row;
}
