import { SegmentGrid } from './segment-grid.ts';

/** A line of straight parts, packed x y. */
export interface PlainLine {
  readonly points: Float64Array;
  readonly closed: boolean;
}

/** What lies on earlier lines for less than this is not told from a crossing, mm. */
const LEAST_SHARED_MM = 0.05;

/** Rests shorter than this are what rounding leaves, mm. */
const LEAST_REST_MM = 0.01;

/** Side of the grid's cells, mm: about an edge of an outline. */
const CELL_MM = 10;

/**
 * Lines taken one after another, each without what earlier ones (and it itself, going back over its way) already run along:
 *
 *     first  ──────────────────
 *     second          ═════════════════      is left with        ─────────
 */
export class TakenLines {
  readonly #toleranceMm: number;
  readonly #grid = new SegmentGrid(CELL_MM);

  /** @param toleranceMm lines this near one another are one. */
  constructor(toleranceMm: number) {
    this.#toleranceMm = toleranceMm;
  }

  /** Counts a line as taken without asking. */
  block({ points, closed }: PlainLine): void {
    this.#grid.addLine(points, closed);
  }

  /**
   * Takes a line. A line that shares nothing comes back as itself, to the last bit.
   * @returns what of it was free, and what was not; both in the order of the line.
   */
  take(line: PlainLine): { readonly free: readonly PlainLine[]; readonly covered: readonly PlainLine[] } {
    const { points, closed } = line;
    const count = points.length / 2;
    const [free, covered] = [new Runs(), new Runs()];
    for (let i = 0; i < (closed ? count : count - 1); i += 1) {
      const j = (i + 1) % count;
      const [ax, ay, bx, by] = [points[2 * i], points[2 * i + 1], points[2 * j], points[2 * j + 1]];
      const length = Math.hypot(bx - ax, by - ay);
      if (length === 0) continue;
      const shared = this.#sharedBy(ax, ay, bx, by, length);
      const at = (t: number): [number, number] =>
        t === 0 ? [ax, ay] : t === length ? [bx, by] : [ax + ((bx - ax) * t) / length, ay + ((by - ay) * t) / length];
      let from = 0;
      for (const [start, end] of shared) {
        if (start - from > LEAST_REST_MM) this.#keep(free, at(from), at(start));
        covered.add(at(start), at(end));
        from = end;
      }
      if (from === 0 || length - from > LEAST_REST_MM) this.#keep(free, at(from), at(length));
    }
    if (covered.isEmpty) return { free: [line], covered: [] };
    return { free: free.lines(closed), covered: covered.lines(closed) };
  }

  #keep(free: Runs, a: readonly [number, number], b: readonly [number, number]): void {
    free.add(a, b);
    this.#grid.addLine([...a, ...b], false);
  }

  /** Stretches of a segment that taken ones run along, from its start, mm, joined and in order. */
  #sharedBy(ax: number, ay: number, bx: number, by: number, length: number): readonly (readonly [number, number])[] {
    const near = this.#toleranceMm;
    const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
    const found: [number, number][] = [];
    const box = {
      minX: Math.min(ax, bx) - near,
      minY: Math.min(ay, by) - near,
      maxX: Math.max(ax, bx) + near,
      maxY: Math.max(ay, by) + near,
    };
    this.#grid.some(box, (cx, cy, dx, dy) => {
      const [t0, t1] = [(cx - ax) * ux + (cy - ay) * uy, (dx - ax) * ux + (dy - ay) * uy];
      const [h0, h1] = [(cy - ay) * ux - (cx - ax) * uy, (dy - ay) * ux - (dx - ax) * uy];
      const stretch = nearStretch(t0, t1, h0, h1, near);
      if (stretch === null) return false;
      const [start, end] = [Math.max(0, stretch[0]), Math.min(length, stretch[1])];
      if (end - start >= LEAST_SHARED_MM) found.push([start, end]);
      return false;
    });
    return joined(found, length);
  }
}

/** Where, along one line, another one's end to end distance `h` from it stays within `near`; null where it does nowhere. */
function nearStretch(t0: number, t1: number, h0: number, h1: number, near: number): readonly [number, number] | null {
  let [from, to] = [0, 1];
  const slope = h1 - h0;
  if (slope === 0) {
    if (Math.abs(h0) > near) return null;
  } else {
    const [enter, leave] = [(-near - h0) / slope, (near - h0) / slope].sort((a, b) => a - b);
    from = Math.max(from, enter);
    to = Math.min(to, leave);
    if (from >= to) return null;
  }
  const [p, q] = [t0 + from * (t1 - t0), t0 + to * (t1 - t0)];
  return p < q ? [p, q] : [q, p];
}

function joined(stretches: [number, number][], length: number): readonly (readonly [number, number])[] {
  const list: [number, number][] = [];
  for (const [start, end] of stretches.sort((a, b) => a[0] - b[0])) {
    const last = list.at(-1);
    if (last !== undefined && start - last[1] <= LEAST_REST_MM) last[1] = Math.max(last[1], end);
    else list.push([start, end]);
  }
  return list.map(([start, end]) => [start <= LEAST_REST_MM ? 0 : start, length - end <= LEAST_REST_MM ? length : end]);
}

/** Straight parts strung together as long as each begins where the last one ended. */
class Runs {
  readonly #runs: number[][] = [];

  get isEmpty(): boolean {
    return this.#runs.length === 0;
  }

  add(a: readonly [number, number], b: readonly [number, number]): void {
    const last = this.#runs.at(-1);
    if (last !== undefined && last[last.length - 2] === a[0] && last[last.length - 1] === a[1]) last.push(b[0], b[1]);
    else this.#runs.push([a[0], a[1], b[0], b[1]]);
  }

  /** @param closed true where the last run of a ring may go on in the first. */
  lines(closed: boolean): readonly PlainLine[] {
    const runs = this.#runs;
    const [first, last] = [runs.at(0), runs.at(-1)];
    if (closed && first !== undefined && last !== undefined) {
      const meets = last[last.length - 2] === first[0] && last[last.length - 1] === first[1];
      if (meets && first !== last) runs.splice(0, runs.length, [...last, ...first.slice(2)], ...runs.slice(1, -1));
    }
    return runs.map((points) => ({ points: Float64Array.from(points), closed: false }));
  }
}
