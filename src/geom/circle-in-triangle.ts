/** The part of a triangle that lies inside a circle; kept between calls so that many are measured without making objects. */
export class CircleInTriangle {
  /** Area inside both, mm². */
  area = 0;
  /** Length of the circle inside the triangle, mm. */
  arc = 0;
  #angle = 0;

  /**
   * Measures the triangle (0, 0), (base, 0), (foot, height). Seen from the circle's middle, each side counts with the area of its part
   * inside the circle and with the angle of its parts outside; the angles add up to what of the circle is inside the triangle.
   * @param square  radius squared, mm²; nothing lies inside where it is not > 0.
   * @param x,y     middle of the circle, mm.
   * @param height  > 0.
   */
  measure(square: number, x: number, y: number, base: number, foot: number, height: number): void {
    this.area = 0;
    this.arc = 0;
    this.#angle = 0;
    if (!(square > 0)) return;
    this.#side(square, -x, -y, base - x, -y);
    this.#side(square, base - x, -y, foot - x, height - y);
    this.#side(square, foot - x, height - y, -x, -y);
    this.area += (square / 2) * this.#angle;
    this.arc = Math.sqrt(square) * Math.max(0, this.#angle);
  }

  /** The side from p to q, both seen from the middle. */
  #side(square: number, px: number, py: number, qx: number, qy: number): void {
    const dx = qx - px;
    const dy = qy - py;
    const side = dx * dx + dy * dy;
    const along = px * dx + py * dy;
    const root = along * along - side * (px * px + py * py - square);
    const half = root > 0 ? Math.sqrt(root) : 0;
    const from = Math.max(0, (-along - half) / side);
    const to = Math.min(1, (-along + half) / side);
    if (!(from < to)) {
      this.#angle += Math.atan2(px * qy - py * qx, px * qx + py * qy);
      return;
    }
    const ax = px + from * dx;
    const ay = py + from * dy;
    const bx = px + to * dx;
    const by = py + to * dy;
    this.area += (ax * by - ay * bx) / 2;
    if (from > 0) this.#angle += Math.atan2(px * ay - py * ax, px * ax + py * ay);
    if (to < 1) this.#angle += Math.atan2(bx * qy - by * qx, bx * qx + by * qy);
  }
}
