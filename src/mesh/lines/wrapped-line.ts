import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import type { Stroke } from '../../geom/svg-path.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { Surface } from '../surface.ts';
import type { Heading } from './heading.ts';
import { withoutDoubles } from './mesh-point.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';
import { angleInRound, headingInRound, roundAt } from './round.ts';
import { straightestLine } from './straightest-line.ts';

/** Straight pieces laid in one stretch, a few milliseconds. */
const STRETCH_PIECES = 64;

/** A stroke laid round the surface. */
export interface WrappedStroke {
  readonly line: MeshLine;
  /** mm; less than the stroke's where the line came to an open edge. */
  readonly lengthMm: number;
  readonly isAtOpenEdge: boolean;
}

/**
 * Lays a stroke round the surface as one lays a string: every straight piece is a straightest line of the same length, and it turns from piece to
 * piece as the stroke does. Where the surface is flat or rolls without stretching, the drawing keeps its size and shape; over a dome a closed one does
 * not close, and is given open.
 * @param start    where the stroke's first corner comes to lie, or `from`.
 * @param heading  where the drawing's x points from there.
 * @param from     a place of the drawing from which one goes straight to the stroke's first corner without drawing: strokes laid from one
 *                 place stand to one another as they are drawn. A stroke that begins beyond an open edge has no points.
 */
export function* wrapStrokeSteps(
  surface: Surface,
  start: MeshPoint,
  heading: Heading,
  stroke: Stroke,
  from: Vec2 = stroke.points[0],
): Stepwise<WrappedStroke> {
  const drawn = stroke.closed ? [...stroke.points, stroke.points[0]] : stroke.points;
  const all = [from, ...drawn];
  const corners = all.filter((p, i) => i === 0 || p.x !== all[i - 1].x || p.y !== all[i - 1].y);
  const isLed = from.x !== drawn[0].x || from.y !== drawn[0].y;
  let points: MeshPoint[] = [start];
  let [lengthMm, isAtOpenEdge] = [0, false];
  let here = start;
  if (corners.length < 2) return { line: { points, closed: false }, lengthMm, isAtOpenEdge };
  let way = turnedAt(surface, start, heading, false, directionOf(0));
  for (let i = 0; i + 1 < corners.length; i += 1) {
    const size = Math.hypot(corners[i + 1].x - corners[i].x, corners[i + 1].y - corners[i].y);
    const piece = straightestLine(surface, here, way, size);
    here = piece.line.points[piece.line.points.length - 1];
    isAtOpenEdge = piece.isAtOpenEdge;
    if (isLed && i === 0) points = isAtOpenEdge ? [] : [here];
    else {
      points.push(...piece.line.points.slice(1));
      lengthMm += piece.lengthMm;
    }
    if (isAtOpenEdge || i + 2 >= corners.length) break;
    if (i % STRETCH_PIECES === STRETCH_PIECES - 1) yield;
    way = turnedAt(surface, here, piece.arrives, true, directionOf(i + 1) - directionOf(i));
  }
  return { line: { points: withoutDoubles(points, false), closed: false }, lengthMm, isAtOpenEdge };

  function directionOf(i: number): number {
    return Math.atan2(corners[i + 1].y - corners[i].y, corners[i + 1].x - corners[i].x);
  }
}

/** The same at once. */
export const wrapStroke = (...stroke: Parameters<typeof wrapStrokeSteps>): WrappedStroke =>
  runAtOnce(wrapStrokeSteps(...stroke));

/**
 * A heading turned at a point, radians counter-clockwise; about a corner the turn is a share of the full round. One that arrives lies in the triangle
 * behind the point, so it is looked at backward.
 */
function turnedAt(surface: Surface, at: MeshPoint, heading: Heading, arrives: boolean, turn: number): Heading {
  const round = roundAt(surface, at, heading.triangle);
  const spread = round.isOpen ? 1 : round.total / (2 * Math.PI);
  const back: Heading = { triangle: heading.triangle, x: -heading.x, y: -heading.y };
  const from = arrives ? angleInRound(round, back) + spread * Math.PI : angleInRound(round, heading);
  return headingInRound(round, from + spread * turn);
}
