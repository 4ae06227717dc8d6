import { runChain, type ChainInput, type ChainOutput } from '../run-chain.ts';
import type { Pair, Report, ReportPiece } from '../report-shape.ts';
import { objOf, type Solid } from './polygon-solids.ts';

/** The whole chain run on a solid in mm, parted along its own seams. */
export const runSolid = (solid: Solid, change: Partial<ChainInput> = {}): Promise<ChainOutput> =>
  runChain({
    fileName: 'solid.obj',
    bytes: objOf(solid),
    seams: solid.seams,
    scale: { by: 'unit', unit: 'mm' },
    thicknessMm: 10,
    modelIs: 'face',
    neutralFraction: 0.5,
    ...change,
  });

/** The pieces of a solid whose surface is the middle of the foam and keeps its length: flat figures are then the solid's own. */
export const layFlat = async (solid: Solid, change: Partial<ChainInput> = {}): Promise<Report> =>
  (await runSolid(solid, { modelIs: 'middle', ...change })).report;

/** Where a corner of the file lies on the flat piece: once, or twice where a slit runs through it, in the order of the outline. */
export function flatPointsOf(piece: ReportPiece, corner: number): Pair[] {
  const { uvMm, sourceVertices } = piece.flat;
  const points = uvMm.filter((_, i) => sourceVertices[i] === corner);
  const place = (point: Pair): number => piece.neutralOutlineMm.findIndex(([x, y]) => x === point[0] && y === point[1]);
  return points.sort((p, q) => place(p) - place(q));
}

export const apart = (p: Pair, q: Pair): number => Math.hypot(q[0] - p[0], q[1] - p[1]);

/** Turn from the arm `at`→`p` to the arm `at`→`q`, radians, 0 to pi. */
export function angleAt(at: Pair, p: Pair, q: Pair): number {
  const [ax, ay] = [p[0] - at[0], p[1] - at[1]];
  const [bx, by] = [q[0] - at[0], q[1] - at[1]];
  return Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by);
}

/** Distance of a point from the line through two others, mm. */
export function fromLine(point: Pair, [a, b]: readonly [Pair, Pair]): number {
  return Math.abs((b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0])) / apart(a, b);
}

/** Where the lines a–b and c–d meet. */
export function meeting(a: Pair, b: Pair, c: Pair, d: Pair): Pair {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const [vx, vy] = [d[0] - c[0], d[1] - c[1]];
  const t = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / (ux * vy - uy * vx);
  return [a[0] + t * ux, a[1] + t * uy];
}
