/** A point or vector of the plane, mm. */
export interface Vec2 {
  readonly x: number;
  readonly y: number;
}

/** A point or vector in space, mm unless said otherwise. */
export interface Vec3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export const vec2 = (x: number, y: number): Vec2 => ({ x, y });
export const vec3 = (x: number, y: number, z: number): Vec3 => ({ x, y, z });

export const sub2 = (a: Vec2, b: Vec2): Vec2 => ({ x: a.x - b.x, y: a.y - b.y });
export const scale2 = (a: Vec2, s: number): Vec2 => ({ x: a.x * s, y: a.y * s });
/** Twice the signed area of the triangle 0, a, b; positive when b lies to the left of a. */
export const cross2 = (a: Vec2, b: Vec2): number => a.x * b.y - a.y * b.x;
export const length2 = (a: Vec2): number => Math.hypot(a.x, a.y);

export const add3 = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
export const sub3 = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
export const scale3 = (a: Vec3, s: number): Vec3 => ({ x: a.x * s, y: a.y * s, z: a.z * s });
export const dot3 = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross3 = (a: Vec3, b: Vec3): Vec3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
export const length3 = (a: Vec3): number => Math.hypot(a.x, a.y, a.z);

/** The vector of length 1 along `a`; the zero vector stays as it is (an empty triangle has no side). */
export function unit3(a: Vec3): Vec3 {
  const length = length3(a);
  return length > 0 ? scale3(a, 1 / length) : a;
}

/** Reads point `index` of a packed xyz array. */
export const pointAt3 = (xyz: ArrayLike<number>, index: number): Vec3 => ({
  x: xyz[3 * index],
  y: xyz[3 * index + 1],
  z: xyz[3 * index + 2],
});

/** Reads point `index` of a packed xy array. */
export const pointAt2 = (xy: ArrayLike<number>, index: number): Vec2 => ({ x: xy[2 * index], y: xy[2 * index + 1] });

export const rad = (deg: number): number => (deg * Math.PI) / 180;
export const deg = (radians: number): number => (radians * 180) / Math.PI;
