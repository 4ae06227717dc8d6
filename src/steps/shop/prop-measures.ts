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

/** A finished part in its place that no sculpt was parted for. */
export interface FormInPlace {
  /** x y z per vertex, mm, and three vertices for each triangle. */
  readonly positions: ArrayLike<number>;
  readonly triangles: ArrayLike<number>;
  /** Whether it bounds a body: its mass is spread evenly in that, else over the surface. */
  readonly isClosed: boolean;
  /** Of its foam, g. */
  readonly massG: number;
}

/** What the bare prop measures. */
export interface PropMeasures {
  readonly outsideMm2: number;
  readonly centre: readonly [number, number, number] | null;
  readonly sizeMm: readonly [number, number, number];
  readonly longestMm: number;
}

export function propMeasures(plates: readonly PlateInPlace[], forms: readonly FormInPlace[] = []): PropMeasures {
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  const skins = [...plates.flatMap(({ face, back }) => [face, back]), ...forms.map(({ positions }) => positions)];
  for (const skin of skins) {
    for (let i = 0; i < skin.length; i += 1) {
      least[i % 3] = Math.min(least[i % 3], skin[i]);
      most[i % 3] = Math.max(most[i % 3], skin[i]);
    }
  }
  const size = (k: number): number => Math.max(0, most[k] - least[k]);
  return {
    outsideMm2: plates.reduce((sum, plate) => sum + (plate.isOutside ? skinArea(plate.triangles, plate.face) : 0), 0),
    centre: centreOf([...massesOf(plates), ...forms.map(massOf)]),
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

/** Mass, g, and mass times place, g mm. */
interface Mass {
  readonly g: number;
  readonly gMm: readonly [number, number, number];
}

/** The middle of all foam by its mass. */
function centreOf(masses: readonly Mass[]): PropMeasures['centre'] {
  const mass = masses.reduce((sum, { g }) => sum + g, 0);
  const along = (k: number): number => masses.reduce((sum, { gMm }) => sum + gMm[k], 0) / mass;
  return mass > 0 ? [along(0), along(1), along(2)] : null;
}

/** Of a part by the middle of the body in its form: corners of it and of each triangle span a solid of four corners, those that look inward less. */
function massOf({ positions, triangles, isClosed, massG }: FormInPlace): Mass {
  const sum = [0, 0, 0];
  let whole = 0;
  const origin = [positions[0], positions[1], positions[2]];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]];
    const normal = normalOf(positions, a, b, c);
    const from = (v: number, k: number): number => positions[3 * v + k] - origin[k];
    // Six times the volume, or twice the area.
    const share = isClosed
      ? normal[0] * from(a, 0) + normal[1] * from(a, 1) + normal[2] * from(a, 2)
      : Math.hypot(...normal);
    whole += share;
    for (let k = 0; k < 3; k += 1) sum[k] += (share * (from(a, k) + from(b, k) + from(c, k))) / (isClosed ? 4 : 3);
  }
  const at = (k: number): number => massG * (origin[k] + (whole === 0 ? 0 : sum[k] / whole));
  return { g: massG, gMm: [at(0), at(1), at(2)] };
}

/** kg/m³ times mm³ in g. */
const G = 1e-6;

/**
 * Of pieces in their places. Under each triangle straight lines lead from back to face; over the two places of Gauss in the thickness and
 * the middles of the three sides, which is exact for what lies between them.
 */
function massesOf(plates: readonly PlateInPlace[]): readonly Mass[] {
  return plates.map(({ triangles, face, back, densityKgM3 }) => {
    const sum = [0, 0, 0];
    let mass = 0;
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
          const own = (G * densityKgM3 * (way(0) * normal[0] + way(1) * normal[1] + way(2) * normal[2])) / 12;
          mass += own;
          for (let k = 0; k < 3; k += 1) sum[k] += (own * (between[3 * v + k] + between[3 * w + k])) / 2;
        }
      }
    }
    return { g: mass, gMm: [sum[0], sum[1], sum[2]] };
  });
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
