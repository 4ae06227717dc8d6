import type { PieceId } from '../base/ids.ts';

/** Edges of a piece that are cut without touching the table. */
export interface SawSetting {
  /** Angle of the table or blade, degrees from square; positive: the back edge stands inside the face edge. 0 is square. */
  readonly bevelDeg: number;
  /** Indices into the piece's edges, ascending. */
  readonly edges: readonly number[];
}

/** An edge that no single setting cuts. */
export interface HandCut {
  /** Index into the piece's edges. */
  readonly edge: number;
  /** Bevel at its beginning and its end in the ring's order, and the least and greatest on the way, degrees from square. */
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly leastDeg: number;
  readonly mostDeg: number;
  /** changes: the bevel changes along it. steep: it leans more than blade or table do. */
  readonly why: 'changes' | 'steep';
}

/** How a piece's edges are cut with the saw set as seldom as possible. */
export interface SawSettings {
  /** From square upward; of two alike, the one that leans in first. */
  readonly settings: readonly SawSetting[];
  /** In the order of the piece's edges. */
  readonly byHand: readonly HandCut[];
}

/** Edges of one piece. */
export interface EdgesOfPiece {
  readonly piece: PieceId;
  /** Indices into the piece's edges, ascending. */
  readonly edges: readonly number[];
}

/** How the saw is set for all pieces of a job, as seldom as possible. */
export interface SawTable {
  /**
   * From square upward, of two alike the one that leans in first. `leanDeg` is as the printed side shows it, positive when the cut runs in
   * under the piece.
   */
  readonly settings: readonly { readonly leanDeg: number; readonly pieces: readonly EdgesOfPiece[] }[];
}
