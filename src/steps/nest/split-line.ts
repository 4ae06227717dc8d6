import { convexHull } from '../../geom/convex-hull.ts';
import type { Region } from '../../geom/polygon-boolean.ts';
import { boxOfPoints, ringArea, type Ring } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { FillRule } from '../../model/stock.ts';
import { turnOf, turnRing } from './shape.ts';
import { stancesOf } from './stances.ts';

/** A straight cut across a flat piece, mm. */
export interface SplitLine {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly lengthMm: number;
  /** Whether both parts fit a sheet; else one does. */
  readonly doBothFit: boolean;
}

/** A sheet a part must fit on, inside its borders, mm: along its length and across. */
export interface SplitRoom {
  readonly alongMm: number;
  readonly acrossMm: number;
}

/** Directions in which cuts are tried, over half a turn, and places in each. */
const DIRECTIONS = 36;
const PLACES = 40;
/** No part is smaller than this share of the piece. */
const LEAST_SHARE = 0.15;
/** Room for what is added along the new seam, mm: a cut across an even surface hardly leans. */
const SEAM_ROOM_MM = 3;

/**
 * The shortest straight cut after which both parts fit a sheet; where there is none, the one that leaves the largest part that fits.
 * @param area      what is cut, an outer ring and its holes.
 * @param grainRad  how the sheet's length is to lie on it.
 * @returns null where no straight line across it, past its holes, leaves a part that fits.
 */
export function splitLine(
  area: Region,
  grainRad: number | undefined,
  fill: Pick<FillRule, 'turns' | 'turnOver'>,
  rooms: readonly SplitRoom[],
): SplitLine | null {
  const whole = ringArea(area.outer);
  const fits = (part: Ring): boolean => {
    const hull = convexHull(part);
    const fitsRoom = (width: number, height: number): boolean =>
      rooms.some(({ alongMm, acrossMm }) => width + SEAM_ROOM_MM <= alongMm && height + SEAM_ROOM_MM <= acrossMm);
    return stancesOf(hull, grainRad, fill, hull.length, fitsRoom).some((stance) => {
      const { minX, minY, maxX, maxY } = boxOfPoints(turnRing(hull, turnOf(stance)));
      return fitsRoom(maxX - minX, maxY - minY);
    });
  };
  let best: (SplitLine & { readonly fittingMm2: number }) | null = null;
  for (const line of linesAcross(area)) {
    const parts = partsOf(area.outer, line);
    const areas = parts.map((part) => Math.abs(ringArea(part)));
    if (Math.min(...areas) < LEAST_SHARE * whole) continue;
    if (best?.doBothFit === true && line.lengthMm >= best.lengthMm) continue;
    const fitting = areas.filter((_, i) => fits(parts[i]));
    if (fitting.length === 0 || (best?.doBothFit === true && fitting.length < 2)) continue;
    const found = { ...line, doBothFit: fitting.length === 2, fittingMm2: Math.max(...fitting) };
    if (best === null || (found.doBothFit && !best.doBothFit) || found.doBothFit || found.fittingMm2 > best.fittingMm2)
      best = found;
  }
  if (best === null) return null;
  const { from, to, lengthMm, doBothFit } = best;
  return { from, to, lengthMm, doBothFit };
}

type Line = Pick<SplitLine, 'from' | 'to' | 'lengthMm'>;

/** Straight lines that part the area in two: they cross its outer ring twice and no hole. */
function linesAcross({ outer, holes }: Region): readonly Line[] {
  const lines: Line[] = [];
  for (let d = 0; d < DIRECTIONS; d += 1) {
    const angle = (Math.PI * d) / DIRECTIONS;
    const [nx, ny] = [Math.cos(angle), Math.sin(angle)];
    const offsets = Array.from({ length: outer.length / 2 }, (_, i) => nx * outer[2 * i] + ny * outer[2 * i + 1]);
    const [low, high] = [Math.min(...offsets), Math.max(...offsets)];
    for (let p = 1; p < PLACES; p += 1) {
      const at = low + ((high - low) * p) / PLACES;
      const ends = crossings(outer, nx, ny, at);
      if (ends.length !== 2 || holes.some((hole) => crossings(hole, nx, ny, at).length > 0)) continue;
      const [from, to] = ends;
      lines.push({ from, to, lengthMm: Math.hypot(to.x - from.x, to.y - from.y) });
    }
  }
  return lines;
}

/** Where a ring crosses the line `nx x + ny y = at`. */
function crossings(ring: Ring, nx: number, ny: number, at: number): readonly Vec2[] {
  const found: Vec2[] = [];
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [a, b] = [nx * ring[j] + ny * ring[j + 1] - at, nx * ring[i] + ny * ring[i + 1] - at];
    if (a >= 0 === b >= 0) continue;
    const t = a / (a - b);
    found.push({ x: ring[j] + t * (ring[i] - ring[j]), y: ring[j + 1] + t * (ring[i + 1] - ring[j + 1]) });
  }
  return found;
}

/** The outer ring left and right of a line that crosses it twice. */
function partsOf(ring: Ring, { from, to }: Line): readonly Ring[] {
  const side = (x: number, y: number): number => (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
  const parts: number[][] = [[], []];
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [a, b] = [side(ring[j], ring[j + 1]), side(ring[i], ring[i + 1])];
    if (a >= 0 !== b >= 0) {
      const t = a / (a - b);
      const [x, y] = [ring[j] + t * (ring[i] - ring[j]), ring[j + 1] + t * (ring[i + 1] - ring[j + 1])];
      for (const part of parts) part.push(x, y);
    }
    parts[b >= 0 ? 0 : 1].push(ring[i], ring[i + 1]);
  }
  return parts.map((part) => Float64Array.from(part));
}
