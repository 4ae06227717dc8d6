import { orient2d } from '../../geom/predicates.ts';
import { SIDES_OF_CORNER } from './fill-triangle.ts';
import type { MeshPoint } from './mesh-line.ts';
import { placeOf, sharedTriangle, weightsIn, type Weights } from './mesh-point.ts';
import { flatTriangle, type FlatTriangle } from './flat-triangle.ts';
import type { Surface } from '../surface.ts';

/**
 * How near points of lines come before they are one, mm, and a line to a corner or an edge before it runs through it: a hundredth of a
 * millimetre is finer than any blade, and what is left over it makes no needle that matters. Never more than an eighth of the edge or of
 * the triangle's least height, so that no triangle is lost.
 */
export const LINE_JOIN_MM = 0.01;
const JOIN_SHARE = 1 / 8;

/** A point of the net behind the surface's own vertices. */
export interface NetPoint {
  readonly place: MeshPoint;
  /** The line that brought it; at a crossing the later one of the two. */
  readonly line: number;
}

interface PlanePoint {
  readonly x: number;
  readonly y: number;
  readonly sides: number;
}

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
 * Lines drawn on a surface as points and straight legs between them. Points within {@link LINE_JOIN_MM} are one; where legs cross there is
 * a point of both. A point once there never moves, so lines that come later give way to earlier ones.
 */
export class LineNet {
  readonly points: NetPoint[] = [];
  readonly #surface: Surface;
  readonly #vertexCount: number;
  readonly #onEdge = new Map<number, number[]>();
  readonly #inTriangle = new Map<number, number[]>();
  readonly #legsIn = new Map<number, Leg[]>();
  readonly #lines: Leg[][] = [];
  readonly #planes = new Map<number, Map<number, PlanePoint>>();
  readonly #flat = new Map<number, FlatTriangle>();

  constructor(surface: Surface) {
    this.#surface = surface;
    this.#vertexCount = surface.positions.length / 3;
  }

