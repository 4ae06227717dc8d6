import { MinHeap } from '../../base/min-heap.ts';
import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { length3, pointAt3, sub3 } from '../../geom/vec.ts';
import type { Mesh } from '../mesh.ts';
import { Collapsing } from './collapsing.ts';
import { lineVertices, type LineVertices } from './line-vertices.ts';
import { Quadrics } from './quadrics.ts';

/** How far a surface is to be made simpler. */
export interface SimplifyWish {
  /** Triangles that are enough; with fewer it stops. */
  readonly triangles: number;
  /** No vertex is brought farther than this from the planes it stands for (root mean square), mm; Infinity: as far as it takes. */
  readonly offMm: number;
  /** 1 per vertex that stays. */
  readonly isKept: Uint8Array;
  /** Per vertex the one opposite, itself on the mirror, or -1: both sides lose the same. Null: there is no mirror. */
  readonly partner: Int32Array | null;
}

/** Share of its length by which a collapse over a short edge is cheaper than one over a long edge where both cost nothing, as on a plane. */
const SHORT_FIRST = 1e-4;

/** Vertices looked at in one stretch: a few milliseconds. */
const STRETCH = 256;

/**
 * Makes a surface simpler: vertex after vertex is brought onto a neighbour, the one that costs least first (quadric error metric, Garland and
 * Heckbert 1997). Vertices keep their places, so what is left of a sculpt lies on its own corners: a plane stays that plane, a mirrored sculpt stays
 * mirrored, and a corner of the file is what it was. Open edges and creases lose vertices only along themselves, their ends and crossings none.
 * @returns triangles of the mesh with their corners now; the rest is gone. 3 corners per entry of `kept`.
 */
export function* simplifySteps(
  mesh: Mesh,
  wish: SimplifyWish,
): Stepwise<{ readonly kept: Uint32Array; readonly corners: Uint32Array }> {
  const job = new Simplifying(mesh, wish);
  yield* job.steps();
  return job.result();
}

export const simplify = (
  mesh: Mesh,
  wish: SimplifyWish,
): { readonly kept: Uint32Array; readonly corners: Uint32Array } => runAtOnce(simplifySteps(mesh, wish));

class Simplifying {
  readonly #mesh: Mesh;
  readonly #wish: SimplifyWish;
  readonly #lines: LineVertices;
  readonly #quadrics: Quadrics;
  readonly #surface: Collapsing;
  readonly #heap = new MinHeap();
  /** Per vertex the cost of its best collapse, Infinity where it has none; what the heap says otherwise is out of date. */
  readonly #best: Float64Array;
  readonly #target: Int32Array;

  constructor(mesh: Mesh, wish: SimplifyWish) {
    const count = mesh.positions.length / 3;
    this.#mesh = mesh;
    this.#wish = wish;
    this.#lines = lineVertices(mesh, wish.isKept);
    const { isFixed } = this.#lines;
    // What stays on one side stays on the other.
    wish.partner?.forEach((p, v) => {
      if (p >= 0 && isFixed[v] === 1) isFixed[p] = 1;
    });
    this.#quadrics = new Quadrics(mesh.positions, mesh.triangles, this.#lines.halfedges);
    this.#surface = new Collapsing(mesh.positions, mesh.triangles);
    this.#best = new Float64Array(count).fill(Infinity);
    this.#target = new Int32Array(count).fill(-1);
  }

  *steps(): Stepwise<void> {
    const { triangles } = this.#wish;
    for (let v = 0; v < this.#best.length; v += 1) {
      if (v % STRETCH === STRETCH - 1) yield;
      this.#look(v);
    }
    for (let n = 0; this.#heap.size > 0 && this.#surface.count > triangles; n += 1) {
      if (n % STRETCH === STRETCH - 1) yield;
      const { key, item: u } = this.#heap.pop();
      if (key !== this.#best[u]) continue;
      const v = this.#target[u];
      if (!this.#surface.can(u, v)) {
        // Something beyond its neighbours has changed.
        this.#look(u);
        continue;
      }
      if (this.#bring(u, v)) continue;
      // Not possible on both sides: it waits until something near it changes.
      this.#best[u] = Infinity;
    }
  }

  result(): { readonly kept: Uint32Array; readonly corners: Uint32Array } {
    const { isThere, triangles } = this.#surface;
    const kept = Uint32Array.from([...isThere.keys()].filter((t) => isThere[t] === 1));
    const corners = new Uint32Array(3 * kept.length);
    kept.forEach((t, i) => corners.set(triangles.subarray(3 * t, 3 * t + 3), 3 * i));
    return { kept, corners };
  }

  /** Brings `u` onto `v`, and so on the other side of the mirror; false where that side cannot follow. */
  #bring(u: number, v: number): boolean {
    const { partner } = this.#wish;
    const [p, q] = partner === null ? [-1, -1] : [partner[u], partner[v]];
    const first = this.#surface.collapse(u, v);
    if (p >= 0 && p !== u) {
      if (!this.#surface.can(p, q)) {
        this.#surface.undo(first);
        return false;
      }
      this.#surface.collapse(p, q);
      this.#settle(p, q);
    }
    this.#settle(u, v);
    for (const w of new Set([v, ...(p >= 0 && p !== u ? [q] : [])])) {
      this.#look(w);
      for (const near of this.#surface.neighbours(w)) this.#look(near);
    }
    return true;
  }

  /** What `u` stood for, `v` does now. */
  #settle(u: number, v: number): void {
    this.#quadrics.join(u, v);
    this.#best[u] = Infinity;
    const { beside } = this.#lines;
    if (beside[2 * u] < 0) return;
    const other = beside[2 * u] === v ? beside[2 * u + 1] : beside[2 * u];
    relink(beside, other, u, v);
    relink(beside, v, u, other);
  }

  /** Finds the cheapest collapse of `u` that is possible now. */
  #look(u: number): void {
    this.#best[u] = Infinity;
    this.#target[u] = -1;
    if (this.#lines.isFixed[u] === 1 || this.#surface.trianglesAt(u).length === 0) return;
    const priced = this.#targetsOf(u)
      .map((v) => ({ v, cost: this.#costOf(u, v) }))
      .filter(({ cost }) => cost < Infinity)
      .sort((a, b) => a.cost - b.cost || a.v - b.v);
    for (const { v, cost } of priced) {
      if (!this.#surface.can(u, v)) continue;
      this.#best[u] = cost;
      this.#target[u] = v;
      this.#heap.push(cost, u);
      return;
    }
  }

  /** Neighbours that `u` may be brought onto: along its line, and as the mirror allows. */
  #targetsOf(u: number): readonly number[] {
    const { beside } = this.#lines;
    const near = beside[2 * u] >= 0 ? [beside[2 * u], beside[2 * u + 1]] : [...this.#surface.neighbours(u)];
    const { partner } = this.#wish;
    if (partner === null || partner[u] < 0) return near;
    const p = partner[u];
    return near.filter((v) => partner[v] >= 0 && v !== p && (p !== u || partner[v] === v));
  }

  #costOf(u: number, v: number): number {
    const place = pointAt3(this.#mesh.positions, v);
    if (this.#quadrics.offMm(u, place) > this.#wish.offMm) return Infinity;
    const long = length3(sub3(place, pointAt3(this.#mesh.positions, u)));
    return this.#quadrics.cost(u, v, place) + this.#quadrics.areaOf(u) * (SHORT_FIRST * long) ** 2;
  }
}

function relink(beside: Int32Array, v: number, old: number, next: number): void {
  for (let i = 2 * v; i < 2 * v + 2; i += 1) if (beside[i] === old) beside[i] = next;
}
