import type { Result } from '../base/result.ts';
import type { SculptPart } from '../project/project.ts';

/** Which line of edges runs through an edge: straight on all the way round, or along a ridge or valley as long as it is sharper than an angle. */
export type LineWay = { readonly by: 'round' } | { readonly by: 'ridge'; readonly leastDeg: number };

/** What a border is drawn round: polygons of the file, or one of its groups. */
export type BorderOf = { readonly faces: readonly number[] } | { readonly group: number };

/** A piece that a line is kept to. */
export interface WithinPiece {
  /** Number of its patch in the sheet that is seen. */
  readonly patch: number;
  /** True to run both ends on to the border of the piece, so that the line splits it. */
  readonly isAcross: boolean;
}

/** Edges that a line neither runs along nor touches, but with the first of its corners. */
export interface LineFence {
  readonly closed: readonly number[];
}

/** What marking by hand asks of the worker, all of the sculpt of the last compute. Corners and edges are those of the sculpt on show. */
export interface Marking {
  /**
   * Corners of a line along edges through corners in their order, drawn as a hand would: creases and smooth lines first.
   * @param trail corners the hand came by: the line keeps near them where it can.
   */
  handLine(
    corners: readonly number[],
    within: WithinPiece | LineFence | null,
    trail?: readonly number[],
  ): Promise<Result<readonly number[]>>;
  /** Edges of the line that runs through an edge, from one end to the other; none where no such line does. */
  followLine(edge: number, way: LineWay): Promise<readonly number[]>;
  /** Corners of the file that are to stay where the sculpt is made simpler: what marks, areas and names of a part stand on. Null before there is a sculpt. */
  simplifyKeeps(part: SculptPart): Promise<readonly number[] | null>;
  /** Edges round an area of the sculpt. */
  border(of: BorderOf): Promise<readonly number[]>;
}
