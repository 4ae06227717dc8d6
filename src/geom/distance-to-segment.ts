/** Distance in the plane from `x`, `y` to the straight part from `ax`, `ay` to `bx`, `by`, in their unit; a part of no length is a point. */
export function distanceToSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const share = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}
