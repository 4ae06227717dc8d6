import { CURVE_DEVIATION_MM, line, type OutlineSegment } from '../../geom/outline.ts';
import { vec2, type Vec2 } from '../../geom/vec.ts';
import { leaningEdge } from '../../model/plain-edge.ts';
import type { ShapeEdge } from '../../model/shape.ts';
import { centreAt, type FlatCentre } from './flat-centre.ts';
import { throughPoints } from './through-points.ts';

/** How an end of the flat strip is cut: leaning from square by `leanRad` (left edge longer > 0 at both ends), or to a point `pointMm` beyond. */
export interface OutlineEnd {
  /** Straight length beyond the end of the curved part, mm, >= 0. */
  readonly straightMm: number;
  readonly leanRad: number;
  readonly pointMm: number;
}

export interface OutlineWish {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly start: OutlineEnd;
  readonly end: OutlineEnd;
  /** Blade lean of the long edges, degrees, positive: the back stands inside the face. */
  readonly leftBevelDeg: number;
  readonly rightBevelDeg: number;
}

/** Dense places along an edge, each this far from the next at most, mm, and how many at most. */
const DENSE_MM = 0.5;
const MOST_DENSE = 8000;

/** Place on a strip beside its middle: `arc` mm along it from the start of the curved part, straight on beyond both ends; `mm` to the left. */
export function onStrip(centre: FlatCentre, fromMm: number, toMm: number, way: number, mm: number): Vec2 {
  const inside = Math.min(toMm, Math.max(fromMm, way));
  const { x, y, heading } = centreAt(centre, inside);
  const on = way - inside;
  return vec2(x + on * Math.cos(heading) - mm * Math.sin(heading), y + on * Math.sin(heading) + mm * Math.cos(heading));
}

/**
 * The outline of a flat strip, counter-clockwise: its right edge forward, its end, its left edge back, its start. Edges run at a constant distance beside the
 * middle, so each has its true length; a mitred end cuts both off on one line through the end of the middle.
 */
export function stripOutline(
  centre: FlatCentre,
  fromMm: number,
  toMm: number,
  wish: OutlineWish,
): readonly ShapeEdge[] {
  const at = (way: number, mm: number): Vec2 => onStrip(centre, fromMm, toMm, way, mm);
  const startWay = fromMm - wish.start.straightMm;
  const endWay = toMm + wish.end.straightMm;
  const middle = (fromMm + toMm) / 2;
  // Where each edge meets the line across the end; beyond the middle's end on the longer side.
  const cut = (way: number, mm: number, leanRad: number, outward: 1 | -1): number => {
    if (leanRad === 0) return way;
    const { x, y } = at(way, 0);
    const heading = centreAt(centre, Math.min(toMm, Math.max(fromMm, way))).heading;
    // The cut runs from the middle to the left at this angle from the strip's own direction.
    const angle = heading + Math.PI / 2 - outward * leanRad;
    const [cx, cy] = [Math.cos(angle), Math.sin(angle)];
    const beyond = (w: number): number => {
      const p = at(w, mm);
      return outward * (cy * (p.x - x) - cx * (p.y - y));
    };
    let inner = middle;
    let outer = way + outward * (Math.abs(mm * Math.tan(leanRad)) + Math.abs(mm) + 1);
    for (let i = 0; i < 60; i += 1) {
      const w = (inner + outer) / 2;
      if (beyond(w) > 0) outer = w;
      else inner = w;
    }
    return (inner + outer) / 2;
  };
  const [left, right] = [wish.leftMm, -wish.rightMm];
  const edgeFrom = (mm: number): number => cut(startWay, mm, wish.start.leanRad, -1);
  const edgeTo = (mm: number): number => cut(endWay, mm, wish.end.leanRad, 1);
  const [rightFrom, rightTo] = [edgeFrom(right), edgeTo(right)];
  const [leftFrom, leftTo] = [edgeFrom(left), edgeTo(left)];
  const tip = (way: number, { pointMm }: OutlineEnd, outward: 1 | -1): Vec2 | null =>
    pointMm > 0 ? at(way + outward * pointMm, (left + right) / 2) : null;
  const endTip = tip(endWay, wish.end, 1);
  const startTip = tip(startWay, wish.start, -1);
  const across = (a: Vec2, b: Vec2, point: Vec2 | null): readonly OutlineSegment[] =>
    point === null ? [line(a, b)] : [line(a, point), line(point, b)];
  return [
    leaningEdge('right', edgeSegments(at, rightFrom, rightTo, right), wish.rightBevelDeg),
    leaningEdge('end', across(at(rightTo, right), at(leftTo, left), endTip), 0),
    leaningEdge('left', edgeSegments(at, leftTo, leftFrom, left), wish.leftBevelDeg),
    leaningEdge('start', across(at(leftFrom, left), at(rightFrom, right), startTip), 0),
  ];
}

function edgeSegments(
  at: (way: number, mm: number) => Vec2,
  from: number,
  to: number,
  mm: number,
): readonly OutlineSegment[] {
  const count = Math.max(8, Math.min(MOST_DENSE, Math.ceil(Math.abs(to - from) / DENSE_MM)));
  const points = Array.from({ length: count + 1 }, (_, i) => at(from + ((to - from) * i) / count, mm));
  return [throughPoints(points, CURVE_DEVIATION_MM)];
}
