/**
 * Some rows of a grey picture. Everything drawn only ever makes a dot darker, so the order of drawing does not matter; a dot is as dark as
 * the share of it that is covered. Places in dots from the picture's upper left corner, x right, y down; dot `i` reaches from `i` to `i + 1`.
 */
export class PngBand {
  readonly dots: Uint8Array;
  readonly #width: number;
  readonly #top: number;
  readonly #rows: number;

  constructor(width: number, top: number, rows: number) {
    this.#width = width;
    this.#top = top;
    this.#rows = rows;
    this.dots = new Uint8Array(width * rows).fill(255);
  }

  /**
   * A straight stroke.
   * @param width  in dots. @param ink 0 for none to 1 for black.
   * @param isRound whether it goes on round its first and its second end, as at a bend, or ends square.
   */
  stroke(
    ax: number,
    ay: number,
    bx: number,
    by: number,
    width: number,
    ink: number,
    isRound: readonly [boolean, boolean],
  ): void {
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) return;
    const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
    const half = width / 2;
    const [smaller, larger] = [Math.abs(ux), Math.abs(uy)].sort((p, q) => p - q);
    const reach = half + 1;
    const first = Math.max(0, Math.floor(Math.min(ay, by) - reach) - this.#top);
    const last = Math.min(this.#rows - 1, Math.ceil(Math.max(ay, by) + reach) - this.#top);
    for (let row = first; row <= last; row += 1) {
      const y = this.#top + row + 0.5 - ay;
      let [from, to] = [Math.min(ax, bx) - reach, Math.max(ax, bx) + reach];
      if (Math.abs(uy) > 1e-6) {
        // The line is `ux y - uy x = d` away; only dots within reach are looked at.
        const middle = ax + (ux * y) / uy;
        const aside = reach / Math.abs(uy);
        from = Math.max(from, middle - aside);
        to = Math.min(to, middle + aside);
      }
      const end = Math.min(this.#width - 1, Math.ceil(to));
      for (let column = Math.max(0, Math.floor(from)); column <= end; column += 1) {
        const x = column + 0.5 - ax;
        const along = ux * x + uy * y;
        const away = ux * y - uy * x;
        let share: number;
        if (along < 0 && isRound[0]) share = coveredBy(Math.hypot(x, y), half, larger, smaller);
        else if (along > length && isRound[1])
          share = coveredBy(Math.hypot(x - length * ux, y - length * uy), half, larger, smaller);
        else share = coveredBy(away, half, larger, smaller) * clamp(along + 0.5) * clamp(length - along + 0.5);
        if (share > 0) this.#darken(row * this.#width + column, share * ink);
      }
    }
  }

  /** Closed lines filled: a place is inside where they run round it (letters, heads of arrows). Exact areas, dot by dot. */
  fill(rings: readonly Float64Array[], ink: number): void {
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const ring of rings) {
      for (let i = 0; i < ring.length; i += 2) {
        minX = Math.min(minX, ring[i]);
        maxX = Math.max(maxX, ring[i]);
        minY = Math.min(minY, ring[i + 1]);
        maxY = Math.max(maxY, ring[i + 1]);
      }
    }
    const left = Math.max(0, Math.floor(minX));
    const right = Math.min(this.#width, Math.ceil(maxX));
    const top = Math.max(this.#top, Math.floor(minY));
    const bottom = Math.min(this.#top + this.#rows, Math.ceil(maxY));
    if (left >= right || top >= bottom) return;
    const columns = right - left;
    // Of each dot, how much its own edges cover of it, and what they add for all dots to the right.
    const cover = new Float64Array((columns + 2) * (bottom - top));
    for (const ring of rings) {
      for (let i = 0; i < ring.length; i += 2) {
        const j = (i + 2) % ring.length;
        addEdge(cover, columns, bottom - top, ring[i] - left, ring[i + 1] - top, ring[j] - left, ring[j + 1] - top);
      }
    }
    for (let row = 0; row < bottom - top; row += 1) {
      let sum = 0;
      for (let column = 0; column < columns; column += 1) {
        sum += cover[row * (columns + 2) + column];
        const share = Math.min(1, Math.abs(sum));
        if (share > 1e-4) this.#darken((row + top - this.#top) * this.#width + left + column, share * ink);
      }
    }
  }

  #darken(dot: number, ink: number): void {
    const grey = Math.round(255 * (1 - ink));
    if (grey < this.dots[dot]) this.dots[dot] = grey;
  }
}

const clamp = (share: number): number => Math.min(1, Math.max(0, share));

/**
 * Share of a dot whose middle is `away` from the middle of a stroke that reaches `half` to each side: exact where the stroke goes straight on.
 * Seen along the stroke a dot is as wide as a box of its larger and one of its smaller share of the way across, one run over the other.
 */
function coveredBy(away: number, half: number, larger: number, smaller: number): number {
  return beyond(half - away, larger, smaller) - beyond(-half - away, larger, smaller);
}

/** Share of a dot on the near side of a line that passes its middle at `u`. */
function beyond(u: number, larger: number, smaller: number): number {
  if (smaller < 1e-6) return clamp(u / larger + 0.5);
  const [outer, inner] = [(larger + smaller) / 2, (larger - smaller) / 2];
  return (ramp(u + outer) - ramp(u + inner) - ramp(u - inner) + ramp(u - outer)) / (larger * smaller);
}

const ramp = (t: number): number => (t > 0 ? (t * t) / 2 : 0);

/** Adds what lies right of an edge, signed by its way up or down, to the dots of every row it passes; left of the first column counts whole. */
function addEdge(
  cover: Float64Array,
  columns: number,
  rows: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): void {
  if (ay === by) return;
  const sign = ay < by ? 1 : -1;
  const [x0, y0, x1, y1] = ay < by ? [ax, ay, bx, by] : [bx, by, ax, ay];
  const slope = (x1 - x0) / (y1 - y0);
  const last = Math.min(rows, Math.ceil(y1));
  for (let row = Math.max(0, Math.floor(y0)); row < last; row += 1) {
    const [from, to] = [Math.max(y0, row), Math.min(y1, row + 1)];
    if (to <= from) continue;
    const [p, q] = [x0 + (from - y0) * slope, x0 + (to - y0) * slope];
    const [left, right] = p < q ? [p, q] : [q, p];
    addRun(cover, row * (columns + 2), columns, left, right, sign * (to - from));
  }
}

/** One edge within one row: its height spread over the dots it passes. */
function addRun(
  cover: Float64Array,
  start: number,
  columns: number,
  left: number,
  right: number,
  height: number,
): void {
  const add = (x0: number, x1: number, part: number): void => {
    const middle = (x0 + x1) / 2;
    const column = Math.floor(middle);
    if (column < 0) cover[start] += part;
    else if (column < columns) {
      const own = part * (column + 1 - middle);
      cover[start + column] += own;
      cover[start + column + 1] += part - own;
    }
  };
  if (right - left < 1e-9) {
    add(left, left, height);
    return;
  }
  for (let x = left; x < right;) {
    const next = Math.min(right, Math.floor(x) + 1);
    add(x, next, (height * (next - x)) / (right - left));
    x = next;
  }
}
