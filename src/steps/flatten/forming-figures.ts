import type { Work } from '../../base/work.ts';
import { graphOfTriangles } from '../../geom/sparse-graph.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { Patch } from '../../model/patch.ts';
import { leastRatio } from './least-ratio.ts';
import { restShapes } from './rest-shapes.ts';
import { worstSpots } from './worst-spots.ts';

/**
 * What a flat piece means to the maker: where it must give most, and what no laying flat can better.
 * @param positions  the surface it was laid flat from, x y z per mesh vertex, mm.
 * @param corners    as in the options it was laid flat by.
 */
export async function formingFiguresOf(
  patch: Patch,
  positions: Float64Array,
  flat: Pick<FlatPiece, 'uv' | 'major' | 'minor' | 'majorAngle'>,
  work: Work,
  corners?: Float64Array,
): Promise<Required<Pick<FlatPiece, 'spots' | 'leastRatio'>>> {
  const rest = restShapes(patch, positions, corners);
  const graph = graphOfTriangles(rest.vertexCount, patch.triangles);
  await work.pause(0);
  return { spots: worstSpots(patch, rest, graph, flat), leastRatio: await leastRatio(patch, rest, graph, work) };
}
