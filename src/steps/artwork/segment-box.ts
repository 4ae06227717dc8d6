import { joinBoxes, type Box2 } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { ArtPath, ArtSegment } from '../../model/artwork.ts';
import { onEllipse, pointOn } from './segments.ts';

/** The upright box round exact lines, mm: closed forms, no straight parts. Inside out where there are none. */
export function boxOfPaths(paths: readonly ArtPath[]): Box2 {
  let box: Box2 = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const { segments } of paths) for (const segment of segments) box = joinBoxes(box, segmentBox(segment));
  return box;
}

function segmentBox(segment: ArtSegment): Box2 {
  const points: Vec2[] = [segment.from, segment.to];
  if (segment.kind === 'cubic') {
    const { from: a, handles, to: d } = segment;
    const [b, c] = handles;
    for (const axis of ['x', 'y'] as const)
      for (const share of turningShares(a[axis], b[axis], c[axis], d[axis])) points.push(pointOn(segment, share));
  }
  if (segment.kind === 'arc') {
    const low = Math.min(segment.start, segment.start + segment.turn);
    const span = Math.abs(segment.turn);
    for (const axis of ['x', 'y'] as const) {
      const first = Math.atan2(segment.v[axis], segment.u[axis]);
      for (const angle of [first, first + Math.PI]) {
        const beyond = (((angle - low) % TURN) + TURN) % TURN;
        if (beyond <= span) points.push(onEllipse(segment, angle));
      }
    }
  }
  return {
    minX: Math.min(...points.map(({ x }) => x)),
    minY: Math.min(...points.map(({ y }) => y)),
    maxX: Math.max(...points.map(({ x }) => x)),
    maxY: Math.max(...points.map(({ y }) => y)),
  };
}

const TURN = 2 * Math.PI;

/** Where a coordinate of a cubic stands still, shares between 0 and 1. */
function turningShares(a: number, b: number, c: number, d: number): number[] {
  const [p, q, r] = [d - 3 * c + 3 * b - a, 2 * (c - 2 * b + a), b - a];
  // p t² + q t + r = 0, by the form that keeps its digits.
  const root = Math.sqrt(Math.max(0, q * q - 4 * p * r));
  const sum = -(q + (q < 0 ? -root : root)) / 2;
  return [sum / p, r / sum].filter((share) => share > 0 && share < 1);
}
