import { coveredRegions, grownRegions, type Region } from '../../geom/polygon-boolean.ts';
import { GRID_PER_MM } from '../../geom/polygon-grid.ts';
import { ringArea, ringLength, type Ring } from '../../geom/ring.ts';

/** Largest extent the polygon grid takes with exact products, mm, with room to spare. */
const GRID_REACH_MM = 6000;

/**
 * Unions, meetings and differences of areas on a grid as fine as their extent allows: lengths are stretched by a power of two, which loses no
 * bit, until they fill the reach of the polygon grid. On a prop of 180 mm its steps are 3 nm.
 */
export interface FineGrid {
  /** Step of the grid, mm. */
  readonly stepMm: number;
  readonly stretch: number;
}

/** @param extentMm longest side of the box round all that is worked on, mm, > 0. */
export function fineGrid(extentMm: number): FineGrid {
  const stretch = 2 ** Math.floor(Math.log2(GRID_REACH_MM / extentMm));
  return { stretch, stepMm: 1 / (GRID_PER_MM * stretch) };
}

/** Rings thinner than so many steps of the grid are its own doing. */
const SLIVER_STEPS = 4;

/**
 * What rings cover where they run round it more often counter-clockwise than clockwise. A corner of the input keeps its bits; new crossings
 * lie on the grid. Slivers of a few steps are left out.
 */
export function covered(rings: readonly Ring[], grid: FineGrid): readonly Region[] {
  const times = (ring: Ring, by: number): Ring => ring.map((x) => x * by);
  const isThick = (ring: Ring): boolean => Math.abs(ringArea(ring)) > SLIVER_STEPS * grid.stepMm * ringLength(ring);
  return coveredRegions(rings.map((ring) => times(ring, grid.stretch)))
    .map(({ outer, holes }) => ({
      outer: times(outer, 1 / grid.stretch),
      holes: holes.map((hole) => times(hole, 1 / grid.stretch)).filter(isThick),
    }))
    .filter(({ outer }) => isThick(outer));
}

/** All rings of areas: outer ones and holes. */
export const ringsOf = (regions: readonly Region[]): readonly Ring[] =>
  regions.flatMap(({ outer, holes }) => [outer, ...holes]);

/** A ring run the other way. */
export function turnedRing(ring: Ring): Ring {
  const turned = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    turned[i] = ring[ring.length - 2 - i];
    turned[i + 1] = ring[ring.length - 1 - i];
  }
  return turned;
}

/** What two clean areas have in common: each counts one, a box round all takes one away. */
export function meeting(a: readonly Region[], b: readonly Region[], grid: FineGrid): readonly Region[] {
  if (a.length === 0 || b.length === 0) return [];
  const rings = [...ringsOf(a), ...ringsOf(b)];
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      minX = Math.min(minX, ring[i]);
      maxX = Math.max(maxX, ring[i]);
      minY = Math.min(minY, ring[i + 1]);
      maxY = Math.max(maxY, ring[i + 1]);
    }
  }
  const room = 1;
  const [l, b0, r, t] = [minX - room, minY - room, maxX + room, maxY + room];
  return covered([...rings, Float64Array.from([l, b0, l, t, r, t, r, b0])], grid);
}

/** What of one clean area is not of another. */
export const without = (a: readonly Region[], b: readonly Region[], grid: FineGrid): readonly Region[] =>
  covered([...ringsOf(a), ...ringsOf(b).map(turnedRing)], grid);

/** What of an area lies at least so far inside it, mm >= 0. */
export const inside = (regions: readonly Region[], distanceMm: number): readonly Region[] =>
  grownRegions(ringsOf(regions), -distanceMm);

/** Area of regions, mm². */
export const areaOf = (regions: readonly Region[]): number =>
  ringsOf(regions).reduce((sum, ring) => sum + ringArea(ring), 0);

/** How far the grid may put the area of regions off, mm²: every corner by no more than a step. */
export const areaBoundOf = (regions: readonly Region[], grid: FineGrid): number =>
  ringsOf(regions).reduce((sum, ring) => sum + ringLength(ring), 0) * grid.stepMm;
