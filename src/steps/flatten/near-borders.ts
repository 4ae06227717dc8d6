import { forEachMeeting } from '../../geom/meeting-boxes.ts';
import { ringArea, ringOfPoints } from '../../geom/ring.ts';
import type { BorderPairs } from './border-pairs.ts';

/** A border point and a border edge near each other in the plane. */
export interface Near {
  point: number;
  edge: number;
  /** Distance at which the pair begins to count, mm, > 0. */
  reach: number;
  /** mm. */
  distance: number;
  /** Where the nearest spot divides the edge: 0 at its tail, 1 at its head. */
  share: number;
  /** Unit vector from that spot to the point. */
  nx: number;
  ny: number;
}

/** How far beside the ends of an edge a point still hits it, as a share of the edge. */
const END_SLACK = 1e-6;

/** What lies near what along the border of a flat piece, asked again and again while the shape changes. */
export class NearBorders {
  readonly border: BorderPairs;
  readonly #pointBoxes: Float64Array;
  readonly #edgeBoxes: Float64Array;
  readonly #reaches = new Map<number, number>();

  constructor(border: BorderPairs) {
    this.border = border;
    this.#pointBoxes = new Float64Array(4 * border.vertices.length);
    this.#edgeBoxes = new Float64Array(4 * border.vertices.length);
  }

  /** Calls `use` for all pairs no farther from each other than `range`, mm, but those that never count. The record is used again. */
  forEachWithin(flat: Float64Array, range: number, use: (near: Near) => void): void {
    const { vertices, tails, heads } = this.border;
    for (let i = 0; i < vertices.length; i += 1) {
      const x = flat[2 * vertices[i]];
      const y = flat[2 * vertices[i] + 1];
      setBox(this.#pointBoxes, i, x - range, y - range, x + range, y + range);
    }
    this.#placeEdges(flat);
    const near: Near = { point: 0, edge: 0, reach: 0, distance: 0, share: 0, nx: 0, ny: 0 };
    forEachMeeting(this.#pointBoxes, this.#edgeBoxes, (point, edge) => {
      near.point = point;
      near.edge = edge;
      near.reach = this.#reachOf(point, edge);
      if (near.reach === 0) return;
      measure(near, flat, vertices[point], tails[edge], heads[edge]);
      if (near.distance < range) use(near);
    });
  }

  /** True where two edges of the border pass through each other, or a window (a slit above all) is turned inside out, which crosses nothing. */
  hasCrossing(flat: Float64Array): boolean {
    const { tails, heads, windows } = this.border;
    if (windows.some((loop) => ringArea(ringOfPoints(flat, loop)) > 0)) return true;
    this.#placeEdges(flat);
    let found = false;
    forEachMeeting(this.#edgeBoxes, this.#edgeBoxes, (i, j) => {
      found ||= i < j && doCross(flat, tails[i], heads[i], tails[j], heads[j]);
    });
    return found;
  }

  /** The first share of `step`, > 0, at which a point of the border runs into an edge; `farthest` where none does before. */
  stepToFirstHit(flat: Float64Array, step: Float64Array, farthest: number): number {
    const { vertices, tails, heads } = this.border;
    for (let i = 0; i < vertices.length; i += 1) {
      const [x0, y0] = [flat[2 * vertices[i]], flat[2 * vertices[i] + 1]];
      const [x1, y1] = [x0 + farthest * step[2 * vertices[i]], y0 + farthest * step[2 * vertices[i] + 1]];
      setBox(this.#pointBoxes, i, Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
    }
    // An edge sweeps the box of its two ends; point i is the tail of edge i.
    const boxOf = this.#pointBoxes;
    const { pointAt } = this.border;
    for (let i = 0; i < tails.length; i += 1) {
      const [a, b] = [4 * i, 4 * pointAt[i]];
      setBox(
        this.#edgeBoxes,
        i,
        Math.min(boxOf[a], boxOf[b]),
        Math.min(boxOf[a + 1], boxOf[b + 1]),
        Math.max(boxOf[a + 2], boxOf[b + 2]),
        Math.max(boxOf[a + 3], boxOf[b + 3]),
      );
    }
    let least = farthest;
    forEachMeeting(this.#pointBoxes, this.#edgeBoxes, (point, edge) => {
      const v = vertices[point];
      if (v === tails[edge] || v === heads[edge]) return;
      least = Math.min(least, stepToHit(flat, step, v, tails[edge], heads[edge]));
    });
    return least;
  }

  /**
   * Pairs of vertices (v w  v w …) that may have something to do with each other before borders have moved by `slide` mean edges.
   */
  pairsNear(flat: Float64Array, slide: number): number[] {
    const { vertices, tails, heads, gap, lengths } = this.border;
    const range = (slide * lengths.reduce((sum, length) => sum + length, 0)) / lengths.length;
    const pairs: number[] = [];
    this.forEachWithin(flat, gap + range, ({ point, edge, reach, distance }) => {
      // What is near along the border is near for good: it counts only when it folds up.
      if (distance > Math.max(2 * reach, reach + (range * reach) / gap)) return;
      pairs.push(vertices[point], tails[edge], vertices[point], heads[edge]);
    });
    return pairs;
  }

  #placeEdges(flat: Float64Array): void {
    const { tails, heads } = this.border;
    for (let i = 0; i < tails.length; i += 1) {
      const [ax, ay] = [flat[2 * tails[i]], flat[2 * tails[i] + 1]];
      const [bx, by] = [flat[2 * heads[i]], flat[2 * heads[i] + 1]];
      setBox(this.#edgeBoxes, i, Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
    }
  }

  #reachOf(point: number, edge: number): number {
    const key = point * this.border.vertices.length + edge;
    let reach = this.#reaches.get(key);
    if (reach === undefined) {
      reach = this.border.reachOf(point, edge);
      this.#reaches.set(key, reach);
    }
    return reach;
  }
}

