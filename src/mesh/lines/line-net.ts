import { orient2d } from '../../geom/predicates.ts';
import type { MeshPoint } from './mesh-line.ts';
import { sharedTriangle } from './mesh-point.ts';
import { NetPoints } from './net-points.ts';
import type { Surface } from '../surface.ts';

/** A straight part of a line: across a triangle, or along an edge. */
interface Leg {
  readonly a: number;
  readonly b: number;
  readonly line: number;
  /** Triangle it crosses, or -1. */
  readonly triangle: number;
  /** Edge it runs along, or -1. */
  readonly edge: number;
  /** The legs it fell into, where another line or point parts it. */
  parts: readonly Leg[] | null;
}

/** Splits before a triangle counts as one that never settles: far more than any drawing has crossings. */
const MOST_SPLITS = 200_000;

/**
 * Lines drawn on a surface as points and straight legs between them. Where legs cross there is a point of both, and a leg that comes nearer to a
 * point than half of what joins points runs through it.
 */
export class LineNet {
  readonly points: NetPoints;
  readonly #surface: Surface;
  readonly #legsIn = new Map<number, Leg[]>();
  readonly #lines: Leg[][] = [];

  constructor(surface: Surface) {
    this.#surface = surface;
    this.points = new NetPoints(surface);
  }

