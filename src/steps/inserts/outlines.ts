import { arc, chainRing, chainRound, line, type OutlineSegment } from '../../geom/outline.ts';
import { offsetRing } from '../../geom/offset-ring.ts';
import { boxOfPoints, ringArea, type Ring } from '../../geom/ring.ts';
import { isSimpleArea } from '../../geom/ring-simple.ts';
import { vec2 } from '../../geom/vec.ts';
import type { InsertForm } from '../../model/insert.ts';

/** Largest outline of a thing that is let in, mm, and most corners of one that is drawn. */
const LARGEST_MM = 5000;
const MOST_CORNERS = 2000;

/** What is wrong with an outline, as the end of a sentence; null where nothing is. */
export function faultOfForm(form: InsertForm): string | null {
  const isSize = (mm: number): boolean => Number.isFinite(mm) && mm > 0 && mm <= LARGEST_MM;
  if (form.shape === 'round') return isSize(form.diameterMm) ? null : 'needs a diameter of more than 0 and at most 5 m';
  if (form.shape === 'rectangle') {
    const { lengthMm, widthMm, cornerMm = 0 } = form;
    if (!isSize(lengthMm) || !isSize(widthMm)) return 'needs a length and a width of more than 0 and at most 5 m';
    return cornerMm >= 0 && cornerMm <= Math.min(lengthMm, widthMm) / 2
      ? null
      : 'has corners rounded by more than half of its width';
  }
  const ring = ringOf(form.points);
  if (form.points.length < 3 || form.points.length > MOST_CORNERS) return `needs 3 to ${MOST_CORNERS} corners`;
  if (!ring.every((mm) => Number.isFinite(mm) && Math.abs(mm) <= LARGEST_MM)) return 'has a corner that is no place';
  return ringArea(ring) > 0 && isSimpleArea([ring]) ? null : 'crosses itself or runs clockwise';
}

const ringOf = (points: readonly (readonly [number, number])[]): Ring => Float64Array.from(points.flat());

/**
 * An outline grown by so much all round, exact, counter-clockwise. Rounded corners keep their middle; square ones stay square.
 * @param form     without fault ({@link faultOfForm}).
 * @param grownMm  >= 0.
 */
export function grownOutline(form: InsertForm, grownMm: number): readonly OutlineSegment[] {
  if (form.shape === 'round') {
    const radius = form.diameterMm / 2 + grownMm;
    return [arc(vec2(0, 0), radius, 0, Math.PI), arc(vec2(0, 0), radius, Math.PI, Math.PI)];
  }
  if (form.shape === 'outline') {
    const ring = ringOf(form.points);
    const by = new Float64Array(form.points.length).fill(grownMm);
    return chainRound(grownMm === 0 ? ring : offsetRing(ring, { atStart: by, atEnd: by }).ring);
  }
  const { lengthMm, widthMm, cornerMm = 0 } = form;
  return rounded(lengthMm / 2 + grownMm, widthMm / 2 + grownMm, cornerMm === 0 ? 0 : cornerMm + grownMm);
}

/** A rectangle about the zero with half lengths a and b and corners of radius r. */
function rounded(a: number, b: number, r: number): readonly OutlineSegment[] {
  const corners = [
    [a, -b, -1, 1, -90],
    [a, b, -1, -1, 0],
    [-a, b, 1, -1, 90],
    [-a, -b, 1, 1, 180],
  ] as const;
  const arcs = corners.map(([x, y, sx, sy, deg]) =>
    arc(vec2(x + sx * r, y + sy * r), r, (deg * Math.PI) / 180, Math.PI / 2),
  );
  return arcs.flatMap((own, i): OutlineSegment[] => {
    const next = arcs[(i + 1) % arcs.length];
    const side = line(own.to, next.from);
    const isSide = Math.hypot(side.to.x - side.from.x, side.to.y - side.from.y) > 0;
    return [...(r > 0 ? [own] : []), ...(isSide ? [side] : [])];
  });
}

/** The rectangle round a form grown by so much, its corners rounded with it up to `cornerMm`; a round form stays round. */
export function coverForm(form: InsertForm, grownMm: number, cornerMm = 0): InsertForm {
  if (form.shape === 'round') return { shape: 'round', diameterMm: form.diameterMm + 2 * grownMm };
  if (form.shape === 'rectangle')
    return {
      shape: 'rectangle',
      lengthMm: form.lengthMm + 2 * grownMm,
      widthMm: form.widthMm + 2 * grownMm,
      ...cornerOf((form.cornerMm ?? 0) === 0 ? cornerMm : (form.cornerMm ?? 0) + grownMm),
    };
  const ring = ringOfForm(form, grownMm);
  return {
    shape: 'outline',
    points: Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i], ring[2 * i + 1]]),
  };
}

const cornerOf = (cornerMm: number): { readonly cornerMm?: number } => (cornerMm > 0 ? { cornerMm } : {});

/** The same as a ring of chords. */
export const ringOfForm = (form: InsertForm, grownMm = 0): Ring => chainRing(grownOutline(form, grownMm));

/** A form's length along x and width along y, mm. */
export function sizeOfForm(form: InsertForm): readonly [number, number] {
  const { minX, minY, maxX, maxY } = boxOfPoints(ringOfForm(form));
  return [maxX - minX, maxY - minY];
}
