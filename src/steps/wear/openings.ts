import { shareOfWork, type Work } from '../../base/work.ts';
import { convexHull } from '../../geom/convex-hull.ts';
import { ringArea, ringLength } from '../../geom/ring.ts';
import { cross3, dot3, length3, pointAt3, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { Opening, OpeningUse, PassChoice } from '../../model/girth.ts';
import { openRims } from '../../mesh/open-rims.ts';
import type { Plane, Surface } from '../../mesh/surface.ts';
import { frameOf, inFrame, measureTape } from './tape.ts';

/** Longest way between two sections on the way from an opening to the place worn, mm, and most sections. */
const STATION_MM = 3;
const MOST_STATIONS = 120;

/** How near the narrowest place is searched along the way, as a share of the way between two sections. */
const NARROWEST_SHARE = 1e-3;

/**
 * The openings of a part: loops of its open edges, from the largest girth down.
 * @param worn  plane at the place where the part is worn, or null.
 * @param pass  what must pass; the way behind an opening is measured where that passes the opening itself.
 * @param up    as the part stands, length 1.
 * @param useAt what the opening with this vertex on its rim is for.
 * @throws Cancelled when the work was called off.
 */
export async function findOpenings(
  surface: Surface,
  worn: Plane | null,
  pass: PassChoice | null,
  up: Vec3,
  useAt: (vertex: number) => OpeningUse | undefined,
  work: Work,
): Promise<readonly Opening[]> {
  const rims = rimsOf(surface);
  const openings: Opening[] = [];
  for (const [i, rim] of rims.entries()) {
    const share = shareOfWork(work, i / rims.length, (i + 1) / rims.length);
    const opening = await openingOf(surface, rim, worn, pass, up, share);
    const use = [...rim].map(useAt).find((one) => one !== undefined) ?? null;
    openings.push({ ...opening, use });
  }
  return openings.sort((a, b) => b.girthMm - a.girthMm || a.vertices[0] - b.vertices[0]);
}

/** Vertices of every loop of open half-edges, each from its lowest vertex on. */
export const rimsOf = ({ triangles, topology }: Surface): readonly Uint32Array[] =>
  openRims(triangles, topology).map((rim) => {
    const start = rim.indexOf(Math.min(...rim));
    return Uint32Array.from([...rim.slice(start), ...rim.slice(0, start)]);
  });

async function openingOf(
  surface: Surface,
  vertices: Uint32Array,
  worn: Plane | null,
  pass: PassChoice | null,
  up: Vec3,
  work: Work,
): Promise<Omit<Opening, 'use'>> {
  const rim = new Float64Array(3 * vertices.length);
  vertices.forEach((v, i) => rim.set(surface.positions.subarray(3 * v, 3 * v + 3), 3 * i));
  const plane = meanPlane(rim);
  const frame = frameOf(plane);
  const flat = inFrame(rim, frame);
  const hull = convexHull(flat);
  const girthMm = ringLength(hull);
  const breadthMm = leastWidth(hull);
  const isAsked = pass?.girthMm !== undefined || pass?.breadthMm !== undefined;
  const fits = (girth: number, breadth: number): boolean =>
    girth >= (pass?.girthMm ?? 0) && breadth >= (pass?.breadthMm ?? 0);
  const passesRim = fits(girthMm, breadthMm);
  const own = new Set(vertices);
  const slits =
    worn === null ? [] : (measureTape(surface, worn)?.bridges.filter((one) => own.has(one.rimVertex)) ?? []);
  const narrowest = worn === null || !isAsked || !passesRim ? null : await narrowestBetween(surface, plane, worn, work);
  return {
    vertices,
    centre: plane.point,
    normal: plane.normal,
    girthMm,
    breadthMm,
    areaMm2: Math.abs(ringArea(flat)),
    ...extents(flat, dot3(up, frame.u), dot3(up, frame.v)),
    narrowest,
    slitMm: slits.reduce((most, { mm }) => Math.max(most, mm), 0),
    passes: isAsked ? passesRim && (narrowest === null || fits(narrowest.girthMm, narrowest.breadthMm)) : null,
  };
}

/** An opening that looks this far up or down (sine) has no upright: its second side stands for it. */
const LEVEL_SINE = 1e-6;

/** How far a flat loop goes along a direction in its plane and square to it. */
function extents(flat: Float64Array, x: number, y: number): { acrossMm: number; uprightMm: number } {
  const length = Math.hypot(x, y);
  const [ux, uy] = length > LEVEL_SINE ? [x / length, y / length] : [0, 1];
  const span = (dx: number, dy: number): number => {
    let [least, most] = [Infinity, -Infinity];
    for (let i = 0; i < flat.length; i += 2) {
      const at = dx * flat[i] + dy * flat[i + 1];
      [least, most] = [Math.min(least, at), Math.max(most, at)];
    }
    return most - least;
  };
  return { acrossMm: span(uy, -ux), uprightMm: span(ux, uy) };
}

/** Middle of a loop by its length, and the direction in which it holds the greatest area (its vector area). */
function meanPlane(rim: Float64Array): Plane {
  const count = rim.length / 3;
  let [weight, centre, area]: [number, Vec3, Vec3] = [0, { x: 0, y: 0, z: 0 }, { x: 0, y: 0, z: 0 }];
  const first = pointAt3(rim, 0);
  for (let i = 0; i < count; i += 1) {
    const [p, q] = [pointAt3(rim, i), pointAt3(rim, (i + 1) % count)];
    const length = length3(sub3(q, p));
    weight += length;
    const turn = cross3(sub3(p, first), sub3(q, first));
    centre = {
      x: centre.x + (length * (p.x + q.x)) / 2,
      y: centre.y + (length * (p.y + q.y)) / 2,
      z: centre.z + (length * (p.z + q.z)) / 2,
    };
    area = { x: area.x + turn.x, y: area.y + turn.y, z: area.z + turn.z };
  }
  const normal = unit3(area);
  return {
    point: weight > 0 ? scale3(centre, 1 / weight) : first,
    normal: length3(normal) > 0 ? normal : { x: 0, y: 0, z: 1 },
  };
}

/** Least distance between two parallel lines that hold a convex ring between them; one of them lies on a side. */
export function leastWidth(hull: Float64Array): number {
  let least = Infinity;
  for (let i = 0; i < hull.length; i += 2) {
    const j = (i + 2) % hull.length;
    const [dx, dy] = [hull[j] - hull[i], hull[j + 1] - hull[i + 1]];
    const length = Math.hypot(dx, dy);
    if (length === 0) continue;
    let far = 0;
    for (let k = 0; k < hull.length; k += 2)
      far = Math.max(far, (dx * (hull[k + 1] - hull[i + 1]) - dy * (hull[k] - hull[i])) / length);
    least = Math.min(least, far);
  }
  return Number.isFinite(least) ? least : 0;
}

/**
 * The section of least girth on the way from an opening to the place worn. Planes turn evenly from one to the other while their point goes
 * straight; between the two sections beside the least one it is searched finer, by thirds.
 */
async function narrowestBetween(surface: Surface, from: Plane, to: Plane, work: Work): Promise<Opening['narrowest']> {
  const toNormal = unit3(to.normal);
  const isAlong = from.normal.x * toNormal.x + from.normal.y * toNormal.y + from.normal.z * toNormal.z >= 0;
  const end = isAlong ? toNormal : scale3(toNormal, -1);
  const way = sub3(to.point, from.point);
  const stations = Math.min(MOST_STATIONS, Math.max(2, Math.ceil(length3(way) / STATION_MM)));
  const sectionAt = (share: number) => {
    const mix = (key: 'x' | 'y' | 'z'): number => from.normal[key] + share * (end[key] - from.normal[key]);
    const point = {
      x: from.point.x + share * way.x,
      y: from.point.y + share * way.y,
      z: from.point.z + share * way.z,
    };
    const tape = measureTape(surface, { point, normal: { x: mix('x'), y: mix('y'), z: mix('z') } });
    return tape === null ? null : { girthMm: tape.girthMm, breadthMm: tape.breadthMm, point };
  };
  const girth = (share: number): number => sectionAt(share)?.girthMm ?? Infinity;
  let best = 1;
  let least = girth(1);
  for (let i = 1; i < stations; i += 1) {
    await work.pause(i / stations);
    const here = girth(i / stations);
    if (here < least) [least, best] = [here, i / stations];
  }
  let [low, high] = [Math.max(1 / stations / 2, best - 1 / stations), Math.min(1, best + 1 / stations)];
  while (high - low > NARROWEST_SHARE / stations) {
    await work.pause(1);
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (girth(a) <= girth(b)) high = b;
    else low = a;
  }
  const fine = (low + high) / 2;
  return sectionAt(girth(fine) < least ? fine : best);
}
