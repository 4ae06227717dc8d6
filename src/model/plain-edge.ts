import { chainLength, type OutlineSegment } from '../geom/outline.ts';
import type { ShapeEdge } from './shape.ts';

export interface EdgeExtra {
  readonly seam?: string | undefined;
  readonly meets?: string | undefined;
  /** On the finished shape, mm, where the piece must stretch; as long as it is flat when left out. */
  readonly trueLengthMm?: number | undefined;
}

/** An edge that is cut square. @param segments a chain. */
export const squareEdge = (name: string, segments: readonly OutlineSegment[], extra: EdgeExtra = {}): ShapeEdge =>
  leaningEdge(name, segments, 0, extra);

/**
 * An edge that leans.
 * @param segments  a chain.
 * @param bevelDeg  blade lean from square, degrees; positive: the back stands inside the face. One for all of it, or at its start, half-way and at its end.
 */
export function leaningEdge(
  name: string,
  segments: readonly OutlineSegment[],
  bevelDeg: number | readonly [number, number, number],
  { seam, meets, trueLengthMm }: EdgeExtra = {},
): ShapeEdge {
  const lengthMm = chainLength(segments);
  const [from, middle, to] = typeof bevelDeg === 'number' ? [bevelDeg, bevelDeg, bevelDeg] : bevelDeg;
  return {
    name,
    segments,
    lengthMm,
    trueLengthMm: trueLengthMm ?? lengthMm,
    bevelDeg: { from, middle, to },
    ...(seam === undefined ? {} : { seam }),
    ...(meets === undefined ? {} : { meets }),
  };
}
