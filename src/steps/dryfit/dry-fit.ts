import type { CornerFit, DryFit, SeamFit } from '../../model/dry-fit.ts';
import type { FoamPiece, FoamSeam, PieceEdge } from '../../model/foam-piece.ts';

/** Sums up what was measured seam by seam and corner by corner. */
export function dryFitOf(perSeam: readonly SeamFit[], corners: readonly CornerFit[]): DryFit {
  const worst = (figure: (fit: SeamFit) => number): number =>
    perSeam.reduce((most, fit) => Math.max(most, figure(fit)), 0);
  return {
    worstGapMm: worst((fit) => fit.worstGapMm),
    worstOverlapMm: worst((fit) => fit.worstOverlapMm),
    perSeam,
    corners,
  };
}

/** One run of a seam on a piece. */
export interface SeamRun {
  readonly piece: FoamPiece;
  readonly edge: PieceEdge;
}

/** A seam whose two sides were both cut. */
export interface JoinedSeam {
  readonly seam: FoamSeam;
  readonly sides: readonly [SeamRun, SeamRun];
}

/** The seams that join two edges, with these. Open edges meet nothing, and where a piece could not be made there is nothing to join. */
export function joinedSeams(pieces: readonly FoamPiece[], seams: readonly FoamSeam[]): readonly JoinedSeam[] {
  const runs = new Map<string, [SeamRun?, SeamRun?]>();
  for (const piece of pieces) {
    for (const edge of piece.edges) {
      const pair = runs.get(edge.seam) ?? [];
      pair[edge.side] = { piece, edge };
      runs.set(edge.seam, pair);
    }
  }
  return seams.flatMap((seam): JoinedSeam[] => {
    const [a, b] = runs.get(seam.id) ?? [];
    return seam.kind === 'open' || a === undefined || b === undefined ? [] : [{ seam, sides: [a, b] }];
  });
}
