import { leanSeenFrom } from '../../base/lean-words.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { EdgesOfPiece, SawTable } from '../../model/saw-settings.ts';
import { sawSettings } from './saw-settings.ts';

/** An edge that some setting serves, with its leans as the printed side shows them, degrees. */
interface ServedEdge {
  readonly piece: FoamPiece;
  readonly edge: number;
  readonly bevelDeg: Float64Array;
}

/**
 * How the saw is set for many pieces, so that it is set once for all edges that lean alike, whichever piece they are of. Edges that their own
 * piece has cut by hand are left out.
 */
export function sawTable(pieces: readonly FoamPiece[]): SawTable {
  const served = pieces.flatMap((piece): readonly ServedEdge[] => {
    const edges = (piece.saw?.settings ?? []).flatMap((setting) => setting.edges).sort((a, b) => a - b);
    return edges.map((edge) => ({
      piece,
      edge,
      bevelDeg: piece.edges[edge].bevelDeg.map((bevel) => leanSeenFrom(piece.tracedSide, bevel)),
    }));
  });
  const { settings } = sawSettings(served, Infinity);
  return {
    settings: settings.map(({ bevelDeg, edges }) => ({
      leanDeg: bevelDeg,
      pieces: byPiece(edges.map((at) => served[at])),
    })),
  };
}

/** @param served edges, those of a piece beside one another. */
function byPiece(served: readonly ServedEdge[]): readonly EdgesOfPiece[] {
  const pieces: { piece: EdgesOfPiece['piece']; edges: number[] }[] = [];
  for (const { piece, edge } of served) {
    const last = pieces.at(-1);
    if (last?.piece === piece.id) last.edges.push(edge);
    else pieces.push({ piece: piece.id, edges: [edge] });
  }
  return pieces;
}
