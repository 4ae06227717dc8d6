import type { Solid } from './polygon-solids.ts';

/**
 * A ball parted along meridians into `gores`, each `columns` facets wide and `rows` long from pole to pole: the lower pole first, then rings
 * of corners counter-clockwise seen from +z, the upper pole last.
 */
export function ball(radius: number, gores: number, columns: number, rows: number): Solid {
  const around = gores * columns;
  const corners: (readonly [number, number, number])[] = [[0, 0, -radius]];
  for (let j = 1; j < rows; j += 1) {
    const latitude = Math.PI * (j / rows - 0.5);
    for (let i = 0; i < around; i += 1) {
      const azimuth = (2 * Math.PI * i) / around;
      const out = radius * Math.cos(latitude);
      corners.push([out * Math.cos(azimuth), out * Math.sin(azimuth), radius * Math.sin(latitude)]);
    }
  }
  corners.push([0, 0, radius]);
  const at = (j: number, i: number): number =>
    j === 0 ? 0 : j === rows ? corners.length - 1 : 1 + (j - 1) * around + (i % around);
  const faces: number[][] = [];
  for (let i = 0; i < around; i += 1) {
    faces.push([at(0, i), at(1, i + 1), at(1, i)]);
    for (let j = 1; j + 1 < rows; j += 1) faces.push([at(j, i), at(j, i + 1), at(j + 1, i + 1), at(j + 1, i)]);
    faces.push([at(rows - 1, i), at(rows - 1, i + 1), at(rows, i)]);
  }
  const seams = Array.from({ length: gores }, (_, g) =>
    Array.from({ length: rows }, (_, j): [number, number] => [at(j, g * columns), at(j + 1, g * columns)]),
  ).flat();
  return { corners, faces, seams };
}
