import { chainRound, type OutlineSegment } from '../../geom/outline.ts';
import { squareEdge } from '../../model/plain-edge.ts';
import type { ArtOutline, ArtRegion, ArtSegment } from '../../model/artwork.ts';
import type { ShapeEdge } from '../../model/shape.ts';
import { circleRadius, flatSegment, segmentLength, sweptArea } from './segments.ts';

/**
 * An outline of artwork in the exact parts that pieces have: circles stay circles; other curves have their own length and area, and points on them.
 * @param deviationMm  how far chords of other curves may be from them, > 0.
 */
export const chainOfArt = ({ path, ring }: ArtOutline, deviationMm: number): readonly OutlineSegment[] =>
  path === null ? chainRound(ring) : path.segments.map((segment) => partOfArt(segment, deviationMm));

function partOfArt(segment: ArtSegment, deviationMm: number): OutlineSegment {
  const { from, to } = segment;
  if (segment.kind === 'line') return { kind: 'line', from, to };
  const radius = segment.kind === 'arc' ? circleRadius(segment) : null;
  if (segment.kind === 'arc' && radius !== null) {
    const { centre, u, v, turn } = segment;
    return { kind: 'arc', from, to, centre, radius, turn: u.x * v.y - u.y * v.x > 0 ? turn : -turn };
  }
  return {
    kind: 'curve',
    from,
    to,
    points: [from, ...flatSegment(segment, deviationMm)],
    deviationMm,
    lengthMm: segmentLength(segment),
    sweptMm2: sweptArea(segment),
  };
}

/** A region's outline and holes as edges that are cut square, each round. */
export const edgesOfRegion = (
  { outline, holes }: ArtRegion,
  deviationMm: number,
): { readonly outline: readonly ShapeEdge[]; readonly holes: readonly (readonly ShapeEdge[])[] } => ({
  outline: [squareEdge('outline', chainOfArt(outline, deviationMm))],
  holes: holes.map((hole, i) => [
    squareEdge(holes.length === 1 ? 'hole' : `hole ${i + 1}`, chainOfArt(hole, deviationMm)),
  ]),
});
