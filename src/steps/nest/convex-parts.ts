import { triangulateRings } from '../../geom/triangulate.ts';

/**
 * Cuts an area into convex parts: triangles, joined over every diagonal that leaves both its ends convex (Hertel and Mehlhorn, 1983: at most four
 * times as many parts as needed).
 * @param rings packed x y, whole numbers; the outer ring counter-clockwise first, holes clockwise.
 * @returns parts, each packed x y counter-clockwise; together they cover the area.
 */
export function convexParts(rings: readonly Float64Array[]): readonly Float64Array[] {
  const [outer, ...holes] = rings;
  const xy = Float64Array.from(rings.flatMap((ring) => [...ring]));
  const corners = triangulateRings(outer, holes);
  const parts: number[][] = [];
  for (let i = 0; i < corners.length; i += 3) {
    const [a, b, c] = [corners[i], corners[i + 1], corners[i + 2]];
    const turn = cross(xy, a, b, c);
    if (turn > 0) parts.push([a, b, c]);
    else if (turn < 0) parts.push([a, c, b]);
  }
  joinParts(xy, parts);
  return parts.map((part) => Float64Array.from(part.flatMap((corner) => [xy[2 * corner], xy[2 * corner + 1]])));
}

/** Joins, in place, parts that share a side, as long as some do. */
function joinParts(xy: Float64Array, parts: number[][]): void {
  for (let i = 0; i < parts.length; i += 1) {
    for (let j = i + 1; j < parts.length; j += 1) {
      const joined = joinedPart(xy, parts[i], parts[j]);
      if (joined === null) continue;
      parts[i] = joined;
      parts.splice(j, 1);
      j = i;
    }
  }
}

/** The two parts as one, where they share a side and stay convex; else null. */
function joinedPart(xy: Float64Array, one: readonly number[], other: readonly number[]): number[] | null {
  for (let k = 0; k < one.length; k += 1) {
    const [from, to] = [one[k], one[(k + 1) % one.length]];
    const at = other.indexOf(to);
    if (at < 0 || other[(at + 1) % other.length] !== from) continue;
    const rest = [...other.slice(at + 1), ...other.slice(0, at + 1)].slice(1, -1);
    const joined = [...one.slice(0, k + 1), ...rest, ...one.slice(k + 1)];
    return isConvex(xy, joined) ? joined : null;
  }
  return null;
}

function isConvex(xy: Float64Array, part: readonly number[]): boolean {
  return part.every((corner, k) => cross(xy, corner, part[(k + 1) % part.length], part[(k + 2) % part.length]) >= 0);
}

const cross = (xy: Float64Array, a: number, b: number, c: number): number =>
  (xy[2 * b] - xy[2 * a]) * (xy[2 * c + 1] - xy[2 * a + 1]) - (xy[2 * b + 1] - xy[2 * a + 1]) * (xy[2 * c] - xy[2 * a]);
