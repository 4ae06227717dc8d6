import { add3, cross3, dot3, length3, scale3, unit3, vec3, type Vec3 } from './vec.ts';

/** A 4 x 4 matrix, column by column, that brings a point to where it is: three columns of the turn, then the move, mm. */
export type Matrix4 = readonly number[];

export const IN_PLACE: Matrix4 = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];

/** The matrix that does `inner` first, then `outer`. */
export function composed4(outer: Matrix4, inner: Matrix4): Matrix4 {
  const product = new Array<number>(16).fill(0);
  for (let column = 0; column < 4; column += 1)
    for (let row = 0; row < 4; row += 1)
      for (let k = 0; k < 4; k += 1) product[4 * column + row] += outer[4 * k + row] * inner[4 * column + k];
  return product;
}

/** Where a matrix brings a direction: turned, not moved. */
export const turned4 = (m: Matrix4, { x, y, z }: Vec3): Vec3 => ({
  x: m[0] * x + m[4] * y + m[8] * z,
  y: m[1] * x + m[5] * y + m[9] * z,
  z: m[2] * x + m[6] * y + m[10] * z,
});

/** Where a matrix brings a point. */
export const placed4 = (m: Matrix4, p: Vec3): Vec3 => add3(turned4(m, p), vec3(m[12], m[13], m[14]));

/** Packed points where a matrix brings them. */
export function placedPoints4(m: Matrix4, positions: ArrayLike<number>): Float64Array {
  const placed = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    const { x, y, z } = placed4(m, { x: positions[i], y: positions[i + 1], z: positions[i + 2] });
    placed[i] = x;
    placed[i + 1] = y;
    placed[i + 2] = z;
  }
  return placed;
}

/** The way back of a matrix that turns, moves or mirrors and nothing else. */
export function undone4(m: Matrix4): Matrix4 {
  const { x, y, z } = { x: m[12], y: m[13], z: m[14] };
  const back = (k: number): number => -(m[4 * k] * x + m[4 * k + 1] * y + m[4 * k + 2] * z);
  return [m[0], m[4], m[8], 0, m[1], m[5], m[9], 0, m[2], m[6], m[10], 0, back(0), back(1), back(2), 1];
}

/** Six times the volume that the columns of the turn span: 1 for a turn, -1 for a mirror. */
export const handOf4 = (m: Matrix4): number =>
  dot3(cross3(vec3(m[0], m[1], m[2]), vec3(m[4], m[5], m[6])), vec3(m[8], m[9], m[10]));

const ofColumns = (u: Vec3, v: Vec3, w: Vec3, at: Vec3): Matrix4 =>
  [u, v, w, at].flatMap(({ x, y, z }, i) => [x, y, z, i === 3 ? 1 : 0]);

/** A move, mm. */
export const move4 = (by: Vec3): Matrix4 => ofColumns(vec3(1, 0, 0), vec3(0, 1, 0), vec3(0, 0, 1), by);

/**
 * A turn round an axis, counter-clockwise as seen from where the axis points to. A quarter turn of a turn is exact.
 * @param axis     any length but 0, else RangeError.
 * @param angleDeg  degrees.
 */
export function turnRound4(point: Vec3, axis: Vec3, angleDeg: number): Matrix4 {
  const n = unit3(axis);
  if (!(length3(n) > 0.5)) throw new RangeError('an axis without direction');
  const [c, s] = [cosDeg(angleDeg), sinDeg(angleDeg)];
  // Rodrigues' formula.
  const turn = (p: Vec3): Vec3 => add3(add3(scale3(p, c), scale3(cross3(n, p), s)), scale3(n, dot3(n, p) * (1 - c)));
  const rest = turn(point);
  const at = vec3(point.x - rest.x, point.y - rest.y, point.z - rest.z);
  return ofColumns(turn(vec3(1, 0, 0)), turn(vec3(0, 1, 0)), turn(vec3(0, 0, 1)), at);
}

/** The mirror in a plane. @param normal  any length but 0, else RangeError. */
export function mirror4(point: Vec3, normal: Vec3): Matrix4 {
  const n = unit3(normal);
  if (!(length3(n) > 0.5)) throw new RangeError('a plane without direction');
  const image = (p: Vec3): Vec3 => add3(p, scale3(n, -2 * dot3(n, p)));
  return ofColumns(image(vec3(1, 0, 0)), image(vec3(0, 1, 0)), image(vec3(0, 0, 1)), scale3(n, 2 * dot3(n, point)));
}

/** The shortest turn about the origin that brings +z to a direction; -z is reached by half a turn about x. @param to  any length but 0, else RangeError. */
export function turnUpTo4(to: Vec3): Matrix4 {
  const n = unit3(to);
  if (!(length3(n) > 0.5)) throw new RangeError('a direction without length');
  if (n.x === 0 && n.y === 0) return n.z > 0 ? IN_PLACE : [1, 0, 0, 0, 0, -1, 0, 0, 0, 0, -1, 0, 0, 0, 0, 1];
  // About z cross n by the angle between both; the divisor is written so that nothing is lost near -z.
  const side = n.x * n.x + n.y * n.y;
  const share = n.z > 0 ? 1 / (1 + n.z) : (1 - n.z) / side;
  return ofColumns(
    vec3(1 - n.x * n.x * share, -n.x * n.y * share, -n.x),
    vec3(-n.x * n.y * share, 1 - n.y * n.y * share, -n.y),
    n,
    vec3(0, 0, 0),
  );
}

const QUARTER_COS = [1, 0, -1, 0];

function cosDeg(angleDeg: number): number {
  const quarters = angleDeg / 90;
  if (Number.isInteger(quarters)) return QUARTER_COS[((quarters % 4) + 4) % 4];
  return Math.cos((angleDeg * Math.PI) / 180);
}

const sinDeg = (angleDeg: number): number =>
  Number.isInteger(angleDeg / 90) ? cosDeg(angleDeg - 90) : Math.sin((angleDeg * Math.PI) / 180);
