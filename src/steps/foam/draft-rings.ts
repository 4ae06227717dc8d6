import { offsetRing } from '../../geom/offset-ring.ts';
import { chainPoints } from '../../geom/outline.ts';
import type { Ring } from '../../geom/ring.ts';
import type { PlainDraft } from '../../model/plain-piece.ts';
import type { ShapeEdge } from '../../model/shape.ts';

/** Farthest that a straight part of a line to cut lies off its curve, mm: far under the width of the line. */
const CHORD_MM = 0.02;

/**
 * Outline and holes at a height over the surface they are drawn on, towards the face, mm: each place of an edge moves outward by the height times the
 * tangent of its lean (foam model 4), and neighbours meet again.
 */
export function ringsAt({ outline, holes }: Pick<PlainDraft, 'outline' | 'holes'>, heightMm: number): readonly Ring[] {
  return [outline, ...holes].map((edges) => ringAt(edges, heightMm));
}

function ringAt(edges: readonly ShapeEdge[], heightMm: number): Ring {
  const points: number[] = [];
  const [atStart, atEnd]: [number[], number[]] = [[], []];
  for (const edge of edges) {
    const chain = chainPoints(edge.segments, CHORD_MM);
    const stations = [0];
    for (let i = 1; i < chain.length; i += 1)
      stations.push(stations[i - 1] + Math.hypot(chain[i].x - chain[i - 1].x, chain[i].y - chain[i - 1].y));
    const length = stations[stations.length - 1];
    for (let i = 0; i + 1 < chain.length; i += 1) {
      points.push(chain[i].x, chain[i].y);
      atStart.push(heightMm * Math.tan(leanAt(edge, length === 0 ? 0 : stations[i] / length)));
      atEnd.push(heightMm * Math.tan(leanAt(edge, length === 0 ? 1 : stations[i + 1] / length)));
    }
  }
  const ring = Float64Array.from(points);
  if (atStart.every((mm) => mm === 0) && atEnd.every((mm) => mm === 0)) return ring;
  return offsetRing(ring, { atStart: Float64Array.from(atStart), atEnd: Float64Array.from(atEnd) }).ring;
}

/** Lean at a share of an edge's length, radians; between its start, half-way and its end it changes evenly. */
function leanAt({ bevelDeg: { from, middle, to } }: ShapeEdge, share: number): number {
  const deg = share < 0.5 ? from + (middle - from) * 2 * share : middle + (to - middle) * (2 * share - 1);
  return (deg * Math.PI) / 180;
}