function setBox(boxes: Float64Array, i: number, minX: number, minY: number, maxX: number, maxY: number): void {
  boxes[4 * i] = minX;
  boxes[4 * i + 1] = minY;
  boxes[4 * i + 2] = maxX;
  boxes[4 * i + 3] = maxY;
}

/** True where two edges without a common end pass through each other. */
function doCross(flat: Float64Array, a: number, b: number, c: number, d: number): boolean {
  if (a === c || a === d || b === c || b === d) return false;
  const side = (p: number, q: number, r: number): number =>
    (flat[2 * q] - flat[2 * p]) * (flat[2 * r + 1] - flat[2 * p + 1]) -
    (flat[2 * q + 1] - flat[2 * p + 1]) * (flat[2 * r] - flat[2 * p]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Fills in distance and direction of point `p` from edge `a` `b`. */
function measure(near: Near, flat: Float64Array, p: number, a: number, b: number): void {
  const ex = flat[2 * b] - flat[2 * a];
  const ey = flat[2 * b + 1] - flat[2 * a + 1];
  const px = flat[2 * p] - flat[2 * a];
  const py = flat[2 * p + 1] - flat[2 * a + 1];
  const square = ex * ex + ey * ey;
  near.share = square > 0 ? Math.min(1, Math.max(0, (px * ex + py * ey) / square)) : 0;
  const x = px - near.share * ex;
  const y = py - near.share * ey;
  near.distance = Math.hypot(x, y);
  near.nx = x / near.distance;
  near.ny = y / near.distance;
}

/** The least share > 0 of a step at which point `p` lies on edge `a` `b`, all three moving along straight lines; Infinity where never. */
function stepToHit(flat: Float64Array, step: Float64Array, p: number, a: number, b: number): number {
  const ex = flat[2 * b] - flat[2 * a];
  const ey = flat[2 * b + 1] - flat[2 * a + 1];
  const px = flat[2 * p] - flat[2 * a];
  const py = flat[2 * p + 1] - flat[2 * a + 1];
  const dex = step[2 * b] - step[2 * a];
  const dey = step[2 * b + 1] - step[2 * a + 1];
  const dpx = step[2 * p] - step[2 * a];
  const dpy = step[2 * p + 1] - step[2 * a + 1];
  // Twice the area of the three at step s is constant + linear s + square s².
  const constant = ex * py - ey * px;
  const linear = ex * dpy - ey * dpx + dex * py - dey * px;
  const square = dex * dpy - dey * dpx;
  const discriminant = linear * linear - 4 * square * constant;
  if (discriminant < 0) return Infinity;
  // Both roots without subtracting like numbers.
  const root = Math.sqrt(discriminant);
  const sum = linear < 0 ? root - linear : -root - linear;
  let least = Infinity;
  for (const s of [sum / (2 * square), (2 * constant) / sum]) {
    if (!(s > 0 && s < least)) continue;
    const fx = ex + s * dex;
    const fy = ey + s * dey;
    const along = ((px + s * dpx) * fx + (py + s * dpy) * fy) / (fx * fx + fy * fy);
    if (along >= -END_SLACK && along <= 1 + END_SLACK) least = s;
  }
  return least;
}
