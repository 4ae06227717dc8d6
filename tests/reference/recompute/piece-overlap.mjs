/**
 * Pairs of flat triangles that lie on each other, by separating lines: two triangles share no ground when along the normal of one of their
 * six sides one ends before the other begins (Gottschalk, Lin and Manocha 1996, in the plane). Unlike a crossing of outlines it misses
 * nothing: a piece wound round twice, a triangle inside another, a pair of equal ones.
 *
 * @param {number[][][]} flats  three points each, mm
 * @param {number} touchMm      two that reach no deeper into each other touch; far above rounding, so plain numbers do
 * @returns {{ pairs: number, deepest: number }} mm
 */
export function deepestOverlap(flats, touchMm) {
  const boxes = flats.map((points, t) => ({ t, points, x: span(points, 1, 0), y: span(points, 0, 1) }));
  boxes.sort((a, b) => a.x[0] - b.x[0]);
  let pairs = 0;
  let deepest = 0;
  let open = [];
  for (const box of boxes) {
    open = open.filter((other) => other.x[1] - box.x[0] > touchMm);
    for (const other of open) {
      if (Math.min(box.y[1], other.y[1]) - Math.max(box.y[0], other.y[0]) <= touchMm) continue;
      const depth = depthOf(box.points, other.points, touchMm);
      if (depth <= touchMm) continue;
      pairs += 1;
      deepest = Math.max(deepest, depth);
    }
    open.push(box);
  }
  return { pairs, deepest };
}

/** How far two triangles reach into each other along the direction in which that is least, mm; anything up to `enough` may stand for less. */
function depthOf(one, other, enough) {
  let least = Infinity;
  for (const triangle of [one, other]) {
    for (let k = 0; k < 3; k += 1) {
      const [a, b] = [triangle[k], triangle[(k + 1) % 3]];
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (size === 0) continue;
      const [nx, ny] = [(b[1] - a[1]) / size, (a[0] - b[0]) / size];
      const [p, q] = [span(one, nx, ny), span(other, nx, ny)];
      least = Math.min(least, p[1] - q[0], q[1] - p[0]);
      if (least <= enough) return least;
    }
  }
  return least;
}

/** Least and greatest reach of a triangle along a direction. */
function span([a, b, c], x, y) {
  const [p, q, r] = [x * a[0] + y * a[1], x * b[0] + y * b[1], x * c[0] + y * c[1]];
  return [Math.min(p, q, r), Math.max(p, q, r)];
}
