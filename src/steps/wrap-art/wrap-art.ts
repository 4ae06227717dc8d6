import type { Finding } from '../../base/finding.ts';
import { formatNumber } from '../../base/format-length.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { vec2, type Vec2 } from '../../geom/vec.ts';
import { headingTowards } from '../../mesh/lines/heading.ts';
import { distanceInSpace } from '../../mesh/lines/mesh-point.ts';
import type { MeshLine } from '../../mesh/lines/mesh-line.ts';
import { roundAt } from '../../mesh/lines/round.ts';
import type { Surface } from '../../mesh/surface.ts';
import type { ArtSeat, ArtStretch, ArtStroke, WrappedArt, WrappedLine } from '../../model/wrapped-art.ts';
import { chartOf, type Chart, type FlatTriangles } from './chart.ts';
import { layStroke } from './lay-strokes.ts';
import { logMap } from './log-map.ts';

/** Stretch is told of stretches of at least this much line, mm. */
const STRETCH_MM = 5;
/** A drawing that is longer or shorter than this looks other than it was drawn, per cent (shop rule). */
const NOTICE_PERCENT = 3;
/** Less line than this is not missed, mm. */
const LOST_MM = 0.1;

/**
 * Lays artwork on a surface about a place: every point of it as far from there and in the same direction as it is drawn (the exponential map). Where the
 * surface rolls out flat it keeps its size and shape; lines from the place outward keep their length everywhere.
 * @returns fails with `wrap-art/place` where the place lies on an open edge or the direction stands square to the surface, and with `wrap-art/off` where
 *   nothing of it lies on the surface.
 */
export function wrapArt(surface: Surface, strokes: readonly ArtStroke[], seat: ArtSeat): Result<WrappedArt> {
  const heading = headingTowards(surface, seat.at, seat.along);
  if (heading === null || roundAt(surface, seat.at, heading.triangle).isOpen) return wrongPlace();
  const drawn = strokes.map((stroke) => seated(stroke, seat));
  const reachMm = drawn.flat().reduce((most, { x, y }) => Math.max(most, Math.hypot(x, y)), 0);
  const { uv, triangles } = logMap(surface, seat.at, heading, reachMm);
  const corners = Uint32Array.from(triangles.flatMap((t) => [0, 1, 2].map((k) => surface.triangles[3 * t + k])));
  const chart = chartOf(surface, { own: triangles, corners, uv }, seat.at, heading);
  return chart === null ? wrongPlace() : laid(surface, chart, strokes, drawn);
}

/**
 * Draws artwork on a flat piece as it is, the place and the direction told on the surface, and tells what that comes to on the surface.
 * @returns as `wrapArt`; fails with `wrap-art/place` also where the place is not on the piece.
 */
export function drawOnPiece(
  surface: Surface,
  piece: FlatTriangles,
  strokes: readonly ArtStroke[],
  seat: ArtSeat,
): Result<WrappedArt> {
  const heading = headingTowards(surface, seat.at, seat.along);
  const chart = heading === null ? null : chartOf(surface, piece, seat.at, heading);
  const drawn = strokes.map((stroke) => seated(stroke, seat));
  return chart === null ? wrongPlace() : laid(surface, chart, strokes, drawn);
}

const wrongPlace = (): Result<WrappedArt> =>
  fail(
    'wrap-art/place',
    'The artwork has no place there: choose one inside the surface, and a direction that runs along it.',
  );

/** Corners of a stroke about the place, mm. */
function seated({ points }: ArtStroke, { origin, turnRad }: ArtSeat): Vec2[] {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  return Array.from({ length: points.length / 2 }, (_, i) => {
    const [x, y] = [points[2 * i] - origin.x, points[2 * i + 1] - origin.y];
    return vec2(c * x - s * y, s * x + c * y);
  });
}

function laid(
  surface: Surface,
  { flat, start, onSurface }: Chart,
  strokes: readonly ArtStroke[],
  drawn: readonly (readonly Vec2[])[],
): Result<WrappedArt> {
  const lines: WrappedLine[] = [];
  let [whole, kept] = [0, 0];
  for (const [stroke, { name, closed }] of strokes.entries()) {
    whole += lengthOf(drawn[stroke], closed);
    for (const { line, fromMm, lengthMm } of layStroke(flat, start, drawn[stroke], closed)) {
      const onIt = onSurface(line);
      kept += lengthMm;
      const told = stretchOf(flat, line, surface, onIt, fromMm);
      lines.push({ name, stroke, line: onIt, drawnMm: lengthMm, lengthMm: told.lengthMm, stretch: told.stretch });
    }
  }
  if (lines.length === 0)
    return fail('wrap-art/off', 'Nothing of the artwork lies on the surface: move it, or make it smaller.');
  const all = lines.flatMap(({ stretch }) => stretch.map(({ percent }) => percent));
  const [most, least] = [Math.max(0, ...all), Math.min(0, ...all)];
  const lostMm = Math.max(0, whole - kept);
  return ok({
    lines,
    mostStretchPercent: most,
    leastStretchPercent: least,
    lostMm: lostMm < LOST_MM ? 0 : lostMm,
    findings: findingsOf(most, least, lostMm),
  });
}

const lengthOf = (points: readonly Vec2[], closed: boolean): number =>
  points.reduce((sum, p, i) => {
    if (i === 0 && !closed) return sum;
    const before = points[(i + points.length - 1) % points.length];
    return sum + Math.hypot(p.x - before.x, p.y - before.y);
  }, 0);

/** Lengths of the same points in the plane and on the surface, stretch by stretch. */
function stretchOf(
  flat: Surface,
  drawn: MeshLine,
  surface: Surface,
  line: MeshLine,
  fromMm: number,
): { readonly lengthMm: number; readonly stretch: readonly ArtStretch[] } {
  const stretch: ArtStretch[] = [];
  const count = line.points.length;
  const last = line.closed ? count : count - 1;
  let [lengthMm, way, from, own] = [0, fromMm, fromMm, 0];
  for (let i = 0; i < last; i += 1) {
    const j = (i + 1) % count;
    way += distanceInSpace(flat, drawn.points[i], drawn.points[j]);
    const true3 = distanceInSpace(surface, line.points[i], line.points[j]);
    lengthMm += true3;
    own += true3;
    if (way - from < STRETCH_MM && i + 1 < last) continue;
    if (way > from) stretch.push({ atMm: (from + way) / 2, percent: 100 * (own / (way - from) - 1) });
    [from, own] = [way, 0];
  }
  return { lengthMm, stretch };
}

function findingsOf(most: number, least: number, lostMm: number): readonly Finding[] {
  const found: Finding[] = [];
  const worst = most > -least ? most : least;
  if (Math.abs(worst) > NOTICE_PERCENT)
    found.push({
      code: 'wrap-art/stretch',
      severity: 'note',
      text: `Lines of the artwork come out up to ${formatNumber(Math.abs(worst), 1)} % ${worst > 0 ? 'longer' : 'shorter'} on the surface than they are drawn: make it smaller, or move it to where the surface is flatter.`,
      value: Math.abs(worst),
      limit: NOTICE_PERCENT,
      unit: '%',
      where: {},
    });
  if (lostMm >= LOST_MM)
    found.push({
      code: 'wrap-art/off',
      severity: 'warning',
      text: `${formatNumber(lostMm, 1)} mm of its lines run over the edge of the surface, or meet behind it, and are left out: move the artwork, or make it smaller.`,
      value: lostMm,
      unit: 'mm',
      where: {},
    });
  return found;
}
