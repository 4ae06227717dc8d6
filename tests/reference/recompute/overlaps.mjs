import { flatArea, ringArea } from './measure.mjs';

/**
 * Pairs of flat triangles that share ground: the one is clipped by the three sides of the other, and what is left has an area.
 * @param {number[][][]} flats    three points each, counter-clockwise, mm
 * @param {number} leastAreaMm2   common ground under this is a touch, not an overlap
 * @returns {number} how many pairs
 */
export function countOverlaps(flats, leastAreaMm2) {
  const boxes = flats.map((points, i) => ({
    i,
    minX: Math.min(...points.map(([x]) => x)),
    maxX: Math.max(...points.map(([x]) => x)),
    minY: Math.min(...points.map(([, y]) => y)),
    maxY: Math.max(...points.map(([, y]) => y)),
  }));
  boxes.sort((a, b) => a.minX - b.minX);
  let count = 0;
  let open = [];
  for (const box of boxes) {
    open = open.filter((other) => other.maxX > box.minX);
    for (const other of open) {
      if (other.maxY <= box.minY || other.minY >= box.maxY) continue;
      if (commonArea(flats[box.i], flats[other.i]) > leastAreaMm2) count += 1;
    }
    open.push(box);
  }
  return count;
}

/** Area common to two triangles, by clipping one to the half-planes of the other (Sutherland and Hodgman 1974). */
function commonArea(subject, clip) {
  if (flatArea(subject) <= 0 || flatArea(clip) <= 0) return 0;
  let points = subject;
  for (let k = 0; k < 3 && points.length > 0; k += 1) {
    const [a, b] = [clip[k], clip[(k + 1) % 3]];
    const inside = (p) => flatArea([a, b, p]);
    points = points.flatMap((p, i) => {
      const q = points[(i + 1) % points.length];
      const [here, there] = [inside(p), inside(q)];
      const kept = here >= 0 ? [p] : [];
      if (here * there < 0) {
        const t = here / (here - there);
        kept.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]);
      }
      return kept;
    });
  }
  return points.length < 3 ? 0 : ringArea(points);
}
