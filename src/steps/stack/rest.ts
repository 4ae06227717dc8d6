import type { SurfaceTree } from '../../geom/bvh.ts';
import { isInRings } from '../../geom/in-rings.ts';
import type { Region } from '../../geom/polygon-boolean.ts';
import { boxOfPoints, ringLength, type Ring } from '../../geom/ring.ts';
import { depthInside } from '../../geom/widest-spot.ts';
import type { Solid } from './frame.ts';
import { meeting, areaOf, covered, ringsOf, type FineGrid } from './regions.ts';
import { sectionAt, type Slab } from './slab.ts';

/** Places looked at along the longer side of a layer. */
const PLACES_ALONG = 96;

/** Greatest depth at the places looked at, and how much more there may be between them, mm. */
export interface Depth {
  readonly depthMm: number;
  readonly depthBoundMm: number;
}

/**
 * How deep a layer must be sanded down: the greatest distance to the surface of the solid from places on the layer that lie outside it, on both
 * faces and half way up its edge. The distance changes by no more than one walks, and any place of foam outside the solid is within
 * `depthBoundMm` of one looked at, or of the solid.
 */
export function sandingDepth(
  solid: Solid,
  tree: SurfaceTree,
  regions: readonly Region[],
  from: number,
  to: number,
): Depth {
  const rings = ringsOf(regions);
  if (rings.length === 0) return { depthMm: 0, depthBoundMm: 0 };
  const box = joined(rings);
  const step = Math.max(box.maxX - box.minX, box.maxY - box.minY) / PLACES_ALONG;
  let depthMm = 0;
  for (const [height, withFace] of [
    [from, true],
    [(from + to) / 2, false],
    [to, true],
  ] as const) {
    const section = [...sectionAt(solid, height, height === from ? 'over' : 'under')];
    const look = (x: number, y: number): void => {
      if (isInRings(section, x, y)) return;
      const found = tree.nearest({ x, y, z: height });
      if (found !== null) depthMm = Math.max(depthMm, found.distance);
    };
    for (const ring of rings) alongRing(ring, step, look);
    if (withFace) overFace(rings, box, step, look);
  }
  return { depthMm, depthBoundMm: Math.max((Math.SQRT1_2 + 0.5) * step, Math.hypot(step / 2, (to - from) / 4)) };
}

/** The depth of fillings is found to this, mm: less than a hand fills by, and ridges of one depth all round cost little. */
const FILL_WITHIN_MM = 0.5;

/** Foam that a filling may lie on: a layer or its neighbour. */
export interface FoamSheet {
  readonly regions: readonly Region[];
  readonly from: number;
  readonly to: number;
}

/**
 * How deep a hollow must be filled: the greatest distance from places of the surface in a layer to the foam of this layer and its neighbours.
 * Triangles are halved as long as they may hold a deeper place; the distance changes by no more than one walks.
 * @param slab  what of the solid lies in the layer.
 */
export function fillingDepth(slab: Slab, from: number, sheets: readonly FoamSheet[]): Depth {
  const foam = sheets
    .map((sheet) => ({ ...sheet, rings: ringsOf(sheet.regions) }))
    .filter(({ rings }) => rings.length > 0);
  if (foam.length === 0) return { depthMm: 0, depthBoundMm: 0 };
  const distanceAt = (x: number, y: number, h: number): number => {
    let nearest = Infinity;
    for (const sheet of foam) {
      const up = Math.max(0, sheet.from - from - h, from + h - sheet.to);
      if (up >= nearest) continue;
      nearest = Math.min(nearest, Math.hypot(Math.max(0, -depthInside(sheet.rings, x, y)), up));
    }
    return nearest;
  };
  let deepest = 0;
  for (let c = 0; c < slab.parts.length; c += 3)
    deepest = Math.max(deepest, distanceAt(slab.parts[c], slab.parts[c + 1], slab.parts[c + 2]));
  const open: number[][] = [];
  for (let t = 0; t < slab.parts.length; t += 9) open.push([...slab.parts.subarray(t, t + 9)]);
  while (open.length > 0) {
    const p = open.pop() ?? [];
    const [mx, my, mh] = [0, 1, 2].map((k) => (p[k] + p[3 + k] + p[6 + k]) / 3);
    const reach = Math.max(...[0, 3, 6].map((k) => Math.hypot(p[k] - mx, p[k + 1] - my, p[k + 2] - mh)));
    const own = distanceAt(mx, my, mh);
    deepest = Math.max(deepest, own);
    if (own + reach <= deepest + FILL_WITHIN_MM) continue;
    open.push(...halves(p));
  }
  return { depthMm: deepest, depthBoundMm: FILL_WITHIN_MM };
}

