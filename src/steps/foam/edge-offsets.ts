import type { EdgeOffsets } from '../../geom/offset-ring.ts';
import type { Ring } from '../../geom/ring.ts';
import { deg, rad } from '../../geom/vec.ts';
import type { PieceEdge } from '../../model/foam-piece.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { ChainBevels } from './chain-bevels.ts';
import { chainEdge, type EdgeRun } from './edge-runs.ts';

/**
 * A bevel steeper than this is drawn as this, radians: no tool cuts it, and its tangent would carry the edge off the sheet. The bevel itself
 * is still told in full, with a finding.
 */
export const STEEPEST_DRAWN_RAD = rad(75);

/** One ring's edges: how far each is moved outward from the neutral line on either side of the foam, mm, and its bevel, radians. */
export interface RingOffsets {
  readonly bevel: EdgeOffsets;
  readonly face: EdgeOffsets;
  readonly back: EdgeOffsets;
}

/**
 * Distances from the neutral line outward (foam model 4): the face edge at `(1 - k) t tan(bevel)`, the back edge at `-k t tan(bevel)`, both
 * with the allowance added on the side that carries it.
 * @param loops   points on each ring of the patch.
 * @param runs    what runs along those rings; together they cover every edge once.
 * @param bevels  per chain.
 * @param t       thickness, mm, > 0.
 * @param k       neutral fraction from the back, 0 to 1.
 */
export function ringOffsets(
  loops: readonly { readonly length: number }[],
  runs: readonly EdgeRun[],
  chains: readonly SeamChain[],
  bevels: readonly ChainBevels[],
  t: number,
  k: number,
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
    const { atStart, atEnd } = bevels[run.chain];
    for (let j = 0; j < run.count; j += 1) {
      const e = chainEdge(run, j);
      const at = (run.from + j) % length;
      for (const [end, bevel] of [
        ['atStart', run.reversed ? atEnd[e] : atStart[e]],
        ['atEnd', run.reversed ? atStart[e] : atEnd[e]],
      ] as const) {
        const lean = leanOf(bevel);
        ring.bevel[end][at] = bevel;
        ring.face[end][at] = allowance + (1 - k) * t * lean;
        ring.back[end][at] = allowance - k * t * lean;
      }
    }
  }
  return rings;
}

/** How far a cut of this bevel leans over one millimetre of foam, mm. */
export const leanOf = (bevel: number): number =>
  Math.tan(Math.min(STEEPEST_DRAWN_RAD, Math.max(-STEEPEST_DRAWN_RAD, bevel)));

const emptyOffsets = (count: number): EdgeOffsets => ({
  atStart: new Float64Array(count),
  atEnd: new Float64Array(count),
});

export const allowanceOf = (chain: SeamChain, side: 0 | 1): number =>
  chain.kind !== 'open' && chain.lapSide === side ? chain.allowanceMm : 0;

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