  /** Triangles that lines cross or hold points of, ascending. */
  crossedTriangles(): number[] {
    return [...new Set([...this.#legsIn.keys(), ...this.#inTriangle.keys()])].sort((p, q) => p - q);
  }

  /** Edges with points on them, ascending. */
  partedEdges(): number[] {
    return [...this.#onEdge.keys()].sort((p, q) => p - q);
  }

  /** Draws a line. @throws Error where consecutive points share no triangle. */
  draw(points: readonly MeshPoint[], closed: boolean): void {
    const line = this.#lines.length;
    const legs: Leg[] = [];
    const own = points.map((p) => this.#point(p, line));
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
    for (let count = -1; count !== this.points.length;) {
      count = this.points.length;
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
    for (const p of this.pointsOf(triangle).slice(3)) last = Math.max(last, this.points[p - this.#vertexCount].line);
    return last;
  }

  /** Points in a triangle and on its border, its corners first. */
  pointsOf(triangle: number): number[] {
    const { triangles, topology } = this.#surface;
    const found = [...triangles.subarray(3 * triangle, 3 * triangle + 3)];
    for (let h = 3 * triangle; h < 3 * triangle + 3; h += 1)
      found.push(...(this.#onEdge.get(topology.edgeOfHalfedge[h]) ?? []));
    found.push(...(this.#inTriangle.get(triangle) ?? []));
    return found;
  }

  /** Points on an edge, from its first vertex to its second, both included. */
  pointsOnEdge(edge: number): number[] {
    const { edgeVertices } = this.#surface.topology;
    const between = [...(this.#onEdge.get(edge) ?? [])].sort((p, q) => this.#shareOf(p) - this.#shareOf(q));
    return [edgeVertices[2 * edge], ...between, edgeVertices[2 * edge + 1]];
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

  /** x y of a point in the plane of a triangle, and the sides of the triangle that it lies on. */
  inPlane(triangle: number, point: number): PlanePoint {
    let known = this.#planes.get(triangle);
    if (known === undefined) this.#planes.set(triangle, (known = new Map<number, PlanePoint>()));
    let at = known.get(point);
    if (at === undefined) known.set(point, (at = this.#placed(triangle, point)));
    return at;
  }

  #placed(triangle: number, point: number): PlanePoint {
    const weights = this.#weights(triangle, point);
    const { x, y } = this.#flatOf(triangle).at(weights);
    const corner = weights.indexOf(1);
    if (corner >= 0 && point < this.#vertexCount) return { x, y, sides: SIDES_OF_CORNER[corner] };
    // No weight on the corner across from a side.
    const sides = (weights[2] === 0 ? 1 : 0) | (weights[0] === 0 ? 2 : 0) | (weights[1] === 0 ? 4 : 0);
    return { x, y, sides };
  }

  #alongEdge({ a, b, edge }: Leg): number[] {
    const all = this.pointsOnEdge(edge);
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
      if (this.#isOnEdge(a, edge) && this.#isOnEdge(b, edge)) return edge;
    }
    return -1;
  }

  #isOnEdge(p: number, edge: number): boolean {
    const { edgeVertices } = this.#surface.topology;
    if (p < this.#vertexCount) return edgeVertices[2 * edge] === p || edgeVertices[2 * edge + 1] === p;
    const { place } = this.points[p - this.#vertexCount];
    return place.at === 'edge' && place.edge === edge;
  }

  #partByPoints(triangle: number, legs: Leg[], i: number): boolean {
    const { a, b } = legs[i];
    const { toleranceMm } = this.#flatOf(triangle);
    const [p, q] = [this.inPlane(triangle, a), this.inPlane(triangle, b)];
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const length = Math.hypot(dx, dy);
    let best = -1;
    let bestAlong = Infinity;
    for (const point of this.pointsOf(triangle)) {
      if (point === a || point === b) continue;
      const at = this.inPlane(triangle, point);
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
    const [p, q] = [this.inPlane(triangle, own.a), this.inPlane(triangle, own.b)];
    for (let j = 0; j < legs.length; j += 1) {
      const other = legs[j];
      if (j === i || [other.a, other.b].some((end) => end === own.a || end === own.b)) continue;
      const [r, s] = [this.inPlane(triangle, other.a), this.inPlane(triangle, other.b)];
      const [before, after] = [orient2d(r.x, r.y, s.x, s.y, p.x, p.y), orient2d(r.x, r.y, s.x, s.y, q.x, q.y)];
      const isCrossed =
        before * after < 0 && orient2d(p.x, p.y, q.x, q.y, r.x, r.y) * orient2d(p.x, p.y, q.x, q.y, s.x, s.y) < 0;
      if (!isCrossed) continue;
      const share = before / (before - after);
      const [from, to] = [this.#weights(triangle, own.a), this.#weights(triangle, own.b)];
      const weights = [0, 1, 2].map((k) => from[k] + share * (to[k] - from[k]));
      const place = { at: 'triangle', triangle, bary: [weights[0], weights[1], weights[2]] } as const;
      const point = this.#point(place, Math.max(own.line, other.line));
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

  /** The number of a point of a line: that of a vertex or an earlier point where it is near enough, else a new one. */
  #point(place: MeshPoint, line: number): number {
    if (place.at === 'vertex') return place.vertex;
    if (place.at === 'edge') return this.#pointOnEdge(place.edge, place.share, line);
    const { triangle, bary } = place;
    const flat = this.#flatOf(triangle);
    const at = flat.at(bary);
    const side = flat.sideNear(at);
    if (side !== null) {
      const { edgeOfHalfedge, edgeVertices } = this.#surface.topology;
      const h = 3 * triangle + side.k;
      const edge = edgeOfHalfedge[h];
      const share = edgeVertices[2 * edge] === this.#surface.triangles[h] ? side.share : 1 - side.share;
      return this.#pointOnEdge(edge, share, line);
    }
    const own = this.#inTriangle.get(triangle) ?? [];
    for (const p of own) {
      const other = this.inPlane(triangle, p);
      if (Math.hypot(other.x - at.x, other.y - at.y) <= flat.toleranceMm) return p;
    }
    return this.#keep(this.#inTriangle, triangle, own, { place, line });
  }

  #pointOnEdge(edge: number, share: number, line: number): number {
    const { edgeVertices } = this.#surface.topology;
    const [v, w] = [edgeVertices[2 * edge], edgeVertices[2 * edge + 1]];
    const { positions } = this.#surface;
    const lengthMm = Math.hypot(...[0, 1, 2].map((i) => positions[3 * w + i] - positions[3 * v + i]));
    const near = lengthMm > 0 ? Math.min(LINE_JOIN_MM / lengthMm, JOIN_SHARE) : JOIN_SHARE;
    if (share <= near) return v;
    if (share >= 1 - near) return w;
    const own = this.#onEdge.get(edge) ?? [];
    for (const p of own) if (Math.abs(this.#shareOf(p) - share) <= near) return p;
    return this.#keep(this.#onEdge, edge, own, { place: { at: 'edge', edge, share }, line });
  }

  #keep(lists: Map<number, number[]>, key: number, own: number[], point: NetPoint): number {
    const number = this.#vertexCount + this.points.length;
    this.points.push(point);
    if (own.length === 0) lists.set(key, own);
    own.push(number);
    return number;
  }

  #shareOf(p: number): number {
    const { place } = this.points[p - this.#vertexCount];
    if (place.at !== 'edge') throw new Error(`cutAlong: point ${p} lies on no edge`);
    return place.share;
  }

  #weights(triangle: number, p: number): Weights {
    const place: MeshPoint =
      p < this.#vertexCount ? { at: 'vertex', vertex: p } : this.points[p - this.#vertexCount].place;
    const weights = weightsIn(this.#surface.topology, this.#surface.triangles, place, triangle);
    if (weights === null) throw new Error(`cutAlong: point ${p} lies outside triangle ${triangle}`);
    return weights;
  }

  #flatOf(triangle: number): FlatTriangle {
    let flat = this.#flat.get(triangle);
    if (flat === undefined) {
      const { triangles } = this.#surface;
      const corners = [0, 1, 2].map((k) =>
        placeOf(this.#surface, { at: 'vertex', vertex: triangles[3 * triangle + k] }),
      );
      this.#flat.set(triangle, (flat = flatTriangle(corners, LINE_JOIN_MM, JOIN_SHARE)));
    }
    return flat;
  }
}
