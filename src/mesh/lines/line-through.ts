import { ok, type Result } from '../../base/result.ts';
import type { Surface } from '../surface.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';
import { isSamePoint, withoutDoubles } from './mesh-point.ts';
import { nearShortestLine } from './shortest-line.ts';

/**
 * The line from point to point, locally shortest between each two; of a closed one also from the last to the first.
 * @param points  at least one. Two in a row on one spot count once.
 * @returns `seams/no-path` where two lie on surfaces that do not touch.
 */
export function lineThrough(surface: Surface, points: readonly MeshPoint[], closed: boolean): Result<MeshLine> {
  const all: MeshPoint[] = [points[0]];
  for (let i = 1; i < points.length + (closed ? 1 : 0); i += 1) {
    const [p, q] = [points[i - 1], points[i % points.length]];
    if (isSamePoint(p, q)) continue;
    const piece = nearShortestLine(surface, p, q);
    if (!piece.ok) return piece;
    all.push(...piece.value.line.points.slice(1));
  }
  return ok({ points: withoutDoubles(all, closed), closed });
}
