import { fail, ok, type Result } from '../../base/result.ts';
import { distanceToSegment } from '../../geom/distance-to-segment.ts';
import { grownRegions, type Region } from '../../geom/polygon-boolean.ts';
import { boxOfPoints, ringArea, type Ring } from '../../geom/ring.ts';
import { SegmentGrid } from '../../geom/segment-grid.ts';
import { TakenLines, type PlainLine } from '../../geom/taken-lines.ts';
import type { CutterLine } from '../../model/cutter.ts';
import { circleRing, reversedRing, type CutterShape, type RoundHole } from './cutter-shape.ts';

/** Lines this near one another are one cut, mm: a tenth of the narrowest beam. */
export const SAME_CUT_MM = 0.01;

/** Step at which a line is looked at for places the wider cut has closed over, mm. */
const LOOK_MM = 0.25;

/** What goes through the foam for one piece, before neighbours and bridges. */
export interface PieceCuts {
  /** By the middle of the cut, inside before outside, small before large. */
  readonly lines: readonly CutterLine[];
  readonly shape: readonly Region[];
}

/**
 * Lines for the middle of the cut: half its width outside outlines and inside holes.
 * @param name  of the piece, for the sentence that refuses.
 * @returns fails with `cutter/opening-lost` where an opening of the piece is no wider than the cut.
 */
export function pieceCuts(shape: CutterShape, cutWidthMm: number, name: string): Result<PieceCuts> {
  const half = cutWidthMm / 2;
  const { regions } = shape;
  // What is shut in by an outline that touches itself is no opening of the piece: so small, it stays uncut.
  for (const { holes } of shape.traced.length > 1 ? regions : []) {
    const lost = holes.find((hole) => half > 0 && grownRegions([reversedRing(hole)], -half).length === 0);
    if (lost !== undefined) return fail('cutter/opening-lost', openingLost(name, sizeText(lost), cutWidthMm));
  }
  const rounds = shape.rounds.map((round) => roundLine(round, half));
  const small = rounds.indexOf(null);
  if (small !== -1)
    return fail('cutter/opening-lost', openingLost(name, sizeText(shape.rounds[small].ring), cutWidthMm));
  const rings = regions.flatMap(({ outer, holes }) => [outer, ...holes]);
  const grown = half === 0 ? regions : grownRegions(rings, half);
  const holes = grown.flatMap(({ holes: own }) => own);
  return ok({
    lines: [
      ...rounds.flatMap((line) => line ?? []),
      ...bySize(holes).map((points): CutterLine => ({ role: 'inside', points, closed: true })),
      ...slits(shape, half === 0 ? [] : rings, grown, half),
      ...bySize(grown.map(({ outer }) => outer)).map((points): CutterLine => ({
        role: 'outside',
        points,
        closed: true,
      })),
    ],
    shape: grown,
  });
}

const openingLost = (name: string, size: string, cutWidthMm: number): string =>
  `An opening of ${name}, ${size} across its box, leaves nothing to cut away inside a cut ${cutWidthMm} mm wide: cut these sheets with something finer.`;

function sizeText(ring: Ring): string {
  const { minX, minY, maxX, maxY } = boxOfPoints(ring);
  return `${(maxX - minX).toFixed(2)} × ${(maxY - minY).toFixed(2)} mm`;
}

const bySize = (rings: readonly Ring[]): readonly Ring[] =>
  [...rings].sort((a, b) => Math.abs(ringArea(a)) - Math.abs(ringArea(b)));

/** The cut round a hole's inside; null where it is no wider than the cut. */
function roundLine({ centre, radiusMm, ring }: RoundHole, half: number): CutterLine | null {
  if (radiusMm === null) {
    const [inner] = grownRegions([ring], -half) as readonly (Region | undefined)[];
    return inner === undefined ? null : { role: 'hole', points: inner.outer, closed: true };
  }
  const radius = radiusMm - half;
  if (radius <= 0) return null;
  return { role: 'hole', points: circleRing(centre, radius), closed: true, circle: { centre, radiusMm: radius } };
}

/**
 * Darts so narrow that a line on either side would be one: where face and back are joined they close, and where lines are moved apart by the
 * cut's width they meet. They are still cut, by one line.
 */
function slits(
  { regions, traced }: CutterShape,
  rings: readonly Ring[],
  grown: readonly Region[],
  half: number,
): readonly CutterLine[] {
  const lines: PlainLine[] = [];
  // The traced rings are the regions' own unless face and back were joined.
  const isJoined = !regions.some(
    ({ outer }) => outer.length === traced[0].length && ringArea(outer) === Math.abs(ringArea(traced[0])),
  );
  if (isJoined) {
    const twice = new TakenLines(SAME_CUT_MM);
    for (const points of traced) lines.push(...twice.take({ points, closed: true }).covered);
  }
  if (half > 0) {
    const edges = new SegmentGrid(10);
    for (const { outer, holes } of grown) for (const ring of [outer, ...holes]) edges.addLine(ring, true);
    const once = new TakenLines(2 * half + SAME_CUT_MM);
    for (const ring of rings) {
      for (const lost of lostStretches(ring, edges, half + SAME_CUT_MM)) {
        if (lineLength(lost.points) > SLIT_WIDTHS * half) lines.push(...once.take(lost).free);
      }
    }
  }
  return lines.map(({ points }) => ({ role: 'slit', points, closed: false }));
}

/** In a corner that runs inward no cut reaches the very tip; one that is sharper than about 35 degrees is a slit, and longer than so many half cuts. */
const SLIT_WIDTHS = 6;

function lineLength(points: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 2; i + 1 < points.length; i += 2)
    sum += Math.hypot(points[i] - points[i - 2], points[i + 1] - points[i - 1]);
  return sum;
}

/** Stretches of a ring that lie farther than `reach` from every line. */
function lostStretches(ring: Ring, edges: SegmentGrid, reach: number): readonly PlainLine[] {
  const runs: number[][] = [];
  let run: number[] | null = null;
  const count = ring.length / 2;
  for (let i = 0; i < count; i += 1) {
    const j = (i + 1) % count;
    const [ax, ay, bx, by] = [ring[2 * i], ring[2 * i + 1], ring[2 * j], ring[2 * j + 1]];
    const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / LOOK_MM));
    for (let k = 0; k < steps; k += 1) {
      const [x, y] = [ax + ((bx - ax) * k) / steps, ay + ((by - ay) * k) / steps];
      const box = { minX: x - reach, minY: y - reach, maxX: x + reach, maxY: y + reach };
      const isKept = edges.some(box, (cx, cy, dx, dy) => distanceToSegment(x, y, cx, cy, dx, dy) <= reach);
      if (isKept) run = null;
      else if (run === null) runs.push((run = [x, y]));
      else run.push(x, y);
    }
  }
  return runs
    .filter((points) => points.length >= 4)
    .map((points) => ({ points: Float64Array.from(points), closed: false }));
}
