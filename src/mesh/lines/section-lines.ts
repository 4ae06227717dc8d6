import { fail, ok, type Result } from '../../base/result.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { add3, scale3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { Plane, Surface } from '../surface.ts';
import { distanceToLine } from './line-distance.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';
import { placeOf, pointOnHalfedge, withoutDoubles } from './mesh-point.ts';
import { cutOfSide, heightsOver, sectionWalks, type SectionWalk } from './section-walk.ts';

/** Most planes one order may ask for: more lines than anybody cuts, and than a screen can show. */
const MOST_PLANES = 1000;

/**
 * All lines in which a plane cuts a surface: closed ones, and others from open edge to open edge. A vertex in the plane counts as above it, so
 * lines neither tear nor branch; where the surface only touches the plane from below, along edges, each of these edges is a line once.
 * Lines along open edges alone are left out.
 * @returns lines in the order of their first triangle; none where the plane misses the surface.
 */
export function sectionLines(surface: Surface, plane: Plane): MeshLine[] {
  return linesUnder(surface, heightsOver(surface.positions, plane));
}

/** The lines in which one of several planes cuts a surface. */
export interface SectionAt {
  /** How far the plane lies from the first one along its normal, mm. */
  readonly offsetMm: number;
  readonly lines: readonly MeshLine[];
}

/**
 * The sections of a surface by planes at equal distances, one of them the given one, in order along its normal; planes that miss the surface are
 * left out.
 * @param spacingMm  > 0, else RangeError.
 * @returns `seams/too-many-planes` where more than a thousand would meet the surface.
 */
export function* spacedSectionSteps(
  surface: Surface,
  plane: Plane,
  spacingMm: number,
): Stepwise<Result<readonly SectionAt[]>> {
  if (!(spacingMm > 0)) throw new RangeError(`spacing ${spacingMm} mm`);
  const [least, most] = reachOf(heightsOver(surface.positions, plane));
  // 0 is added, for -0 reads oddly.
  const [first, last] = [Math.ceil(least / spacingMm) + 0, Math.floor(most / spacingMm)];
  if (last - first >= MOST_PLANES) {
    return fail(
      'seams/too-many-planes',
      `At ${spacingMm} mm apart ${last - first + 1} planes meet the sculpt: give a distance of at least ${Math.ceil((most - least) / (MOST_PLANES - 1))} mm.`,
    );
  }
  const sections: SectionAt[] = [];
  for (let k = first; k <= last; k += 1) {
    const offsetMm = k * spacingMm;
    const lines = sectionLines(surface, movedPlane(plane, offsetMm));
    if (lines.length > 0) sections.push({ offsetMm, lines });
    yield;
  }
  return ok(sections);
}

/** The plane moved along its normal, mm. */
export const movedPlane = ({ point, normal }: Plane, mm: number): Plane => ({
  point: add3(point, scale3(unit3(normal), mm)),
  normal,
});

function reachOf(heights: Float64Array): [number, number] {
  let [least, most] = [Infinity, -Infinity];
  for (const height of heights) [least, most] = [Math.min(least, height), Math.max(most, height)];
  return [least, most];
}

/**
 * The one line that passes a picked place, of the section by the plane through it.
 * @param normal  any length but 0.
 * @returns `seams/no-section` where the plane only touches the surface there, as on the top of a ball.
 */
export function sectionThrough(surface: Surface, at: MeshPoint, normal: Vec3): Result<MeshLine> {
  const point = placeOf(surface, at);
  let best: MeshLine | null = null;
  let least = Infinity;
  // A vertex in the plane counts as above: at the foot of a dip there is a line only when the plane is looked at from its other side.
  for (const side of [1, -1]) {
    for (const line of sectionLines(surface, { point, normal: scale3(normal, side) })) {
      const places = line.points.map((p) => placeOf(surface, p));
      const distance = distanceToLine(point, places, line.closed);
      if (distance < least) [best, least] = [line, distance];
    }
    if (best !== null && least <= AT_PLACE_SHARE * sizeOf(surface, at)) return ok(best);
  }
  return fail(
    'seams/no-section',
    'The plane only touches the sculpt at this place: pick another place or turn the plane.',
    { point: [point.x, point.y, point.z] },
  );
}

/** How near a section must come to the place it was asked through, as a share of how far the place is from the origin or 1 mm: rounding. */
const AT_PLACE_SHARE = 1e-7;

const sizeOf = (surface: Surface, p: MeshPoint): number => {
  const { x, y, z } = placeOf(surface, p);
  return Math.max(1, Math.abs(x), Math.abs(y), Math.abs(z));
};

/** The lines between what lies under 0 and what does not. @param heights one per vertex. */
function linesUnder(surface: Surface, heights: ArrayLike<number>): MeshLine[] {
  const lines = sectionWalks(surface, heights).flatMap((walk) => linesOf(surface, heights, walk));
  return eachEdgeOnce(surface, lines).filter((line) => !isOnOpenEdges(surface, line));
}

