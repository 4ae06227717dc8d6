import type { Result } from '../../base/result.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { Surface } from '../surface.ts';
import { layLine, pointAlong } from './along-line.ts';
import { headingBetween, type Heading } from './heading.ts';
import { lineThrough } from './line-through.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';
import { isSamePoint, sharedTriangle, weightsIn } from './mesh-point.ts';
import { angleInRound, headingInRound, roundAt } from './round.ts';
import { nearShortestLine, readyForLinesSteps, type MeasuredLine } from './shortest-line.ts';
import { straightestLine } from './straightest-line.ts';

/** How often a piece of curve is halved at most: 2^10 parts of a metre are a millimetre each. */
const MOST_HALVINGS = 10;

/**
 * A curve over the surface through picked points, smooth at each of them. Between two points it is a cubic Bezier curve whose straight lines are
 * shortest lines of the surface and whose halving is de Casteljau's (Morera, Velho and Carvalho, "Subdivision curves on triangular meshes", 2008;
 * Mancinelli et al., "b/Surf: interactive Bezier splines on surface meshes", 2022). At a point the curve runs in the direction of the parabola
 * through it and its neighbours, and both its handles lie on one straightest line through the point, so that it has no corner there.
 * @param points       in order; two in a row on one spot count once. Two different ones give the shortest line.
 * @param toleranceMm  how far the line drawn may be from the curve, mm; > 0, else RangeError.
 * @returns `seams/no-path` where two lie on surfaces that do not touch.
 */
export function* smoothCurveSteps(
  surface: Surface,
  points: readonly MeshPoint[],
  closed: boolean,
  toleranceMm: number,
): Stepwise<Result<MeshLine>> {
  if (!(toleranceMm > 0)) throw new RangeError(`tolerance ${toleranceMm} mm`);
  yield* readyForLinesSteps(surface);
  const nodes = points.filter((p, i) => i === 0 || !isSamePoint(points[i - 1], p));
  if (closed && nodes.length > 1 && isSamePoint(nodes[0], nodes[nodes.length - 1])) nodes.pop();
  const isClosed = closed && nodes.length > 2;
  if (nodes.length < 3) return lineThrough(surface, nodes, false);
  const pieces: MeasuredLine[] = [];
  for (let i = 0; i < (isClosed ? nodes.length : nodes.length - 1); i += 1) {
    const piece = nearShortestLine(surface, nodes[i], nodes[(i + 1) % nodes.length]);
    if (!piece.ok) return piece;
    pieces.push(piece.value);
    yield;
  }
  const handles = nodes.map((node, i) => {
    const before = i > 0 ? pieces[i - 1] : isClosed ? pieces[pieces.length - 1] : null;
    const after = i < pieces.length ? pieces[i] : null;
    return before && after ? handlesAt(surface, node, before, after) : null;
  });
  const drawn: MeshPoint[] = [nodes[0]];
  for (let i = 0; i < pieces.length; i += 1) {
    const [p, q] = [nodes[i], nodes[(i + 1) % nodes.length]];
    const [out, back] = [handles[i]?.after ?? null, handles[(i + 1) % nodes.length]?.before ?? null];
    // An end of an open curve has no direction of its own: its handle lies half way to the next one.
    const first = out ?? halfWay(surface, p, back ?? q);
    const last = back ?? halfWay(surface, q, out ?? p);
    yield* bezierSteps(surface, [p, first, last, q], toleranceMm, MOST_HALVINGS, drawn);
  }
  if (isClosed) drawn.pop();
  return lineThrough(surface, drawn, isClosed);
}

function halfWay(surface: Surface, p: MeshPoint, q: MeshPoint): MeshPoint {
  const between = nearShortestLine(surface, p, q);
  return between.ok ? pointAlong(surface, layLine(surface, between.value.line), between.value.lengthMm / 2) : p;
}

