import { runAtOnce } from '../../base/stepwise.ts';
import { pieceAt, type LaidLine } from '../../mesh/lines/along-line.ts';
import type { MeshLine } from '../../mesh/lines/mesh-line.ts';
import { halfedgeIn, sharedTriangle } from '../../mesh/lines/mesh-point.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { surfaceOf, type Surface } from '../../mesh/surface.ts';
import { vertexOffsetSteps } from '../../mesh/vertex-offset.ts';

/**
 * What strips stand on. Both surfaces have the same triangles, so that one line lies on both; `neutral` is `foot` moved outward to where the strip keeps its
 * length: by its neutral fraction times its thickness.
 */
export interface TrimGround {
  readonly foot: Surface;
  readonly neutral: Surface;
}

/**
 * The ground of strips on a prop.
 * @param footMm     how far the face of the prop stands outside the mesh, mm; may be under 0.
 * @param neutralMm  how far above the face the strip keeps its length: its neutral fraction times its thickness.
 */
export function trimGround(mesh: Mesh, footMm: number, neutralMm: number): TrimGround {
  const { triangles, topology, positions } = surfaceOf(mesh);
  const { directions } = runAtOnce(vertexOffsetSteps(positions, triangles));
  const moved = (mm: number): Surface =>
    mm === 0 ? surfaceOf(mesh) : { triangles, topology, positions: positions.map((x, i) => x + mm * directions[i]) };
  return { foot: moved(footMm), neutral: moved(footMm + neutralMm) };
}

/** A line to be covered, named for people, with the ways along it (on `foot`, mm) where the seam beneath has its match marks. */
export interface TrimLine {
  readonly name: string;
  readonly line: MeshLine;
  readonly marksAtMm?: readonly number[];
}

/** The way along the same line on another surface. */
export function wayOnOther(from: LaidLine, to: LaidLine, mm: number): number {
  const i = pieceAt(from, Math.min(from.lengthMm, Math.max(0, mm)));
  const size = from.way[i + 1] - from.way[i];
  const share = size > 0 ? Math.min(1, Math.max(0, (mm - from.way[i]) / size)) : 0;
  return to.way[i] + share * (to.way[i + 1] - to.way[i]);
}

/** The side of a line on which the surface lies, where all of it runs along open edges; null where it does not. */
export function rimSide(surface: Surface, { points, closed }: MeshLine): 'left' | 'right' | null {
  let side: 'left' | 'right' | null = null;
  const { topology, triangles } = surface;
  for (let i = closed ? 0 : 1; i < points.length; i += 1) {
    const [p, q] = [points[(i + points.length - 1) % points.length], points[i]];
    if (p.at !== 'vertex' || q.at !== 'vertex') return null;
    const edge = topology.edgeBetween(p.vertex, q.vertex);
    const t = sharedTriangle(surface, p, q);
    if (edge < 0 || t < 0 || topology.usesOfEdge[edge] !== 1) return null;
    const own = triangles[halfedgeIn(surface, t, edge)] === p.vertex ? 'left' : 'right';
    if (side !== null && side !== own) return null;
    side = own;
  }
  return side;
}
