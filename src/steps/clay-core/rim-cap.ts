import { triangulatePolygon3 } from '../../geom/triangulate.ts';

/** Triangles over a closed line in space, with corners added on their inner sides. */
export interface RimCap {
  /** Corners after those of the line: the middle of each two of these. */
  readonly middles: readonly (readonly [number, number])[];
  /** Three corner numbers each, run round as the line does: first those of the line, then the middles. */
  readonly triangles: readonly number[];
}

/**
 * Closes a line by earcut in its own plane (`triangulatePolygon3`: no area is sampled, and a flat line gets its flat area), then halves every side that
 * is not of the line. So no side of the cap can be one that the surface round the line has already, as between two corners one apart on its border.
 *
 *      2-------1          2-------1
 *      | \     |          | \   / |        one inner side 0-2: its middle m parts both triangles
 *      |   \   |    →     |   m   |
 *      |     \ |          | /   \ |
 *      3-------0          3-------0
 *
 * @param points  x y z per corner, mm, three or more.
 */
export function rimCap(points: ArrayLike<number>): RimCap {
  const count = points.length / 3;
  const cut = triangulatePolygon3(points);
  const middles: [number, number][] = [];
  const numberOf = new Map<string, number>();
  const middleOf = (a: number, b: number): number | null => {
    const [low, high] = a < b ? [a, b] : [b, a];
    if (high - low === 1 || (low === 0 && high === count - 1)) return null;
    const key = `${low} ${high}`;
    const known = numberOf.get(key);
    if (known !== undefined) return known;
    middles.push([low, high]);
    numberOf.set(key, count + middles.length - 1);
    return count + middles.length - 1;
  };
  const triangles: number[] = [];
  for (let t = 0; t < cut.length; t += 3) {
    const corners = [cut[t], cut[t + 1], cut[t + 2]];
    // Corners and middles in turn round the triangle; a polygon of three to six corners.
    const round = corners.flatMap((a, k) => {
      const middle = middleOf(a, corners[(k + 1) % 3]);
      return middle === null ? [a] : [a, middle];
    });
    const own = round.filter((corner) => corner >= count);
    if (own.length === 3) {
      triangles.push(own[0], own[1], own[2]);
      for (let k = 0; k < 3; k += 1) triangles.push(own[(k + 2) % 3], corners[k], own[k]);
    } else {
      // Fanned from a middle where there is one, so that no two of its sides are old ones.
      const start = Math.max(
        0,
        round.findIndex((corner) => corner >= count),
      );
      for (let k = 1; k + 1 < round.length; k += 1)
        triangles.push(round[start], round[(start + k) % round.length], round[(start + k + 1) % round.length]);
    }
  }
  return { middles, triangles };
}
