import { angleInRound, roundAt } from '../../mesh/lines/round.ts';
import { headingBetween, type Heading } from '../../mesh/lines/heading.ts';
import { sharedTriangle, trianglesAt, weightsIn } from '../../mesh/lines/mesh-point.ts';
import type { MeshPoint } from '../../mesh/lines/mesh-line.ts';
import { nearShortestLine } from '../../mesh/lines/shortest-line.ts';
import type { Surface } from '../../mesh/surface.ts';

/** A part of a surface about a place, each corner of it laid flat as far from the place and in the direction in which it lies over the surface. */
export interface LogMap {
  /** x y per vertex of the surface, mm; the place at the origin, the heading along +x. Not a number where a vertex is out of reach. */
  readonly uv: Float64Array;
  /** Triangles that lie in the part the same way up as on the surface. */
  readonly triangles: readonly number[];
}

/**
 * The inverse of the exponential map of a place: distance and direction of the shortest line to every corner round about, straight between the corners
 * (exponential maps for laying drawings on meshes: Schmidt, Grimm and Wyvill, "Interactive decal compositing with discrete exponential maps", 2006, who carry
 * a frame from corner to corner; shortest lines by `nearShortestLine` instead, so that a surface that rolls out flat does so to rounding). Beyond a summit, or
 * more than half way round a tube, lines from both sides meet: the triangles there lie upside down and are left out.
 * @param heading  in a triangle that holds `at`.
 * @param reachMm  how far the part must reach.
 */
export function logMap(surface: Surface, at: MeshPoint, heading: Heading, reachMm: number): LogMap {
  const { positions, triangles } = surface;
  const round = roundAt(surface, at, heading.triangle);
  const start = angleInRound(round, heading);
  // About a summit or a saddle the directions share a full turn.
  const spread = round.isOpen ? 1 : (2 * Math.PI) / round.total;
  const uv = new Float64Array((2 * positions.length) / 3).fill(NaN);
  const found = new Set<number>();
  const queue = trianglesAt(surface, at);
  const isSeen = new Set(queue);
  for (let i = 0; i < queue.length; i += 1) {
    const corners = [0, 1, 2].map((k) => triangles[3 * queue[i] + k]);
    let isNear = false;
    for (const v of corners) {
      if (!found.has(v)) {
        found.add(v);
        lay(v);
      }
      if (Math.hypot(uv[2 * v], uv[2 * v + 1]) <= reachMm) isNear = true;
    }
    if (!isNear && i >= isSeen.size) continue;
    if (isNear)
      for (const v of corners)
        for (const t of trianglesAt(surface, { at: 'vertex', vertex: v }))
          if (!isSeen.has(t)) {
            isSeen.add(t);
            queue.push(t);
          }
  }
  return { uv, triangles: queue.filter(isUpright).sort((a, b) => a - b) };

  function lay(v: number): void {
    const target: MeshPoint = { at: 'vertex', vertex: v };
    const way = nearShortestLine(surface, at, target);
    if (!way.ok) return;
    const { lengthMm, line } = way.value;
    if (lengthMm === 0) {
      uv[2 * v] = uv[2 * v + 1] = 0;
      return;
    }
    const next = line.points[1];
    const t = sharedTriangle(surface, at, next);
    const [from, to] = [at, next].map((p) => weightsIn(surface.topology, triangles, p, t));
    const out = from && to && headingBetween(surface, t, from, to);
    if (out === null) return;
    const angle = spread * (angleInRound(round, out) - start);
    uv[2 * v] = lengthMm * Math.cos(angle);
    uv[2 * v + 1] = lengthMm * Math.sin(angle);
  }

  function isUpright(t: number): boolean {
    const [a, b, c] = [0, 1, 2].map((k) => 2 * triangles[3 * t + k]);
    return (uv[b] - uv[a]) * (uv[c + 1] - uv[a + 1]) - (uv[b + 1] - uv[a + 1]) * (uv[c] - uv[a]) > 0;
  }
}
