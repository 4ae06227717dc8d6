import type { Vec2 } from '../../geom/vec.ts';
import type { ArtPath, ArtSegment } from '../../model/artwork.ts';
import { uprightArc } from './path-data.ts';
import { userLength, type Viewport } from './view-box.ts';

/** Corners of one polygon at most. */
const MOST_CORNERS = 100_000;

/** Why a shape cannot be drawn: what is wrong with it, for a sentence. */
export interface Unfit {
  readonly unfit: string;
}

/**
 * The paths of a rectangle, circle, ellipse, line, polyline or polygon (SVG 1.1, chapter 9), in its own axes; none where it has no size.
 * @param name  of the element, without its prefix.
 */
export function basicShape(
  name: string,
  attributes: ReadonlyMap<string, string>,
  viewport: Viewport,
): readonly ArtPath[] | Unfit {
  const read = (key: string, along: 'x' | 'y' | 'both'): number | null =>
    attributes.has(key) ? userLength(attributes.get(key), along, viewport) : 0;
  switch (name) {
    case 'rect': {
      const box = [read('x', 'x'), read('y', 'y'), read('width', 'x'), read('height', 'y')];
      const [rx, ry] = [radius(attributes, 'rx', viewport), radius(attributes, 'ry', viewport)];
      if (!box.every((one) => one !== null) || rx === undefined || ry === undefined) return NO_SIZE;
      return rectangle(box, rx ?? ry ?? 0, ry ?? rx ?? 0);
    }
    case 'circle': {
      const [x, y, r] = [read('cx', 'x'), read('cy', 'y'), read('r', 'both')];
      return x === null || y === null || r === null ? NO_SIZE : ellipse({ x, y }, r, r);
    }
    case 'ellipse': {
      const [x, y] = [read('cx', 'x'), read('cy', 'y')];
      const [rx, ry] = [radius(attributes, 'rx', viewport), radius(attributes, 'ry', viewport)];
      if (x === null || y === null || rx === undefined || ry === undefined) return NO_SIZE;
      return ellipse({ x, y }, rx ?? ry ?? 0, ry ?? rx ?? 0);
    }
    case 'line': {
      const [x1, y1, x2, y2] = [read('x1', 'x'), read('y1', 'y'), read('x2', 'x'), read('y2', 'y')];
      if (x1 === null || y1 === null || x2 === null || y2 === null) return NO_SIZE;
      return joined(
        [
          { x: x1, y: y1 },
          { x: x2, y: y2 },
        ],
        false,
      );
    }
    default: {
      const corners = cornersOf(attributes.get('points') ?? '');
      return corners === null ? { unfit: 'its points cannot be read' } : joined(corners, name === 'polygon');
    }
  }
}

const NO_SIZE: Unfit = { unfit: 'its sizes cannot be read' };

/** A radius of a corner; null where it is left to the other, undefined where it cannot be read. */
function radius(
  attributes: ReadonlyMap<string, string>,
  key: 'rx' | 'ry',
  viewport: Viewport,
): number | null | undefined {
  const text = attributes.get(key);
  if (text === undefined || text.trim() === 'auto') return null;
  return userLength(text, key === 'rx' ? 'x' : 'y', viewport) ?? undefined;
}

function cornersOf(text: string): Vec2[] | null {
  const rest = text.replace(/[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g, '');
  if (/[^\s,]/.test(rest)) return null;
  const numbers = (text.match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g) ?? []).map(Number);
  if (numbers.length % 2 !== 0 || numbers.length > 2 * MOST_CORNERS || !numbers.every(Number.isFinite)) return null;
  return Array.from({ length: numbers.length / 2 }, (_, i) => ({ x: numbers[2 * i], y: numbers[2 * i + 1] }));
}

function joined(corners: readonly Vec2[], isClosed: boolean): readonly ArtPath[] {
  const segments: ArtSegment[] = [];
  const ends = isClosed ? [...corners, corners[0]] : corners;
  for (let i = 1; i < ends.length; i += 1) {
    const [from, to] = [ends[i - 1], ends[i]];
    if (from.x !== to.x || from.y !== to.y) segments.push({ kind: 'line', from, to });
  }
  return segments.length === 0 ? [] : [{ segments, isClosed }];
}

function ellipse(centre: Vec2, rx: number, ry: number): readonly ArtPath[] {
  if (!(rx > 0 && ry > 0)) return [];
  return [{ segments: [uprightArc(centre, rx, ry, 0, 2 * Math.PI)], isClosed: true }];
}

function rectangle([x, y, width, height]: readonly number[], rx: number, ry: number): readonly ArtPath[] {
  if (!(width > 0 && height > 0)) return [];
  const [a, b] = [Math.min(Math.max(0, rx), width / 2), Math.min(Math.max(0, ry), height / 2)];
  const [right, low] = [x + width, y + height];
  if (a === 0 || b === 0)
    return joined(
      [
        { x, y },
        { x: right, y },
        { x: right, y: low },
        { x, y: low },
      ],
      true,
    );
  const quarter = Math.PI / 2;
  const corners = [
    uprightArc({ x: right - a, y: y + b }, a, b, -quarter, quarter),
    uprightArc({ x: right - a, y: low - b }, a, b, 0, quarter),
    uprightArc({ x: x + a, y: low - b }, a, b, quarter, quarter),
    uprightArc({ x: x + a, y: y + b }, a, b, 2 * quarter, quarter),
  ];
  // Ends of arcs and of the straight sides between them are one place to the last bit.
  const ends: readonly (readonly [Vec2, Vec2])[] = [
    [
      { x: right - a, y },
      { x: right, y: y + b },
    ],
    [
      { x: right, y: low - b },
      { x: right - a, y: low },
    ],
    [
      { x: x + a, y: low },
      { x, y: low - b },
    ],
    [
      { x, y: y + b },
      { x: x + a, y },
    ],
  ];
  const segments: ArtSegment[] = [];
  for (let i = 0; i < 4; i += 1) {
    const [from, to] = [ends[(i + 3) % 4][1], ends[i][0]];
    if (from.x !== to.x || from.y !== to.y) segments.push({ kind: 'line', from, to });
    segments.push({ ...corners[i], from: ends[i][0], to: ends[i][1] });
  }
  return [{ segments, isClosed: true }];
}