/** The handles of a point, a third of the way to its neighbours before and after it, on one straightest line. */
function handlesAt(
  surface: Surface,
  node: MeshPoint,
  before: MeasuredLine,
  after: MeasuredLine,
): { before: MeshPoint; after: MeshPoint } | null {
  const toNext = startOf(surface, after.line.points);
  const toLast = startOf(surface, [...before.line.points].reverse());
  if (toNext === null || toLast === null) return null;
  const round = roundAt(surface, node, toNext.triangle);
  if (!round.parts.some(({ triangle }) => triangle === toLast.triangle)) return null;
  // Directions on a plane: about a corner the round is spread to a full turn, so that opposite ones are straight on.
  const spread = round.isOpen ? 1 : (2 * Math.PI) / round.total;
  const flat = (heading: Heading): Vec2 => {
    const angle = spread * angleInRound(round, heading);
    return { x: Math.cos(angle), y: Math.sin(angle) };
  };
  const [u, w] = [flat(toNext), flat(toLast)];
  const [long, short] = [after.lengthMm, before.lengthMm];
  // The parabola through three points at times as far apart as they are: its velocity at the middle one.
  const way = { x: (u.x * short - w.x * long) / (short + long), y: (u.y * short - w.y * long) / (short + long) };
  const speed = Math.hypot(way.x, way.y);
  // Back the way it came: any direction would do, straight on is as good as another.
  const angle = speed > 0 ? Math.atan2(way.y, way.x) : Math.atan2(u.y, u.x);
  const run = (at: number, length: number): MeshPoint => {
    const { line } = straightestLine(surface, node, headingInRound(round, at / spread), length);
    return line.points[line.points.length - 1];
  };
  return { after: run(angle, (speed * long) / 3), before: run(angle + Math.PI, (speed * short) / 3) };
}

/** How a line sets out from its first point. */
function startOf(surface: Surface, points: readonly MeshPoint[]): Heading | null {
  if (points.length < 2) return null;
  const { topology, triangles } = surface;
  const t = sharedTriangle(surface, points[0], points[1]);
  if (t < 0) return null;
  const [from, to] = [weightsIn(topology, triangles, points[0], t), weightsIn(topology, triangles, points[1], t)];
  return from && to && headingBetween(surface, t, from, to);
}

type Cubic = readonly [MeshPoint, MeshPoint, MeshPoint, MeshPoint];

/** Adds the points of a curve after its first one, so close that straight pieces between them keep to the tolerance. */
function* bezierSteps(
  surface: Surface,
  [a, b, c, d]: Cubic,
  toleranceMm: number,
  halvings: number,
  drawn: MeshPoint[],
): Stepwise<void> {
  const sides = [lineOfTwo(surface, a, b), lineOfTwo(surface, b, c), lineOfTwo(surface, c, d)];
  const along = sides.reduce((sum, side) => sum + side.lengthMm, 0);
  const straight = lineOfTwo(surface, a, d).lengthMm;
  // The curve lies within its control polygon: no farther from the straight line than an ellipse of that length about both ends.
  const rise = Math.sqrt(Math.max(0, along * along - straight * straight)) / 2;
  if (rise <= toleranceMm || halvings === 0) {
    drawn.push(d);
    return;
  }
  const [ab, bc, cd] = sides.map((side) => middleOf(surface, side));
  const [abc, bcd] = [middleOf(surface, lineOfTwo(surface, ab, bc)), middleOf(surface, lineOfTwo(surface, bc, cd))];
  const middle = middleOf(surface, lineOfTwo(surface, abc, bcd));
  yield;
  yield* bezierSteps(surface, [a, ab, abc, middle], toleranceMm, halvings - 1, drawn);
  yield* bezierSteps(surface, [middle, bcd, cd, d], toleranceMm, halvings - 1, drawn);
}

function lineOfTwo(surface: Surface, p: MeshPoint, q: MeshPoint): MeasuredLine {
  const line = nearShortestLine(surface, p, q);
  if (!line.ok) throw new Error('smooth curve: its points hang together, so its handles do');
  return line.value;
}

const middleOf = (surface: Surface, { line, lengthMm }: MeasuredLine): MeshPoint =>
  pointAlong(surface, layLine(surface, line), lengthMm / 2);
