/**
 * True when two triangles run into each other deeper than `tolerance`: each reaches through the plane of the other by more than it, along
 * a line longer than it; or both lie in one plane and cover a common spot wider than it. Triangles that merely touch do not cross.
 *
 * This is a measurement and not a question of side: within the tolerance the file itself cannot say where a corner is, and neighbours
 * that only touch (a corner on the middle of another's side) would cross by the rounding of their numbers.
 * T. Möller, "A fast triangle-triangle intersection test", 1997, with distances kept instead of signs.
 * @param positions packed x y z.
 * @param triangles three vertex numbers per triangle, `t` and `u` two of them. Empty ones cross nothing.
 * @param tolerance unit of the positions, >= 0.
 */
export function doTrianglesCross(
  positions: Float64Array,
  triangles: Uint32Array,
  t: number,
  u: number,
  tolerance: number,
): boolean {
  const first = loadTriangle(FIRST, positions, triangles, t);
  const second = loadTriangle(SECOND, positions, triangles, u);
  if (!first || !second) return false;
  distancesTo(FIRST, SECOND);
  const there = reach(SECOND.distances, tolerance);
  if (there === 'aside') return false;
  if (there === 'within') return doFlatCover(tolerance);
  distancesTo(SECOND, FIRST);
  if (reach(FIRST.distances, tolerance) !== 'through') return false;
  const [nx, ny, nz] = FIRST.normal;
  const [mx, my, mz] = SECOND.normal;
  const along = [ny * mz - nz * my, nz * mx - nx * mz, nx * my - ny * mx];
  const length = Math.hypot(along[0], along[1], along[2]);
  chordAlong(FIRST, along);
  chordAlong(SECOND, along);
  const common = Math.min(FIRST.chord[1], SECOND.chord[1]) - Math.max(FIRST.chord[0], SECOND.chord[0]);
  return common > tolerance * length;
}

/** A triangle being tested: its corners about the first one's first corner, its unit normal, and what was found out about it. */
interface Loaded {
  readonly corners: Float64Array;
  readonly normal: Float64Array;
  /** Of each corner from the plane of the other triangle. */
  readonly distances: Float64Array;
  /** Where the line common to both planes runs into and out of the triangle. */
  readonly chord: Float64Array;
}

const loaded = (): Loaded => ({
  corners: new Float64Array(9),
  normal: new Float64Array(3),
  distances: new Float64Array(3),
  chord: new Float64Array(2),
});

/** Kept between calls: millions of tests would otherwise make as many arrays. */
const FIRST = loaded();
const SECOND = loaded();

function loadTriangle(
  { corners, normal }: Loaded,
  positions: Float64Array,
  triangles: Uint32Array,
  t: number,
): boolean {
  for (let k = 0; k < 3; k += 1) {
    for (let axis = 0; axis < 3; axis += 1) corners[3 * k + axis] = positions[3 * triangles[3 * t + k] + axis];
  }
  const [ux, uy, uz] = [corners[3] - corners[0], corners[4] - corners[1], corners[5] - corners[2]];
  const [vx, vy, vz] = [corners[6] - corners[0], corners[7] - corners[1], corners[8] - corners[2]];
  normal[0] = uy * vz - uz * vy;
  normal[1] = uz * vx - ux * vz;
  normal[2] = ux * vy - uy * vx;
  const length = Math.hypot(normal[0], normal[1], normal[2]);
  if (!(length > 0)) return false;
  for (let axis = 0; axis < 3; axis += 1) normal[axis] /= length;
  return true;
}

/** Fills the distances of `of` from the plane of `plane`, measured from the plane's own first corner. */
function distancesTo({ corners, normal }: Loaded, of: Loaded): void {
  for (let k = 0; k < 3; k += 1) {
    of.distances[k] =
      normal[0] * (of.corners[3 * k] - corners[0]) +
      normal[1] * (of.corners[3 * k + 1] - corners[1]) +
      normal[2] * (of.corners[3 * k + 2] - corners[2]);
  }
}

function reach(distances: Float64Array, tolerance: number): 'through' | 'aside' | 'within' {
  const least = Math.min(distances[0], distances[1], distances[2]);
  const most = Math.max(distances[0], distances[1], distances[2]);
  if (least >= -tolerance && most <= tolerance) return 'within';
  return least < -tolerance && most > tolerance ? 'through' : 'aside';
}

/** Where the sides of a triangle pass the plane of the other, measured along the common line, least first. */
function chordAlong({ corners, distances, chord }: Loaded, along: readonly number[]): void {
  chord[0] = Infinity;
  chord[1] = -Infinity;
  for (let k = 0; k < 3; k += 1) {
    const next = (k + 1) % 3;
    const [d, e] = [distances[k], distances[next]];
    if (d > 0 === e > 0) continue;
    const share = d / (d - e);
    let at = 0;
    for (let axis = 0; axis < 3; axis += 1) {
      // From the first triangle's first corner, so that far-away triangles keep their digits.
      const from = corners[3 * k + axis] - FIRST.corners[axis];
      at += along[axis] * (from + share * (corners[3 * next + axis] - corners[3 * k + axis]));
    }
    chord[0] = Math.min(chord[0], at);
    chord[1] = Math.max(chord[1], at);
  }
}

/** True when the loaded triangles, lying in one plane, overlap by more than `tolerance` across every side of either (separating axes). */
function doFlatCover(tolerance: number): boolean {
  return [FIRST, SECOND].every(({ corners }) => {
    for (let k = 0; k < 3; k += 1) {
      const next = (k + 1) % 3;
      const [dx, dy, dz] = [0, 1, 2].map((axis) => corners[3 * next + axis] - corners[3 * k + axis]);
      const [nx, ny, nz] = FIRST.normal;
      const across = [ny * dz - nz * dy, nz * dx - nx * dz, nx * dy - ny * dx];
      const [low1, high1] = spanAcross(FIRST, across);
      const [low2, high2] = spanAcross(SECOND, across);
      const common = Math.min(high1, high2) - Math.max(low1, low2);
      if (!(common > tolerance * Math.hypot(across[0], across[1], across[2]))) return false;
    }
    return true;
  });
}

function spanAcross({ corners }: Loaded, across: readonly number[]): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (let k = 0; k < 3; k += 1) {
    let at = 0;
    for (let axis = 0; axis < 3; axis += 1) at += across[axis] * (corners[3 * k + axis] - FIRST.corners[axis]);
    low = Math.min(low, at);
    high = Math.max(high, at);
  }
  return [low, high];
}
