import type { Work } from '../../base/work.ts';
import type { SparseGraph } from '../../geom/sparse-graph.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { Patch } from '../../model/patch.ts';
import { leastRatio } from './least-ratio.ts';
import type { RestShapes } from './rest-shapes.ts';
import { worstSpots } from './worst-spots.ts';

/**
 * What a flat piece means to the maker: where it must give most, and what no laying flat can better.
 * @param graph  which vertices of the patch are joined by a side.
 */
export async function formingFigures(
  patch: Patch,
  rest: RestShapes,
  graph: SparseGraph,
  flat: Pick<FlatPiece, 'uv' | 'major' | 'minor' | 'majorAngle'>,
  work: Work,
): Promise<Required<Pick<FlatPiece, 'spots' | 'leastRatio'>>> {
  return { spots: worstSpots(patch, rest, graph, flat), leastRatio: await leastRatio(patch, rest, graph, work) };
}
