import type { PieceId, LayerId } from '../../base/ids.ts';
import { deg } from '../../geom/vec.ts';
import type { BevelRange, FoamSeam, TracedSide } from '../../model/foam-piece.ts';
import type { SeamChain } from '../../model/seams.ts';
import { movedLength } from './cut-lines.ts';
import type { EdgeRun } from './edge-runs.ts';
import { tracedLines, type PieceShape } from './piece-shape.ts';
import type { SeamCut, SideCut } from './seam-cuts.ts';
import { walkSeam, type MarkPlace, type SeamWalk, type WalkedSide } from './seam-walk.ts';

/** One side of a seam on a piece that is made. */
export interface SeamPieceSide {
  readonly piece: PieceId;
  readonly shape: PieceShape;
  readonly run: EdgeRun;
  readonly walked: WalkedSide;
  readonly traced: TracedSide;
}

/**
 * A seam as it came out in foam.
 * @param sides those sides whose piece could be made, in order; at least one.
 * @param marks its match marks.
 */
export function foamSeam(
  chain: SeamChain,
  layer: LayerId,
  sides: readonly SeamPieceSide[],
  cut: SeamCut,
  marks: readonly MarkPlace[],
): { readonly seam: FoamSeam; readonly walk: SeamWalk } {
  const walk = walkSeam(
    sides.map(({ walked }) => walked),
    marks,
  );
  const { own } = sides[0].walked;
  const [one, other] = cut.sides.map(bevelRange);
  const { faceMm, backMm } = cut.step;
  return {
    walk,
    seam: {
      id: chain.id,
      letter: chain.letter,
      kind: chain.kind,
      layer,
      pieces: sides.map(({ piece }) => piece),
      allowanceMm: chain.kind === 'open' ? 0 : chain.allowanceMm,
      lapSide: chain.lapSide,
      ...(chain.topSide === undefined ? {} : { topSide: chain.topSide }),
      ...(chain.standSide === undefined || cut.joining !== 'rebate' ? {} : { standSide: chain.standSide }),
      ...(cut.steep === undefined ? {} : { steep: cut.steep }),
      ...(faceMm === 0 && backMm === 0 ? {} : { step: cut.step }),
      lengthMm: walk.lengthMm,
      tracedLengthMm: sides.map(({ shape, run, traced }) =>
        movedLength(
          tracedLines(shape, traced).moved[run.ring],
          shape.neutral[run.ring].length / 2,
          run.from,
          run.count,
        ),
      ),
      trueLengthMm: own[own.length - 1],
      differenceMm: walk.differenceMm,
      worstSlipMm: walk.worstSlipMm,
      worstMisalignmentMm: walk.worstMisalignmentMm,
      bevelDeg: other === undefined ? one : { min: Math.min(one.min, other.min), max: Math.max(one.max, other.max) },
      ...(cut.joining === 'shared' ? { sideBevelDeg: [one, other] as const } : {}),
    },
  };
}

function bevelRange({ bevel: { atStart, atEnd } }: SideCut): BevelRange {
  const leans = [...atStart, ...atEnd].map(deg);
  return { min: leans.reduce((a, b) => Math.min(a, b)), max: leans.reduce((a, b) => Math.max(a, b)) };
}