/** Whether a line runs along open edges alone: the plane lies on a rim, which is an edge of the foam anyway. */
const isOnOpenEdges = (surface: Surface, line: MeshLine): boolean =>
  piecesOf(line).every(([p, q]) =>
    edgeAlong(surface, p, q).some((edge) => surface.topology.twin[surface.topology.halfedgeOfEdge[edge]] < 0),
  );

function linesOf(surface: Surface, heights: ArrayLike<number>, { halfedges, bridges }: SectionWalk): MeshLine[] {
  const points = halfedges.map((h) => {
    const { low, share } = cutOfSide(surface.triangles, heights, h);
    return pointOnHalfedge(surface, h, surface.triangles[h] === low ? share : 1 - share);
  });
  if (bridges.length === 0) return atLeastTwo(withoutDoubles(points, true), true);
  return bridges.flatMap(({ after }, i) => {
    // From behind the last bridge, round the end of the list, to this one.
    const from = bridges[(i + bridges.length - 1) % bridges.length].after + 1;
    const run = i > 0 ? points.slice(from, after + 1) : [...points.slice(from), ...points.slice(0, after + 1)];
    return atLeastTwo(withoutDoubles(run, false), false);
  });
}

const atLeastTwo = (points: readonly MeshPoint[], closed: boolean): MeshLine[] =>
  points.length < 2 ? [] : [{ points, closed }];

/**
 * Lines without edges that are gone over twice, as where a ridge lies in the plane and both its sides fall away: those lines are taken apart
 * and joined again with every piece once.
 */
function eachEdgeOnce(surface: Surface, lines: readonly MeshLine[]): MeshLine[] {
  const uses = new Map<number, number>();
  const edgesOf = (line: MeshLine): number[] => piecesOf(line).flatMap(([p, q]) => edgeAlong(surface, p, q));
  for (const line of lines) for (const edge of edgesOf(line)) uses.set(edge, (uses.get(edge) ?? 0) + 1);
  const isDoubled = (line: MeshLine): boolean => edgesOf(line).some((edge) => (uses.get(edge) ?? 0) > 1);
  const doubled = lines.filter(isDoubled);
  if (doubled.length === 0) return [...lines];
  const seen = new Set<number>();
  const pieces = doubled.flatMap(piecesOf).filter(([p, q]) => {
    const [edge] = edgeAlong(surface, p, q);
    if (edge === undefined) return true;
    if (seen.has(edge)) return false;
    seen.add(edge);
    return true;
  });
  return [...lines.filter((line) => !isDoubled(line)), ...joined(pieces)];
}

type Piece = readonly [MeshPoint, MeshPoint];

function piecesOf({ points, closed }: MeshLine): Piece[] {
  const pieces = points.slice(1).map((p, i): Piece => [points[i], p]);
  return closed ? [...pieces, [points[points.length - 1], points[0]]] : pieces;
}

/** The edge between two vertices, where both points are; else none. */
function edgeAlong({ topology }: Surface, p: MeshPoint, q: MeshPoint): number[] {
  if (p.at !== 'vertex' || q.at !== 'vertex') return [];
  const edge = topology.edgeBetween(p.vertex, q.vertex);
  return edge < 0 ? [] : [edge];
}

/** Joins pieces end to end; where more than two meet, lines end. A section has one point on an edge, so its number is its name. */
function joined(pieces: readonly Piece[]): MeshLine[] {
  const name = (p: MeshPoint): string => (p.at === 'vertex' ? `v${p.vertex}` : p.at === 'edge' ? `e${p.edge}` : '');
  const at = new Map<string, number[]>();
  pieces.forEach((piece, i) => {
    for (const p of piece) at.set(name(p), [...(at.get(name(p)) ?? []), i]);
  });
  const isUsed = new Uint8Array(pieces.length);
  const lines: MeshLine[] = [];
  const follow = (first: number, start: MeshPoint): void => {
    const points = [start];
    for (let i: number | undefined = first; i !== undefined;) {
      isUsed[i] = 1;
      const [p, q]: Piece = pieces[i];
      const next: MeshPoint = name(p) === name(points[points.length - 1]) ? q : p;
      points.push(next);
      const here: number[] = at.get(name(next)) ?? [];
      i = here.length === 2 ? here.find((j) => isUsed[j] === 0) : undefined;
    }
    const closed = points.length > 3 && name(points[0]) === name(points[points.length - 1]);
    lines.push({ points: closed ? points.slice(0, -1) : points, closed });
  };
  pieces.forEach((piece, i) => {
    const end = piece.find((p) => at.get(name(p))?.length !== 2);
    if (isUsed[i] === 0 && end !== undefined) follow(i, end);
  });
  pieces.forEach(([p], i) => {
    if (isUsed[i] === 0) follow(i, p);
  });
  return lines;
}
