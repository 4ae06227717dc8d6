import type { Surface } from '../../mesh/surface.ts';
import type { LineTurning } from './line-turning.ts';
import { ontoSurface, type LaidPlace } from './onto-surface.ts';
import type { StretchEnd, StripStretch } from './strip-stretches.ts';

/** Places along an edge of a strip that are laid on the surface. */
const FEWEST_PLACES = 8;
const MOST_PLACES = 400;
/** Half a mitred corner, radians, at most, as the outlines have it. */
const MOST_HALF_TURN = 1.2;

/** An edge laid on the surface at some ways. */
export interface LaidEdge {
  readonly ways: readonly number[];
  readonly places: readonly (LaidPlace | null)[];
}

/** Both edges of a strip. */
export interface LaidEdges {
  readonly left: LaidEdge;
  readonly right: LaidEdge;
}

const NOWHERE: LaidEdge = { ways: [], places: [] };

/** Lays both edges of a strip on the surface; of one that is wrapped over a rim neither lies on it. */
export function layOn(
  surface: Surface,
  turning: LineTurning,
  stretch: StripStretch,
  { leftMm, rightMm }: { leftMm: number; rightMm: number },
  isWrapped: boolean,
): LaidEdges {
  if (isWrapped) return { left: NOWHERE, right: NOWHERE };
  const { centre, before, after } = stretch;
  const step = Math.max(2, turning.meshMm / 2);
  const edge = (mm: number): LaidEdge => {
    // Inside a corner a mitre cuts the edge off before the middle ends.
    const cut = ({ turnRad, straightMm }: StretchEnd): number =>
      Math.max(0, mm * Math.tan(Math.max(-MOST_HALF_TURN, Math.min(MOST_HALF_TURN, turnRad / 2))) - straightMm);
    const [from, to] = [stretch.fromMm + cut(before), stretch.toMm - cut(after)];
    if (!(to > from)) return NOWHERE;
    const count = Math.min(MOST_PLACES, Math.max(FEWEST_PLACES, Math.ceil((to - from) / step)));
    const ways = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
    return { ways, places: ways.map((way) => ontoSurface(surface, turning, centre, stretch, way, mm)) };
  };
  return { left: edge(leftMm), right: edge(-rightMm) };
}

/**
 * An edge without what lies nearer to a corner than the edge does to the middle: there it goes over the summit itself, and how far it must stretch depends on
 * how the mitre is cut, not on the surface.
 */
export function awayFromCorners(
  { ways, places }: LaidEdge,
  { fromMm, toMm, before, after }: StripStretch,
  mm: number,
): LaidEdge {
  const from = fromMm + (before.kind === 'corner' ? mm : 0);
  const to = toMm - (after.kind === 'corner' ? mm : 0);
  const kept = [...ways.keys()].filter((i) => ways[i] >= from && ways[i] <= to);
  return { ways: kept.map((i) => ways[i]), places: kept.map((i) => places[i]) };
}
