import type { ReadPath } from './read-pdf.ts';

/** Lengths of all straight stretches of paths, pt; points in a line count as one. */
export function straightLengths(paths: readonly ReadPath[]): number[] {
  return paths.flatMap(({ points, closed }) => {
    const corners = cornersOf(points, closed);
    return corners.map(([x, y], i) => {
      const [nextX, nextY] = corners[(i + 1) % corners.length];
      return Math.hypot(nextX - x, nextY - y);
    });
  });
}

function cornersOf(points: readonly number[], closed: boolean): (readonly [number, number])[] {
  const all = Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i], points[2 * i + 1]] as const);
  return all.filter(([x, y], i) => {
    if (!closed && (i === 0 || i === all.length - 1)) return true;
    const [ax, ay] = all[(i + all.length - 1) % all.length];
    const [bx, by] = all[(i + 1) % all.length];
    return Math.abs((x - ax) * (by - ay) - (y - ay) * (bx - ax)) > 1e-3 * Math.hypot(bx - ax, by - ay);
  });
}
