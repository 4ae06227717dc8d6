import type { Vec2 } from '../../geom/vec.ts';
import { headingTowards, type Heading } from '../../mesh/lines/heading.ts';
import type { MeshLine, MeshPoint } from '../../mesh/lines/mesh-line.ts';
import { sharedTriangle, withoutDoubles } from '../../mesh/lines/mesh-point.ts';
import { wrapStroke } from '../../mesh/lines/wrapped-line.ts';
import type { Surface } from '../../mesh/surface.ts';

/** A part of a stroke in the plane: from which of its corners it begins, and how far it goes, mm. */
export interface LaidPart {
  readonly line: MeshLine;
  /** Way along the stroke at which it begins, and its length, mm as drawn. */
  readonly fromMm: number;
  readonly lengthMm: number;
}

/** A closed stroke whose ends come this near closes, mm: rounding of the way round. */
const CLOSED_MM = 1e-6;
/** Of a stroke that leaves the surface a place is looked at every so often, mm. */
const STEP_MM = 1;

/**
 * A stroke in the plane of a flat surface, as a line through its triangles; in parts where it leaves the surface and comes back. What lies between the last
 * place outside and where it comes back is given up, a millimetre at most.
 * @param start   where the plane's origin lies.
 * @param points  corners, mm from there; a closed stroke repeats none.
 */
export function layStroke(flat: Surface, start: MeshPoint, points: readonly Vec2[], closed: boolean): LaidPart[] {
  const right = headingTowards(flat, start, { x: 1, y: 0, z: 0 });
  if (right === null) return [];
  const all = closed ? [...points, points[0]] : points;
  const whole = partFrom(flat, start, right, all, 0);
  if (whole !== null && closed && whole.isWhole) {
    const closing = closedLine(flat, whole.part.line);
    if (closing !== null) return [{ ...whole.part, line: closing }];
  }
  if (whole?.isWhole === true) return whole.part.lengthMm > 0 ? [whole.part] : [];
  // A side may cross the surface although both its ends lie outside.
  return partsOf(flat, start, right, inSteps(all));
}

function partsOf(flat: Surface, start: MeshPoint, right: Heading, all: readonly Vec2[]): LaidPart[] {
  const parts: LaidPart[] = [];
  const ways = [0];
  for (let i = 1; i < all.length; i += 1)
    ways.push(ways[i - 1] + Math.hypot(all[i].x - all[i - 1].x, all[i].y - all[i - 1].y));
  for (let i = 0; i + 1 < all.length;) {
    const found = partFrom(flat, start, right, all.slice(i), ways[i]);
    if (found === null) {
      i += 1;
      continue;
    }
    if (found.part.lengthMm > 0) parts.push(found.part);
    const reached = ways[i] + found.part.lengthMm;
    const before = i;
    while (i + 1 < all.length && ways[i] <= reached + CLOSED_MM) i += 1;
    if (found.isWhole || i === before) break;
  }
  return parts;
}

/** The same line with no step longer than {@link STEP_MM}. */
const inSteps = (all: readonly Vec2[]): Vec2[] =>
  all.flatMap((p, i) => {
    if (i === 0) return [p];
    const q = all[i - 1];
    const count = Math.max(1, Math.ceil(Math.hypot(p.x - q.x, p.y - q.y) / STEP_MM));
    return Array.from({ length: count }, (_, k) => {
      const share = (k + 1) / count;
      return { x: q.x + share * (p.x - q.x), y: q.y + share * (p.y - q.y) };
    });
  });

function partFrom(
  flat: Surface,
  start: MeshPoint,
  right: Heading,
  corners: readonly Vec2[],
  fromMm: number,
): { readonly part: LaidPart; readonly isWhole: boolean } | null {
  const wrapped = wrapStroke(flat, start, right, { points: corners, closed: false }, { x: 0, y: 0 });
  if (wrapped.line.points.length === 0) return null;
  return {
    part: { line: wrapped.line, fromMm, lengthMm: wrapped.lengthMm },
    isWhole: !wrapped.isAtOpenEdge,
  };
}

/** A line that ends where it began, as a closed one; null where it does not. */
function closedLine(flat: Surface, { points }: MeshLine): MeshLine | null {
  if (points.length < 4) return null;
  const before = points[points.length - 2];
  if (sharedTriangle(flat, before, points[0]) < 0) return null;
  const kept = withoutDoubles(points.slice(0, -1), true);
  return kept.length < 3 ? null : { points: kept, closed: true };
}