  /** Triangles that lines cross or hold points of, ascending. */
  crossedTriangles(): number[] {
    return [...new Set([...this.#legsIn.keys(), ...this.points.heldTriangles()])].sort((p, q) => p - q);
  }

  /** Draws a line. @throws Error where consecutive points share no triangle. */
  draw(points: readonly MeshPoint[], closed: boolean): void {
    const line = this.#lines.length;
    const legs: Leg[] = [];
    const own = points.map((p) => this.points.add(p, line));
    for (let before = 0; before < points.length - (closed ? 0 : 1); before += 1) {
      const next = (before + 1) % points.length;
      const triangle = sharedTriangle(this.#surface, points[before], points[next]);
      if (triangle < 0) throw new Error(`cutAlong: points ${before} and ${next} of line ${line} share no triangle`);
      const leg = this.#leg(own[before], own[next], line, triangle);
      if (leg !== null) legs.push(leg);
    }
    this.#lines.push(legs);
  }

  /** Brings the legs of a triangle to where they meet in points only. */
  settle(triangle: number): void {
    const legs = (this.#legsIn.get(triangle) ?? []).filter(({ parts }) => parts === null);
    let patience = MOST_SPLITS;
    // A point that is new at a crossing may lie close to legs that were looked at before.
    for (let count = -1; count !== this.points.list.length;) {
      count = this.points.list.length;
      for (let i = 0; i < legs.length;) {
        if (patience-- === 0) throw new Error(`cutAlong: lines in triangle ${triangle} never settle`);
        const parted = this.#partByPoints(triangle, legs, i) ? i : this.#partByLegs(triangle, legs, i);
        i = parted < 0 ? i + 1 : Math.min(i, parted);
      }
    }
    this.#legsIn.set(triangle, legs);
  }

  /** The settled legs of a triangle, each once, as pairs of points. */
  linksIn(triangle: number): (readonly [number, number])[] {
    const links = new Map<string, readonly [number, number]>();
    for (const { a, b } of this.#legsIn.get(triangle) ?? [])
      links.set(a < b ? `${a} ${b}` : `${b} ${a}`, [Math.min(a, b), Math.max(a, b)]);
    return [...links.values()];
  }

  /** The last line that has to do with a triangle; -1 where none has. */
  lastLineIn(triangle: number): number {
    let last = -1;
    for (const { line } of this.#legsIn.get(triangle) ?? []) last = Math.max(last, line);
    for (const p of this.points.pointsOf(triangle).slice(3)) last = Math.max(last, this.points.lineOf(p));
    return last;
  }

  /** Points along each line, every point that lies on it among them. */
  chains(): number[][] {
    return this.#lines.map((legs) => {
      const chain: number[] = [];
      const walk = (leg: Leg): void => {
        if (leg.parts !== null) leg.parts.forEach(walk);
        else
          for (const p of leg.edge < 0 ? [leg.a, leg.b] : this.#alongEdge(leg)) if (p !== chain.at(-1)) chain.push(p);
      };
      legs.forEach(walk);
      return chain;
    });
  }

  #alongEdge({ a, b, edge }: Leg): number[] {
    const all = this.points.pointsOnEdge(edge);
    const [from, to] = [all.indexOf(a), all.indexOf(b)];
    return from <= to ? all.slice(from, to + 1) : all.slice(to, from + 1).reverse();
  }

  #leg(a: number, b: number, line: number, triangle: number): Leg | null {
    if (a === b) return null;
    const edge = this.#edgeThrough(a, b, triangle);
    const leg: Leg = { a, b, line, triangle: edge < 0 ? triangle : -1, edge, parts: null };
    if (edge < 0) {
      const own = this.#legsIn.get(triangle);
      if (own === undefined) this.#legsIn.set(triangle, [leg]);
      else own.push(leg);
    }
    return leg;
  }

  /** The edge of a triangle that both points lie on, or -1. */
  #edgeThrough(a: number, b: number, triangle: number): number {
    const { topology } = this.#surface;
    for (let h = 3 * triangle; h < 3 * triangle + 3; h += 1) {
      const edge = topology.edgeOfHalfedge[h];
      if (this.points.isOnEdge(a, edge) && this.points.isOnEdge(b, edge)) return edge;
    }
    return -1;
  }

  #partByPoints(triangle: number, legs: Leg[], i: number): boolean {
    const { a, b } = legs[i];
    const toleranceMm = this.points.toleranceIn(triangle);
    const [p, q] = [this.points.inPlane(triangle, a), this.points.inPlane(triangle, b)];
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const length = Math.hypot(dx, dy);
    let best = -1;
    let bestAlong = Infinity;
    for (const point of this.points.pointsOf(triangle)) {
      if (point === a || point === b) continue;
      const at = this.points.inPlane(triangle, point);
      const along = ((at.x - p.x) * dx + (at.y - p.y) * dy) / length;
      if (!(along > 0 && along < length) || along >= bestAlong) continue;
      const off = Math.abs((at.x - p.x) * dy - (at.y - p.y) * dx) / length;
      // Half of what joins points: then each part is shorter than the whole, and this ends.
      const isNear = length > toleranceMm ? off <= toleranceMm / 2 : orient2d(p.x, p.y, q.x, q.y, at.x, at.y) === 0;
      if (isNear) [best, bestAlong] = [point, along];
    }
    if (best < 0) return false;
    this.#part(triangle, legs, i, best);
    return true;
  }

  /** @returns the lower of the two legs that were parted, or -1. */
  #partByLegs(triangle: number, legs: Leg[], i: number): number {
    const own = legs[i];
    const [p, q] = [this.points.inPlane(triangle, own.a), this.points.inPlane(triangle, own.b)];
    for (let j = 0; j < legs.length; j += 1) {
      const other = legs[j];
      if (j === i || [other.a, other.b].some((end) => end === own.a || end === own.b)) continue;
      const [r, s] = [this.points.inPlane(triangle, other.a), this.points.inPlane(triangle, other.b)];
      const [before, after] = [orient2d(r.x, r.y, s.x, s.y, p.x, p.y), orient2d(r.x, r.y, s.x, s.y, q.x, q.y)];
      const isCrossed =
        before * after < 0 && orient2d(p.x, p.y, q.x, q.y, r.x, r.y) * orient2d(p.x, p.y, q.x, q.y, s.x, s.y) < 0;
      if (!isCrossed) continue;
      const share = before / (before - after);
      const [from, to] = [this.points.weights(triangle, own.a), this.points.weights(triangle, own.b)];
      const weights = [0, 1, 2].map((k) => from[k] + share * (to[k] - from[k]));
      const place = { at: 'triangle', triangle, bary: [weights[0], weights[1], weights[2]] } as const;
      const point = this.points.add(place, Math.max(own.line, other.line));
      // The later one first, so that the earlier keeps its place in the list.
      for (const k of [i, j].sort((m, n) => n - m)) {
        if (legs[k].a !== point && legs[k].b !== point) this.#part(triangle, legs, k, point);
      }
      return Math.min(i, j);
    }
    return -1;
  }

  /** Parts a leg at a point, and takes its parts for it in the list. */
  #part(triangle: number, legs: Leg[], i: number, point: number): void {
    const leg = legs[i];
    const parts: Leg[] = [];
    const kept: Leg[] = [];
    for (const [a, b] of [
      [leg.a, point],
      [point, leg.b],
    ]) {
      const edge = this.#edgeThrough(a, b, triangle);
      const part: Leg = { a, b, line: leg.line, triangle: edge < 0 ? triangle : -1, edge, parts: null };
      parts.push(part);
      if (edge < 0) kept.push(part);
    }
    leg.parts = parts;
    legs.splice(i, 1, ...kept);
  }
}
