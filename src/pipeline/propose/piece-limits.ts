import { convexHull } from '../../geom/convex-hull.ts';
import { ringOfPoints } from '../../geom/ring.ts';
import type { Patch } from '../../model/patch.ts';
import type { RestShapes } from '../../steps/flatten/rest-shapes.ts';

/** Share of a piece that may go beyond a limit of stretch or squash. */
const SHARE_BEYOND = 0.01;

/**
 * The 99th percentile by area: the smallest figure that 99 % of the area does not exceed; or the larger of this one and that by number of
 * triangles. Triangles without area are left out of both.
 * @param isByNumberToo  false where only area counts: fine rounding along an edge has most of the triangles and no foam to speak of.
 */
export function percentile99(
  { area, empty, totalArea }: RestShapes,
  figures: Float64Array,
  isByNumberToo = true,
): number {
  const order: number[] = [];
  for (let t = 0; t < figures.length; t += 1) if (empty[t] === 0) order.push(t);
  if (order.length === 0) return 0;
  order.sort((s, t) => figures[t] - figures[s] || s - t);
  const byNumber = isByNumberToo ? figures[order[Math.floor(SHARE_BEYOND * order.length)]] : -Infinity;
  let beyond = 0;
  for (const t of order) {
    beyond += area[t];
    if (beyond > SHARE_BEYOND * totalArea) return Math.max(byNumber, figures[t]);
  }
  return Math.max(byNumber, figures[order[order.length - 1]]);
}

/**
 * Size of the sheet a piece needs over the sheet there is, the better way round; 1 just fits. Over all directions in which a side of the
 * convex hull lies along the sheet, one of which fits if any turn of the piece does not waste more than the hull's own bend there.
 */
export function sheetShare(uv: Float64Array, sheet: { readonly widthMm: number; readonly heightMm: number }): number {
  const hull = convexHull(uv);
  let best = Infinity;
  for (let i = 0; i < hull.length; i += 2) {
    const j = (i + 2) % hull.length;
    const [dx, dy] = [hull[j] - hull[i], hull[j + 1] - hull[i + 1]];
    const size = Math.hypot(dx, dy);
    if (!(size > 0)) continue;
    const [wide, high] = [extent(hull, dx / size, dy / size), extent(hull, -dy / size, dx / size)];
    best = Math.min(
      best,
      Math.max(wide / sheet.widthMm, high / sheet.heightMm),
      Math.max(high / sheet.widthMm, wide / sheet.heightMm),
    );
  }
  return best;
}

function extent(points: ArrayLike<number>, x: number, y: number): number {
  let [least, most] = [Infinity, -Infinity];
  for (let i = 0; i < points.length; i += 2) {
    const at = x * points[i] + y * points[i + 1];
    least = Math.min(least, at);
    most = Math.max(most, at);
  }
  return most - least;
}

/** Two places of an outline are a neck or a sliver, not a corner, when the outline between them is this many times as long as the gap. */
const NECK_TIMES = 4;

/** Where a piece is narrowest. */
export interface NarrowPlace {
  /** mm; Infinity where no place is narrower than was looked for. */
  readonly widthMm: number;
  /** Vertices of the patch on either side; empty where there is none. */
  readonly between: readonly number[];
}

/**
 * The narrowest place of a piece: the least distance across its inside between two border vertices that lie at least
 * {@link NECK_TIMES} times `width` apart along the border. Tapers of less than about 29 degrees count, blunter corners do not.
 * @param width  what is looked for, mm: nothing wider is found.
 */
export function narrowestPlace(patch: Patch, uv: Float64Array, width: number): NarrowPlace {
  const outline = patch.loops.map((loop) => ({ loop, along: lengthsAlong(uv, loop) }));
  const rings = patch.loops.map((loop) => ringOfPoints(uv, loop));
  let least = Infinity;
  let between: readonly number[] = [];
  for (const [a, first] of outline.entries()) {
    for (const [b, second] of outline.entries()) {
      if (b < a) continue;
      for (const [i, v] of first.loop.entries()) {
        for (let j = a === b ? i + 1 : 0; j < second.loop.length; j += 1) {
          const w = second.loop[j];
          const gap = Math.hypot(uv[2 * w] - uv[2 * v], uv[2 * w + 1] - uv[2 * v + 1]);
          if (gap >= Math.min(width, least)) continue;
          if (a === b) {
            const between = first.along[j] - first.along[i];
            if (Math.min(between, first.along[first.loop.length] - between) < NECK_TIMES * width) continue;
          }
          if (isInside(rings, (uv[2 * v] + uv[2 * w]) / 2, (uv[2 * v + 1] + uv[2 * w + 1]) / 2)) {
            least = gap;
            between = [v, w];
          }
        }
      }
    }
  }
  return { widthMm: least, between };
}

/** Length of the border up to each vertex of a loop, and of all of it. */
function lengthsAlong(uv: Float64Array, loop: Uint32Array): Float64Array {
  const along = new Float64Array(loop.length + 1);
  for (let i = 0; i < loop.length; i += 1) {
    const [v, w] = [2 * loop[i], 2 * loop[(i + 1) % loop.length]];
    along[i + 1] = along[i] + Math.hypot(uv[w] - uv[v], uv[w + 1] - uv[v + 1]);
  }
  return along;
}

function isInside(rings: readonly Float64Array[], x: number, y: number): boolean {
  let odd = false;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      if (ring[i + 1] > y === ring[j + 1] > y) continue;
      if (x < ring[i] + ((ring[j] - ring[i]) * (y - ring[i + 1])) / (ring[j + 1] - ring[i + 1])) odd = !odd;
    }
  }
  return odd;
}
