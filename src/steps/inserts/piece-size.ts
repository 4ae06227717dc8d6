import { chainRing } from '../../geom/outline.ts';
import { boxOfPoints } from '../../geom/ring.ts';
import type { ShapeEdge } from '../../model/shape.ts';

/** Length along x and width along y of what edges bound, mm. */
export function sizeOfEdges(edges: readonly ShapeEdge[]): readonly [number, number] {
  const { minX, minY, maxX, maxY } = boxOfPoints(chainRing(edges.flatMap(({ segments }) => segments)));
  return [maxX - minX, maxY - minY];
}
