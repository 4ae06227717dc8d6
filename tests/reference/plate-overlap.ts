/**
 * How deep two convex bodies run into each other: the least way one must be moved to be clear of the other, by the separating axis theorem
 * (Gottschalk, Lin and Manocha 1996). A body is the hull of its points. Shares no code with the product.
 */
export type Point = readonly [number, number, number];

const minus = (p: Point, q: Point): Point => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const dot = (p: Point, q: Point): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const cross = (p: Point, q: Point): Point => [
  p[1] * q[2] - p[2] * q[1],
  p[2] * q[0] - p[0] * q[2],
  p[0] * q[1] - p[1] * q[0],
];

/** Negative where they are apart: then how far at least. */
export function penetrationMm(a: readonly Point[], b: readonly Point[]): number {
  const [waysA, waysB] = [waysOf(a), waysOf(b)];
  const axes = [
    ...waysA.flatMap((u, i) => waysA.slice(i + 1).map((v) => cross(u, v))),
    ...waysB.flatMap((u, i) => waysB.slice(i + 1).map((v) => cross(u, v))),
    ...waysA.flatMap((u) => waysB.map((v) => cross(u, v))),
  ];
  let least = Infinity;
  for (const axis of axes) {
    const length = Math.hypot(...axis);
    if (length < 1e-6) continue;
    const [p, q] = [a, b].map((points) => points.map((point) => dot(point, axis) / length));
    const [minA, maxA, minB, maxB] = [Math.min(...p), Math.max(...p), Math.min(...q), Math.max(...q)];
    least = Math.min(least, maxA - minB, maxB - minA);
  }
  return least;
}

/** Ways between any two points, length 1: edges of the hull are among them. */
function waysOf(points: readonly Point[]): readonly Point[] {
  return points.flatMap((p, i) =>
    points.slice(i + 1).flatMap((q): Point[] => {
      const way = minus(q, p);
      const length = Math.hypot(...way);
      return length < 1e-6 ? [] : [[way[0] / length, way[1] / length, way[2] / length]];
    }),
  );
}
