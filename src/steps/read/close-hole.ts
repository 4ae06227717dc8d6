import { EMPTY_TRIANGLE_SHARE } from '../../base/tolerance.ts';
import { fail, ok, type Fail, type Result } from '../../base/result.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { triangulatePolygon3 } from '../../geom/triangulate.ts';
import { cross3, length3, pointAt3, sub3 } from '../../geom/vec.ts';
import type { SourceModel } from '../../model/source-model.ts';
import { nextOpenSide } from './rims.ts';
import { OPEN, sideLinkSteps, type SideLinks } from './side-links.ts';

/** A rim of more corners than this is no hole but the edge of the sculpt: every corner is tried as the middle of a fan. */
const MOST_RIM_CORNERS = 2000;

/**
 * Closes the hole whose rim runs through an open edge with one new polygon, numbered after all others of the file. No vertex is added.
 * The polygon is cut by earcut in the plane of its greatest shadow; where that would lay an edge where the surface has one already, or
 * an empty triangle, it is fanned from the corner that gives the least area without either.
 * @param edge two numbers of the file.
 */
export function* closeHoleSteps(model: SourceModel, edge: readonly [number, number]): Stepwise<Result<SourceModel>> {
  const links = yield* sideLinkSteps(model);
  yield;
  const start = openSide(model, links, edge);
  if (start < 0)
    return fail(
      'read/no-open-edge',
      `There is no open edge between vertices ${edge[0]} and ${edge[1]}: choose an edge of the hole.`,
    );
  const rim = rimFrom(model, links, start);
  if (rim === null) return cannotClose('other faces get in its way');
  if (rim.length > MOST_RIM_CORNERS)
    return cannotClose(`it has ${rim.length} corners, and ${MOST_RIM_CORNERS} is the most`);
  const triangles = cutRim(model, rim);
  if (triangles === null) return cannotClose('the new faces would lie on the old ones');
  const face = model.faceStarts.length - 1;
  return ok({
    ...model,
    faceStarts: appended(model.faceStarts, [model.faceVertices.length + rim.length]),
    faceVertices: appended(model.faceVertices, rim),
    faceNumber: appended(model.faceNumber, [model.fileFaceCount]),
    fileFaceCount: model.fileFaceCount + 1,
    groupOfFace: withOneMore(model.groupOfFace, -1),
    triangles: appended(
      model.triangles,
      triangles.map((corner) => rim[corner]),
    ),
    faceOfTriangle: appended(model.faceOfTriangle, new Array<number>(triangles.length / 3).fill(face)),
  });
}

const cannotClose = (why: string): Fail =>
  fail('read/hole-stays', `This hole cannot be closed here, because ${why}: close it in your modelling program.`);

function appended(list: Uint32Array, more: ArrayLike<number>): Uint32Array {
  const longer = new Uint32Array(list.length + more.length);
  longer.set(list);
  longer.set(more, list.length);
  return longer;
}

function withOneMore(list: Int32Array, value: number): Int32Array {
  const longer = new Int32Array(list.length + 1);
  longer.set(list);
  longer[list.length] = value;
  return longer;
}

/** The side of a face that runs along an open edge, or -1. */
function openSide(
  { vertexOfFile, faceVertices }: SourceModel,
  { across, next }: SideLinks,
  edge: readonly [number, number],
): number {
  const [v, w] = [vertexOfFile[edge[0]] ?? -1, vertexOfFile[edge[1]] ?? -1];
  for (let i = 0; i < across.length; i += 1) {
    if (across[i] !== OPEN) continue;
    const [a, b] = [faceVertices[i], faceVertices[next[i]]];
    if ((a === v && b === w) || (a === w && b === v)) return i;
  }
  return -1;
}

/** Vertices of the rim as the new face must run, against the faces round it; null where the rim does not come back to its beginning cleanly. */
function rimFrom({ faceVertices }: SourceModel, links: SideLinks, start: number): number[] | null {
  const rim: number[] = [];
  const seen = new Set<number>();
  for (let side = start; ;) {
    const v = faceVertices[side];
    if (seen.has(v)) return null;
    seen.add(v);
    rim.push(v);
    side = nextOpenSide(faceVertices, links, side);
    if (side < 0) return null;
    if (side === start) return rim.reverse();
  }
}

/** Triangles over the rim as places in it, or null. */
function cutRim(model: SourceModel, rim: readonly number[]): number[] | null {
  const points = Float64Array.from(
    { length: 3 * rim.length },
    (_, i) => model.positions[3 * rim[Math.floor(i / 3)] + (i % 3)],
  );
  if (rim.length === 3 && hasTriangle(model, rim)) return null;
  const taken = edgesWithin(model, rim);
  const best = triangulatePolygon3(points);
  if (isSound(points, best, taken, rim.length)) return best;
  let least: number[] | null = null;
  let leastArea = Infinity;
  for (let apex = 0; apex < rim.length; apex += 1) {
    const fan: number[] = [];
    let area = 0;
    for (let k = 1; k + 1 < rim.length; k += 1) {
      const [b, c] = [(apex + k) % rim.length, (apex + k + 1) % rim.length];
      fan.push(apex, b, c);
      area += doubledArea(points, apex, b, c);
    }
    if (area < leastArea && isSound(points, fan, taken, rim.length)) [least, leastArea] = [fan, area];
  }
  return least;
}

/** True when three vertices are the corners of a triangle already: the rim goes round a single face, which a lid would double. */
function hasTriangle({ triangles }: SourceModel, corners: readonly number[]): boolean {
  for (let i = 0; i < triangles.length; i += 3) {
    if (corners.includes(triangles[i]) && corners.includes(triangles[i + 1]) && corners.includes(triangles[i + 2]))
      return true;
  }
  return false;
}

/** True when no triangle is empty and no side of one that is not on the rim lies where the surface has an edge. */
function isSound(
  points: Float64Array,
  triangles: readonly number[],
  taken: ReadonlySet<number>,
  count: number,
): boolean {
  for (let i = 0; i < triangles.length; i += 3) {
    const corners = triangles.slice(i, i + 3);
    let longest = 0;
    for (let k = 0; k < 3; k += 1) {
      const [a, b] = [corners[k], corners[(k + 1) % 3]];
      const isOnRim = (a + 1) % count === b;
      if (!isOnRim && taken.has(pairKey(a, b, count))) return false;
      longest = Math.max(longest, length3(sub3(pointAt3(points, a), pointAt3(points, b))));
    }
    if (doubledArea(points, corners[0], corners[1], corners[2]) / 2 <= EMPTY_TRIANGLE_SHARE * longest * longest)
      return false;
  }
  return true;
}

function doubledArea(points: Float64Array, a: number, b: number, c: number): number {
  const origin = pointAt3(points, a);
  return length3(cross3(sub3(pointAt3(points, b), origin), sub3(pointAt3(points, c), origin)));
}

const pairKey = (a: number, b: number, count: number): number => Math.min(a, b) * count + Math.max(a, b);

/** Edges of triangles that join two vertices of the rim, as keys of their places in it. */
function edgesWithin({ triangles }: SourceModel, rim: readonly number[]): Set<number> {
  const place = new Map(rim.map((v, i) => [v, i]));
  const taken = new Set<number>();
  for (let h = 0; h < triangles.length; h += 1) {
    const a = place.get(triangles[h]);
    const b = a === undefined ? undefined : place.get(triangles[h % 3 === 2 ? h - 2 : h + 1]);
    if (a !== undefined && b !== undefined) taken.add(pairKey(a, b, rim.length));
  }
  return taken;
}
