/** A piece in its place: two skins over the same triangles. */
export interface PlateInPlace {
  readonly triangles: ArrayLike<number>;
  /** x y z per vertex, mm. */
  readonly face: ArrayLike<number>;
  readonly back: ArrayLike<number>;
  readonly densityKgM3: number;
  /** Whether its face is seen from outside: false for a sheet that another one covers. */
  readonly isOutside: boolean;
}

/** What the bare prop measures. */
export interface PropMeasures {
  readonly outsideMm2: number;
  readonly centre: readonly [number, number, number] | null;
  readonly sizeMm: readonly [number, number, number];
  readonly longestMm: number;
}

/**
 * @param forms  corners of other finished parts in their places, x y z, mm: they count in its size. Where it has any, its middle is not told, for
 *               their mass has no place.
 */
export function propMeasures(plates: readonly PlateInPlace[], forms: readonly ArrayLike<number>[] = []): PropMeasures {
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  const skins = [...plates.flatMap(({ face, back }) => [face, back]), ...forms];
  for (const skin of skins) {
    for (let i = 0; i < skin.length; i += 1) {
      least[i % 3] = Math.min(least[i % 3], skin[i]);
      most[i % 3] = Math.max(most[i % 3], skin[i]);
    }
  }
  const size = (k: number): number => Math.max(0, most[k] - least[k]);
  return {
    outsideMm2: plates.reduce((sum, plate) => sum + (plate.isOutside ? skinArea(plate.triangles, plate.face) : 0), 0),
    centre: forms.length === 0 ? centreOf(plates) : null,
    sizeMm: [size(0), size(1), size(2)],
    longestMm: longestOf(skins),
  };
}

function skinArea(triangles: ArrayLike<number>, skin: ArrayLike<number>): number {
  let area = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [x, y, z] = normalOf(skin, triangles[t], triangles[t + 1], triangles[t + 2]);
    area += Math.hypot(x, y, z) / 2;
  }
  return area;
}

/** Twice the area times the normal. */
function normalOf(skin: ArrayLike<number>, a: number, b: number, c: number): readonly [number, number, number] {
  const [ux, uy, uz] = [0, 1, 2].map((k) => skin[3 * b + k] - skin[3 * a + k]);
  const [vx, vy, vz] = [0, 1, 2].map((k) => skin[3 * c + k] - skin[3 * a + k]);
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

/** Gauss's two points on 0 to 1: exact for cubics. */
const GAUSS = [(1 - 1 / Math.sqrt(3)) / 2, (1 + 1 / Math.sqrt(3)) / 2];

/**
 * The middle of all foam by its mass. Under each triangle straight lines lead from back to face; over the two places of Gauss in the thickness and
 * the middles of the three sides, which is exact for what lies between them.
 */
function centreOf(plates: readonly PlateInPlace[]): PropMeasures['centre'] {
  const sum = [0, 0, 0];
  let mass = 0;
  for (const { triangles, face, back, densityKgM3 } of plates) {
    for (const s of GAUSS) {
      const between = Float64Array.from(face, (x, i) => back[i] + s * (x - back[i]));
      for (let t = 0; t < triangles.length; t += 3) {
        const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]];
        const normal = normalOf(between, a, b, c);
        for (const [v, w] of [
          [a, b],
          [b, c],
          [c, a],
        ]) {
          const way = (k: number): number =>
            (face[3 * v + k] - back[3 * v + k] + face[3 * w + k] - back[3 * w + k]) / 2;
          const own = (densityKgM3 * (way(0) * normal[0] + way(1) * normal[1] + way(2) * normal[2])) / 12;
          mass += own;
          for (let k = 0; k < 3; k += 1) sum[k] += (own * (between[3 * v + k] + between[3 * w + k])) / 2;
        }
      }
    }
  }
  return mass > 0 ? [sum[0] / mass, sum[1] / mass, sum[2] / mass] : null;
}

/** More places than this are thinned out first: to those that lie farthest in one of many directions. */
const MOST_COMPARED = 1500;
const DIRECTIONS = 700;

/** Greatest distance between two places. Of very many it is that of those farthest along 700 directions: within 0.2 % of it. */
function longestOf(skins: readonly ArrayLike<number>[]): number {
  const count = skins.reduce((sum, skin) => sum + skin.length / 3, 0);
  const points = count > MOST_COMPARED ? extremes(skins) : skins.flatMap((skin) => Array.from(skin));
  let longest = 0;
  for (let i = 0; i < points.length; i += 3) {
    for (let j = 0; j < i; j += 3) {
      const mm2 =
        (points[i] - points[j]) ** 2 + (points[i + 1] - points[j + 1]) ** 2 + (points[i + 2] - points[j + 2]) ** 2;
      longest = Math.max(longest, mm2);
    }
  }
  return Math.sqrt(longest);
}

function extremes(skins: readonly ArrayLike<number>[]): number[] {
  const points: number[] = [];
  for (let i = 0; i < DIRECTIONS; i += 1) {
    // Evenly over a half ball, by the golden angle; the other half gives the same pairs.
    const z = (i + 0.5) / DIRECTIONS;
    const turn = i * Math.PI * (3 - Math.sqrt(5));
    const [x, y] = [Math.sqrt(1 - z * z) * Math.cos(turn), Math.sqrt(1 - z * z) * Math.sin(turn)];
    let [least, most] = [Infinity, -Infinity];
    let [low, high] = [
      [0, 0, 0],
      [0, 0, 0],
    ];
    for (const skin of skins) {
      for (let p = 0; p < skin.length; p += 3) {
        const along = x * skin[p] + y * skin[p + 1] + z * skin[p + 2];
        if (along < least) [least, low] = [along, [skin[p], skin[p + 1], skin[p + 2]]];
        if (along > most) [most, high] = [along, [skin[p], skin[p + 1], skin[p + 2]]];
      }
    }
    points.push(...low, ...high);
  }
  return points;
}
