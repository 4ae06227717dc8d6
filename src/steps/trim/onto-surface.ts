import { pointAlong } from '../../mesh/lines/along-line.ts';
import type { MeshPoint } from '../../mesh/lines/mesh-line.ts';
import { isSamePoint } from '../../mesh/lines/mesh-point.ts';
import { angleInRound, headingInRound, roundAt } from '../../mesh/lines/round.ts';
import { straightestLine } from '../../mesh/lines/straightest-line.ts';
import type { Surface } from '../../mesh/surface.ts';
import { developedAt, partAt } from './develop-line.ts';
import { onStrip } from './strip-outline.ts';
import type { FlatCentre } from './flat-centre.ts';
import { headingFrom, type LineTurning } from './line-turning.ts';

/** Ways are kept off the corners of the line by this share of its part, so that each has one direction. */
const OFF_CORNER_SHARE = 1e-3;

/** Where a place of the flat strip comes to lie, and whether the surface ended before it was reached. */
export interface LaidPlace {
  readonly point: MeshPoint;
  readonly isOff: boolean;
}

/**
 * The place on the surface that a place of the flat strip is laid on: from the line at the same way straight over the surface (straightest), as far and at the
 * same angle to the line as in the flat.
 * @param way  of the strip's middle, mm along the line; beyond the ends of an open line the strip runs on straight.
 * @param mm   beside the middle, left > 0.
 * @returns null where the line has no direction.
 */
export function ontoSurface(
  surface: Surface,
  turning: LineTurning,
  centre: FlatCentre,
  stretch: { readonly fromMm: number; readonly toMm: number },
  way: number,
  mm: number,
): LaidPlace | null {
  const { laid, line } = turning;
  const whole = laid.lengthMm;
  const wanted = onStrip(centre, stretch.fromMm, stretch.toMm, way, mm);
  const inside = Math.min(stretch.toMm, Math.max(stretch.fromMm, way));
  // On the part of the developed line, and of the line itself, that holds the way: away from its corners.
  const open = line.closed ? ((inside % whole) + whole) % whole : Math.min(whole, Math.max(0, inside));
  const piece = Math.min(laid.points.length - 2, partAt(laid.way, open));
  const size = laid.way[piece + 1] - laid.way[piece];
  const off = Math.min(Math.max(open - laid.way[piece], OFF_CORNER_SHARE * size), (1 - OFF_CORNER_SHARE) * size);
  const at = inside + (laid.way[piece] + off - open);
  const base = pointAlong(surface, laid, laid.way[piece] + off);
  const forward = headingFrom(surface, base, laid.points[piece + 1]);
  if (forward === null) return null;
  const flat = developedAt(centre.developed, at);
  const [dx, dy] = [wanted.x - flat.x, wanted.y - flat.y];
  const far = Math.hypot(dx, dy);
  if (far === 0) return { point: base, isOff: false };
  const round = roundAt(surface, base, forward.triangle);
  const turned = angleInRound(round, forward) + Math.atan2(dy, dx) - flat.heading;
  if (round.isOpen) {
    const flatTurn = Math.atan2(Math.sin(turned), Math.cos(turned));
    const inRound = flatTurn < -1e-9 ? flatTurn + 2 * Math.PI : flatTurn;
    if (inRound > round.total + 1e-9) return { point: base, isOff: true };
  }
  const run = straightestLine(surface, base, headingInRound(round, turned), far);
  const { points } = run.line;
  return { point: points[points.length - 1], isOff: run.isAtOpenEdge };
}

/** Lines through laid places in order, broken where they lie off the surface. Only the points; how they are joined is up to who draws. */
export function runsOn(places: readonly (LaidPlace | null)[]): MeshPoint[][] {
  const runs: MeshPoint[][] = [[]];
  for (const place of places) {
    const last = runs[runs.length - 1];
    if (place === null || place.isOff) {
      if (last.length > 0) runs.push([]);
      continue;
    }
    if (last.length === 0 || !isSamePoint(last[last.length - 1], place.point)) last.push(place.point);
  }
  return runs.filter((run) => run.length > 1);
}
