import type { FoamPiece, MatchMark, PieceEdge } from '../../model/foam-piece.ts';

/** What a template says of the piece that is cut with it turned over: that piece, and for each edge and mark of the first the one it lies on. */
export interface TwinReading {
  readonly piece: FoamPiece;
  readonly edges: ReadonlyMap<PieceEdge, PieceEdge>;
  /** By {@link markKey}. */
  readonly marks: ReadonlyMap<string, MatchMark>;
}

/** `A1/C1` where a name is another on the template turned over. */
export const bothNames = (own: string, turned: string = own): string => (turned === own ? own : `${own}/${turned}`);

export const markKey = ({ seam, side, index }: Pick<MatchMark, 'seam' | 'side' | 'index'>): string =>
  `${seam} ${side} ${index}`;
