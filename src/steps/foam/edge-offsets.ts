import type { EdgeOffsets } from '../../geom/offset-ring.ts';
import type { Ring } from '../../geom/ring.ts';
import { deg } from '../../geom/vec.ts';
import type { PieceEdge } from '../../model/foam-piece.ts';
import type { SeamChain } from '../../model/seams.ts';
import { chainEdge, type EdgeRun } from './edge-runs.ts';
import type { SeamCut } from './seam-cuts.ts';

/** One ring's edges: how far each is moved outward from the neutral line on either side of the foam, mm, and its bevel, radians. */
export interface RingOffsets {
  readonly bevel: EdgeOffsets;
  readonly face: EdgeOffsets;
  readonly back: EdgeOffsets;
}

/**
 * Distances from the neutral line outward, as the seams are cut, with the allowance added on the side that carries it.
 * @param loops   points on each ring of the patch.
 * @param runs    what runs along those rings; together they cover every edge once.
 * @param cuts    per chain.
 */
export function ringOffsets(
  loops: readonly { readonly length: number }[],
  runs: readonly EdgeRun[],
  chains: readonly SeamChain[],
  cuts: readonly SeamCut[],
): readonly RingOffsets[] {
  const rings = loops.map(({ length }) => ({
    bevel: emptyOffsets(length),
    face: emptyOffsets(length),
    back: emptyOffsets(length),
  }));
  for (const run of runs) {
    const ring = rings[run.ring];
    const length = loops[run.ring].length;
    const allowance = allowanceOf(chains[run.chain], run.side);
    const { bevel, face, back } = cuts[run.chain].sides[run.side];
    for (let j = 0; j < run.count; j += 1) {
      const e = chainEdge(run, j);
      const at = (run.from + j) % length;
      for (const end of ['atStart', 'atEnd'] as const) {
        const from = run.reversed ? OTHER_END[end] : end;
        ring.bevel[end][at] = bevel[from][e];
        ring.face[end][at] = allowance + face[from][e];
        ring.back[end][at] = allowance + back[from][e];
      }
    }
  }
  return rings;
}

const OTHER_END = { atStart: 'atEnd', atEnd: 'atStart' } as const;

const emptyOffsets = (count: number): EdgeOffsets => ({
  atStart: new Float64Array(count),
  atEnd: new Float64Array(count),
});

export const allowanceOf = (chain: SeamChain, side: 0 | 1): number =>
  chain.kind !== 'open' && chain.lapSide === side ? chain.allowanceMm : 0;

/** What a side of a seam does there: edges of one role are cut alike. */
export function roleOf({ kind, lapSide, topSide = lapSide, standSide, steep }: SeamChain, side: 0 | 1): string {
  if (kind === 'lap') return topSide === side ? 'lap over' : 'lap under';
  if (kind === 'rebate') return standSide === side ? 'stands' : 'runs through';
  return steep === undefined ? kind : `${kind} ${steep}`;
}

/** The runs as the records tell them: figures at each point of the run, where two edges of the run meet their mean. */
export function pieceEdges(
  rings: readonly Ring[],
  runs: readonly EdgeRun[],
  chains: readonly SeamChain[],
  offsets: readonly RingOffsets[],
): readonly PieceEdge[] {
  return runs.map((run) => {
    const chain = chains[run.chain];
    const ring = rings[run.ring];
    const { bevel, face, back } = offsets[run.ring];
    return {
      seam: chain.id,
      letter: chain.letter,
      side: run.side,
      ring: run.ring,
      from: run.from,
      to: run.to,
      reversed: run.reversed,
      stationMm: stationsAlong(ring, run),
      bevelDeg: atPoints(bevel, run, ring.length / 2).map(deg),
      faceOffsetMm: atPoints(face, run, ring.length / 2),
      backOffsetMm: atPoints(back, run, ring.length / 2),
      allowanceMm: allowanceOf(chain, run.side),
    };
  });
}

/** Arc length on the ring at each point of a run, in the ring's order, mm. */
export function stationsAlong(ring: Ring, run: EdgeRun): Float64Array {
  const count = ring.length / 2;
  const stations = new Float64Array(run.count + 1);
  for (let j = 0; j < run.count; j += 1) {
    const a = (run.from + j) % count;
    const b = (a + 1) % count;
    stations[j + 1] = stations[j] + Math.hypot(ring[2 * b] - ring[2 * a], ring[2 * b + 1] - ring[2 * a + 1]);
  }
  return stations;
}

function atPoints(values: EdgeOffsets, run: EdgeRun, count: number): Float64Array {
  const isWhole = run.from === run.to;
  return Float64Array.from({ length: run.count + 1 }, (_, j) => {
    const next = (run.from + j) % count;
    const last = (run.from + j + count - 1) % count;
    if (!isWhole && j === 0) return values.atStart[next];
    if (!isWhole && j === run.count) return values.atEnd[last];
    return (values.atStart[next] + values.atEnd[last]) / 2;
  });
}
