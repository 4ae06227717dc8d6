import {
  Clipper64,
  ClipperOffset,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  PolyTree64,
  type PolyPath64,
  type Path64,
  type Point64,
} from 'clipper2-ts';
import { GRID_PER_MM } from './polygon-grid.ts';
import { ringArea, type Ring } from './ring.ts';

/** One connected area: an outer ring (counter-clockwise) and the holes in it (clockwise), mm. */
export interface Region {
  readonly outer: Ring;
  readonly holes: readonly Ring[];
}

/**
 * What the rings cover, as clean regions: a place belongs to them when the rings run round it more often counter-clockwise than
 * clockwise. Overlaps become one, loops that run the wrong way (an edge that an inward offset turned round) vanish.
 * @param rings packed x y, mm; outer rings counter-clockwise, holes clockwise. Rings of fewer than three points are passed over.
 * @returns largest region first, holes largest first. A corner that stood in the input comes back with exactly its input coordinates;
 *   only new crossings lie on the grid of 0.1 µm.
 */
export function coveredRegions(rings: readonly Ring[]): readonly Region[] {
  const exact = new Map<string, { x: number; y: number }>();
  const paths = rings.filter((ring) => ring.length >= 6).map((ring) => toGrid(ring, exact));
  if (paths.length === 0) return [];
  const clipper = new Clipper64();
  clipper.addSubject(paths);
  const tree = new PolyTree64();
  clipper.execute(ClipType.Union, FillRule.Positive, tree);
  return regionsOf(tree, exact);
}

/** Longest corner of a grown region, in distances: one sharper than about 29 degrees is cut off square. */
const GROWN_MITER = 4;

/**
 * Regions that reach farther by one distance all round: outlines move out, holes close in. Corners stay corners up to four distances; what is
 * narrower than two distances between two lines closes, and is gone.
 * @param rings as for {@link coveredRegions}, which do not cross.
 * @param distanceMm inward where negative.
 * @param roundMm    where given, corners that would gape are rounded with the distance, by straight parts no farther than this from their arc.
 * @returns largest region first; coordinates lie on the grid of 0.1 µm.
 */
export function grownRegions(rings: readonly Ring[], distanceMm: number, roundMm?: number): readonly Region[] {
  const none = new Map<string, { x: number; y: number }>();
  const paths = rings.filter((ring) => ring.length >= 6).map((ring) => toGrid(ring, new Map()));
  if (paths.length === 0) return [];
  const offset = new ClipperOffset(GROWN_MITER, (roundMm ?? 0) * GRID_PER_MM, true);
  offset.addPaths(paths, roundMm === undefined ? JoinType.Miter : JoinType.Round, EndType.Polygon);
  const tree = new PolyTree64();
  offset.execute(distanceMm * GRID_PER_MM, tree);
  return regionsOf(tree, none);
}

/**
 * What rings bound by a fill rule, as clean regions, however they cross themselves and each other.
 * @param rings  packed x y, mm, either way round.
 * @returns as {@link coveredRegions}.
 */
export function filledRegions(rings: readonly Ring[], rule: 'nonzero' | 'evenodd'): readonly Region[] {
  const exact = new Map<string, { x: number; y: number }>();
  const paths = rings.filter((ring) => ring.length >= 6).map((ring) => toGrid(ring, exact));
  if (paths.length === 0) return [];
  const clipper = new Clipper64();
  clipper.addSubject(paths);
  const tree = new PolyTree64();
  clipper.execute(ClipType.Union, rule === 'nonzero' ? FillRule.NonZero : FillRule.EvenOdd, tree);
  return regionsOf(tree, exact);
}

/** How the ends and corners of a stroke are made. */
export interface StrokeManner {
  readonly cap: 'butt' | 'round' | 'square';
  readonly corner: 'miter' | 'round' | 'bevel';
  /** Longest corner, in half widths. */
  readonly miterLimit: number;
  /** How far the straight parts of round ends and corners may be from their arc, mm. */
  readonly deviationMm: number;
}

const CAPS = { butt: EndType.Butt, round: EndType.Round, square: EndType.Square } as const;
const CORNERS = { miter: JoinType.Miter, round: JoinType.Round, bevel: JoinType.Bevel } as const;

/**
 * What a pen of a given width covers along lines.
 * @param lines    packed x y, mm, of two points or more; a closed one repeats none.
 * @param widthMm  > 0.
 * @returns as {@link grownRegions}.
 */
export function strokedRegions(
  lines: readonly { readonly points: ArrayLike<number>; readonly isClosed: boolean }[],
  widthMm: number,
  { cap, corner, miterLimit, deviationMm }: StrokeManner,
): readonly Region[] {
  const offset = new ClipperOffset(miterLimit, deviationMm * GRID_PER_MM, false);
  for (const { points, isClosed } of lines) {
    if (points.length < 4) continue;
    const path = toGrid(Float64Array.from(points), new Map());
    // A closed line too small for the grid is the dot of a round pen; the library ends on it as a ring.
    if (isClosed && path.every(({ x, y }) => x === path[0].x && y === path[0].y))
      offset.addPaths([path.slice(0, 1)], JoinType.Round, EndType.Round);
    else offset.addPaths([path], CORNERS[corner], isClosed ? EndType.Joined : CAPS[cap]);
  }
  const tree = new PolyTree64();
  offset.execute((widthMm / 2) * GRID_PER_MM, tree);
  return regionsOf(tree, new Map());
}

function regionsOf(tree: PolyTree64, exact: Map<string, { x: number; y: number }>): readonly Region[] {
  const regions: Region[] = [];
  gather(tree, exact, regions);
  return regions.sort(
    (a, b) => ringArea(b.outer) - ringArea(a.outer) || a.outer[0] - b.outer[0] || a.outer[1] - b.outer[1],
  );
}

function toGrid(ring: Ring, exact: Map<string, { x: number; y: number }>): Path64 {
  const path: Path64 = [];
  for (let i = 0; i < ring.length; i += 2) {
    const point = { x: Math.round(ring[i] * GRID_PER_MM), y: Math.round(ring[i + 1] * GRID_PER_MM) };
    const key = gridKey(point);
    if (!exact.has(key)) exact.set(key, { x: ring[i], y: ring[i + 1] });
    path.push(point);
  }
  return path;
}

/** Children of the tree's root are outer rings, their children holes, their children islands in the holes, and so on. */
function gather(node: PolyPath64, exact: Map<string, { x: number; y: number }>, regions: Region[]): void {
  for (let i = 0; i < node.count; i += 1) {
    const outer = node.child(i);
    const holes: Ring[] = [];
    for (let j = 0; j < outer.count; j += 1) {
      holes.push(fromGrid(outer.child(j).poly, exact));
      gather(outer.child(j), exact, regions);
    }
    holes.sort((a, b) => ringArea(a) - ringArea(b) || a[0] - b[0] || a[1] - b[1]);
    regions.push({ outer: fromGrid(outer.poly, exact), holes });
  }
}

function fromGrid(path: Path64 | null, exact: Map<string, { x: number; y: number }>): Ring {
  const ring: number[] = [];
  for (const point of path ?? []) {
    const known = exact.get(gridKey(point)) ?? { x: point.x / GRID_PER_MM, y: point.y / GRID_PER_MM };
    ring.push(known.x, known.y);
  }
  return Float64Array.from(ring);
}

const gridKey = (point: Point64): string => `${point.x} ${point.y}`;
