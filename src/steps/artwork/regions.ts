import { DisjointSets } from '../../base/disjoint-sets.ts';
import { isInRings } from '../../geom/in-rings.ts';
import { filledRegions } from '../../geom/polygon-boolean.ts';
import { boxOfPoints, ringArea, ringLength, type Box2, type Ring } from '../../geom/ring.ts';
import type { ArtFillRule, ArtOutline, ArtPath, ArtRegion } from '../../model/artwork.ts';
import { pathArea, pathLength, reversedPath } from './segments.ts';

/** A closed line of a drawing with its straight parts; `path` null where only these are known, `shape` null where it is of several shapes. */
export interface ClosedLine {
  readonly shape: string | null;
  readonly path: ArtPath | null;
  readonly ring: Ring;
}

/**
 * Nests closed lines into areas with holes by a fill rule. Lines that do not cross keep their exact parts: each is placed among those round it, and
 * bounds an area where the rule tells its two sides apart. Lines that cross are first made clean outlines of straight parts.
 * @param crossings  pairs of lines that cross; one that crosses itself twice.
 * @returns largest first.
 */
export function nestRegions(
  lines: readonly ClosedLine[],
  rule: ArtFillRule,
  crossings: readonly (readonly [number, number])[],
): readonly ArtRegion[] {
  const clean = crossings.length === 0 ? lines : uncrossed(lines, rule, crossings);
  const regions = exactRegions(
    clean.filter(({ ring }) => ring.length >= 6),
    rule,
  );
  return [...regions].sort((a, b) => b.areaMm2 - a.areaMm2);
}

/** Lines that cross made one by one rule. Of windings more than the rule's answer would be lost, so that there all lines go together. */
function uncrossed(
  lines: readonly ClosedLine[],
  rule: ArtFillRule,
  crossings: readonly (readonly [number, number])[],
): readonly ClosedLine[] {
  const sets = new DisjointSets(lines.length);
  for (const [a, b] of crossings) sets.join(a, b);
  const crossed = new Set(crossings.map(([a]) => sets.find(a)));
  const clusters = new Map<number, ClosedLine[]>();
  for (const [i, line] of lines.entries()) {
    const key = rule === 'nonzero' ? 0 : sets.find(i);
    const cluster = clusters.get(key);
    if (cluster === undefined) clusters.set(key, [line]);
    else cluster.push(line);
  }
  return [...clusters].flatMap(([key, members]): readonly ClosedLine[] => {
    if (rule === 'evenodd' && !crossed.has(key)) return members;
    const names = new Set(members.map(({ shape }) => shape));
    const shape = names.size === 1 ? members[0].shape : null;
    const rings = members.map(({ ring }) => ring);
    return filledRegions(rings, rule)
      .flatMap(({ outer, holes }) => [outer, ...holes])
      .map((ring) => ({ shape, path: null, ring }));
  });
}

/** An outline of which only straight parts are known. */
export const flatOutline = (ring: Ring): ArtOutline => ({
  shape: null,
  path: null,
  ring,
  lengthMm: ringLength(ring),
  areaMm2: Math.abs(ringArea(ring)),
});

export function regionOf(outline: ArtOutline, holes: readonly ArtOutline[]): ArtRegion {
  return { outline, holes, areaMm2: holes.reduce((sum, { areaMm2 }) => sum - areaMm2, outline.areaMm2) };
}

function exactRegions(lines: readonly ClosedLine[], rule: ArtFillRule): ArtRegion[] {
  const items = lines
    .map((line) => ({ ...line, area: ringArea(line.ring), box: boxOfPoints(line.ring) }))
    .filter(({ area }) => area !== 0)
    .sort((a, b) => Math.abs(b.area) - Math.abs(a.area));
  // Nearly all pairs lie apart: their boxes are compared from one packed list.
  const boxes = Float64Array.from(items.flatMap(({ box }) => [box.minX, box.minY, box.maxX, box.maxY]));
  /** Times the place inside and outside of each line is run round. */
  const [inside, outside]: [number[], number[]] = [[], []];
  const regions: { outline: ArtOutline; holes: ArtOutline[] }[] = [];
  /** The area each line bounds, or that it lies in. */
  const regionAt: number[] = [];
  const isIn = (count: number): boolean => (rule === 'nonzero' ? count !== 0 : count % 2 !== 0);
  for (const [i, item] of items.entries()) {
    let parent = -1;
    const { minX, minY, maxX, maxY } = item.box;
    for (let j = i - 1; j >= 0 && parent < 0; j -= 1) {
      const at = 4 * j;
      if (boxes[at] > minX || boxes[at + 2] < maxX || boxes[at + 1] > minY || boxes[at + 3] < maxY) continue;
      if (isRingInside(item.ring, items[j].ring)) parent = j;
    }
    outside.push(parent < 0 ? 0 : inside[parent]);
    inside.push(outside[i] + (item.area > 0 ? 1 : -1));
    const within = parent < 0 ? -1 : regionAt[parent];
    if (isIn(inside[i]) === isIn(outside[i])) {
      regionAt.push(within);
    } else if (isIn(inside[i])) {
      regions.push({ outline: exactOutline(item, 1), holes: [] });
      regionAt.push(regions.length - 1);
    } else {
      regions[within].holes.push(exactOutline(item, -1));
      regionAt.push(within);
    }
  }
  return regions.map(({ outline, holes }) => regionOf(outline, holes));
}

/** @param sign  1 to run counter-clockwise, -1 clockwise. */
function exactOutline({ shape, path, ring }: ClosedLine, sign: number): ArtOutline {
  const isRight = Math.sign(ringArea(ring)) === sign;
  if (path === null) return { ...flatOutline(isRight ? ring : reversedRing(ring)), shape };
  return {
    shape,
    path: isRight ? path : reversedPath(path),
    ring: isRight ? ring : reversedRing(ring),
    lengthMm: pathLength(path),
    areaMm2: Math.abs(pathArea(path)),
  };
}

function reversedRing(ring: Ring): Ring {
  const turned = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    turned[i] = ring[ring.length - 2 - i];
    turned[i + 1] = ring[ring.length - 1 - i];
  }
  return turned;
}

/** Whether one box lies within another, or on its sides. */
export const doesHold = (outer: Box2, inner: Box2): boolean =>
  outer.minX <= inner.minX && outer.minY <= inner.minY && outer.maxX >= inner.maxX && outer.maxY >= inner.maxY;

/** Whether a ring that does not cross another lies in it: most of a few of its edges' middles do, since some may lie on it. */
export function isRingInside(ring: Ring, outer: Ring): boolean {
  const count = ring.length / 2;
  const tries = Math.min(5, count);
  let inside = 0;
  for (let k = 0; k < tries; k += 1) {
    const i = 2 * Math.floor((k * count) / tries);
    const j = (i + 2) % ring.length;
    if (isInRings([outer], (ring[i] + ring[j]) / 2, (ring[i + 1] + ring[j + 1]) / 2)) inside += 1;
  }
  return 2 * inside > tries;
}
