/** Where the ray from (x, -y) through (ray, 0) meets the line from (px, 0) along (dx, dy), as a share of the latter, 0 to 1. */
export function meets(x: number, y: number, ray: number, px: number, dx: number, dy: number): number {
  const turn = (ray - x) * dy - y * dx;
  const share = ((px - ray) * y) / turn;
  return Number.isFinite(share) ? Math.min(1, Math.max(0, share)) : 0;
}

/**
 * How far along a side from its end the way by that end is no longer than the straight one from (x, -y), mm.
 * @param ahead  how much farther the end is from where the search began than the source is.
 */
export function servedUntil(ahead: number, x: number, y: number): number {
  const square = x * x + y * y;
  if (ahead > 0 && ahead * ahead > square) return 0;
  // ahead + s <= |(s, 0) - (x, -y)|, squared; with the end's lead at least x the end is always better.
  const lead = ahead + x;
  if (lead <= 0) return Infinity;
  return Math.max(0, (square - ahead * ahead) / (2 * lead));
}