/** Two triangles in place of one, parted at the middle of its longest side. */
function halves(p: readonly number[]): [number[], number[]] {
  const corner = (k: number): number[] => p.slice(3 * (k % 3), 3 * (k % 3) + 3);
  const lengths = [0, 1, 2].map((k) => {
    const [a, b] = [corner(k), corner(k + 1)];
    return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
  });
  const k = lengths.indexOf(Math.max(...lengths));
  const [a, b, c] = [corner(k), corner(k + 1), corner(k + 2)];
  const m = a.map((x, i) => (x + b[i]) / 2);
  return [
    [...a, ...m, ...c],
    [...m, ...b, ...c],
  ];
}

/** Heights at which sections are laid against the middle face, coarse and fine. */
const SHARES = [8, 16] as const;

/**
 * How much of the solid stands out of the middle face, mm³: the midpoint rule over sections, twice as many the second time, carried on by
 * Richardson's step of order 2; the bound is the difference of the two.
 */
export function volumeOutside(
  solid: Solid,
  regions: readonly Region[],
  from: number,
  to: number,
  grid: FineGrid,
): { readonly volumeMm3: number; readonly boundMm3: number } {
  const [coarse, fine] = SHARES.map((count) => {
    const step = (to - from) / count;
    let sum = 0;
    for (let i = 0; i < count; i += 1) {
      const section = covered(sectionAt(solid, from + (i + 0.5) * step, 'under'), grid);
      sum += step * (areaOf(section) - areaOf(meeting(section, regions, grid)));
    }
    return Math.max(0, sum);
  });
  return { volumeMm3: Math.max(0, fine + (fine - coarse) / 3), boundMm3: Math.abs(fine - coarse) };
}

function joined(rings: readonly Ring[]) {
  const boxes = rings.map(boxOfPoints);
  return {
    minX: Math.min(...boxes.map(({ minX }) => minX)),
    minY: Math.min(...boxes.map(({ minY }) => minY)),
    maxX: Math.max(...boxes.map(({ maxX }) => maxX)),
    maxY: Math.max(...boxes.map(({ maxY }) => maxY)),
  };
}

/** Corners that stand at least a step apart, and places between far ones: none of the ring is farther than half a step from one. */
function alongRing(ring: Ring, step: number, look: (x: number, y: number) => void): void {
  const stride = Math.max(step / 2, ringLength(ring) / 4000);
  let left = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    const length = Math.hypot(ring[j] - ring[i], ring[j + 1] - ring[i + 1]);
    let at = left;
    for (; at < length; at += stride) {
      const f = at / length;
      look(ring[i] + f * (ring[j] - ring[i]), ring[i + 1] + f * (ring[j + 1] - ring[i + 1]));
    }
    left = at - length;
  }
}

function overFace(
  rings: readonly Ring[],
  box: ReturnType<typeof joined>,
  step: number,
  look: (x: number, y: number) => void,
): void {
  for (let y = box.minY + step / 2; y < box.maxY; y += step)
    for (let x = box.minX + step / 2; x < box.maxX; x += step) if (isInRings(rings, x, y)) look(x, y);
}
