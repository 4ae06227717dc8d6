/** Directions of the axes of the file. */
export const AXES = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } as const;

/** Place of each axis in x y z. */
export const AXIS_NUMBER = { x: 0, y: 1, z: 2 } as const;

/** The axis a direction runs along most. */
export function axisOf([x, y, z]: readonly [number, number, number]): 'x' | 'y' | 'z' {
  const [a, b, c] = [Math.abs(x), Math.abs(y), Math.abs(z)];
  if (a >= b && a >= c) return 'x';
  return b >= c ? 'y' : 'z';
}
