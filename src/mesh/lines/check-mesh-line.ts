import type { Surface } from '../surface.ts';
import { isSamePoint, sharedTriangle } from './mesh-point.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';

/**
 * Holds a line against its record: numbers in range, shares and weights inside, no point twice in a row, consecutive points in one triangle.
 * @returns one sentence for each fault; none for a good line.
 */
export function checkMeshLine(surface: Surface, { points, closed }: MeshLine): string[] {
  const faults = points.flatMap((p, i) => {
    const fault = pointFault(surface, p);
    return fault === null ? [] : [`point ${i}: ${fault}`];
  });
  if (faults.length > 0) return faults;
  if (closed && points.length < 3) faults.push(`closed with ${points.length} points`);
  for (let i = closed ? 0 : 1; i < points.length; i += 1) {
    const before = (i + points.length - 1) % points.length;
    if (isSamePoint(points[before], points[i])) faults.push(`points ${before} and ${i} are one`);
    else if (sharedTriangle(surface, points[before], points[i]) < 0)
      faults.push(`points ${before} and ${i} share no triangle`);
  }
  return faults;
}

function pointFault({ positions, triangles, topology }: Surface, p: MeshPoint): string | null {
  const isIn = (n: number, count: number): boolean => Number.isInteger(n) && n >= 0 && n < count;
  if (p.at === 'vertex') return isIn(p.vertex, positions.length / 3) ? null : `no vertex ${p.vertex}`;
  if (p.at === 'edge') {
    if (!isIn(p.edge, topology.edgeCount)) return `no edge ${p.edge}`;
    return p.share > 0 && p.share < 1 ? null : `share ${p.share}`;
  }
  if (!isIn(p.triangle, triangles.length / 3)) return `no triangle ${p.triangle}`;
  const sum = p.bary[0] + p.bary[1] + p.bary[2];
  return p.bary.every((weight) => weight > 0) && Math.abs(sum - 1) < 1e-12 ? null : `weights ${p.bary.join(' ')}`;
}
