import type { CutOffer } from '../model/patch.ts';
import type { SeamMarks, SurfacePoint } from '../model/seams.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { EdgePair } from '../project/commands.ts';
import { facePolygons, surfacePointOf } from '../steps/seams/surface-points.ts';
import type { DrawnSurface } from './drawn-lines.ts';
import type { SizedSculpt } from './outcome.ts';

/**
 * The marks that make an offered cut, in the words of the file. Where the sculpt was cut along paths, edges that are none of the sculpt's, or only a part
 * of one, are marked by paths of their own.
 */
export function marksOfOffer(
  { edges }: Pick<CutOffer, 'edges'>,
  { mesh, model }: SizedSculpt,
  { cut }: Pick<DrawnSurface, 'cut'>,
): SeamMarks {
  const before = mesh.positions.length / 3;
  const topology = topologyOf(mesh);
  const pointOf = (v: number): SurfacePoint =>
    surfacePointOf(mesh, facePolygons(model), v < before ? { at: 'vertex', vertex: v } : cut.added[v - before]);
  const whole: EdgePair[] = [];
  const rows: number[][] = [];
  for (const [v, w] of edges) {
    if (v < before && w < before && topology.edgeBetween(v, w) >= 0) {
      whole.push([mesh.fileVertex[v], mesh.fileVertex[w]]);
      continue;
    }
    // Edges of an offer come one after the other, each from either end.
    const row = rows.at(-1);
    const end = row?.at(-1);
    if (row !== undefined && (end === v || end === w)) row.push(end === v ? w : v);
    else if (row?.length === 2 && (row[0] === v || row[0] === w)) row.reverse().push(row[1] === v ? w : v);
    else rows.push([v, w]);
  }
  return { edges: whole, paths: rows.map((row) => ({ points: row.map(pointOf), kind: 'butt' })) };
}
