import type { Vec2 } from './vec.ts';

/** Corners of one arc at most: a tolerance far too fine for it ends there. */
const MOST_PIECES = 100_000;

/**
 * The corners of an elliptical arc as SVG gives it, from its ends (SVG 1.1, appendix F.6): after its start, its end included. Radii that are too
 * short are made just long enough; without a radius it is straight.
 * @param values     rx, ry, turn of the axes in degrees, large flag, sweep flag.
 * @param tolerance  greatest distance between arc and corners' straight pieces, in the unit of the path, > 0.
 */
export function flatArc(from: Vec2, values: readonly number[], to: Vec2, tolerance: number): Vec2[] {
  let [rx, ry] = [Math.abs(values[0]), Math.abs(values[1])];
  const turn = (values[2] * Math.PI) / 180;
  const [isLarge, isSweep] = [values[3] === 1, values[4] === 1];
  if (from.x === to.x && from.y === to.y) return [];
  if (rx === 0 || ry === 0) return [to];
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  // Half the way between the ends in the ellipse's own axes (F.6.5.1).
  const [dx, dy] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
  const [px, py] = [c * dx + s * dy, -s * dx + c * dy];
  const over = (px / rx) ** 2 + (py / ry) ** 2;
  if (over > 1) [rx, ry] = [rx * Math.sqrt(over), ry * Math.sqrt(over)];
  // The centre (F.6.5.2 and 3).
  const square = (rx * py) ** 2 + (ry * px) ** 2;
  const size = (isLarge === isSweep ? -1 : 1) * Math.sqrt(Math.max(0, ((rx * ry) ** 2 - square) / square));
  const [mx, my] = [(size * rx * py) / ry, (-size * ry * px) / rx];
  const [cx, cy] = [c * mx - s * my + (from.x + to.x) / 2, s * mx + c * my + (from.y + to.y) / 2];
  const start = Math.atan2((py - my) / ry, (px - mx) / rx);
  let sweep = Math.atan2((-py - my) / ry, (-px - mx) / rx) - start;
  if (isSweep && sweep < 0) sweep += 2 * Math.PI;
  if (!isSweep && sweep > 0) sweep -= 2 * Math.PI;
  const radius = Math.max(rx, ry);
  const step = 2 * Math.acos(Math.max(0, 1 - tolerance / radius));
  const count = Math.min(MOST_PIECES, Math.max(1, Math.ceil(Math.abs(sweep) / Math.max(step, 1e-9))));
  const points: Vec2[] = [];
  for (let i = 1; i < count; i += 1) {
    const angle = start + (sweep * i) / count;
    const [x, y] = [rx * Math.cos(angle), ry * Math.sin(angle)];
    points.push({ x: cx + c * x - s * y, y: cy + s * x + c * y });
  }
  points.push(to);
  return points;
}
