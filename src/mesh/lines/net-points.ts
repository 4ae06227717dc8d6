import { SIDES_OF_CORNER } from './fill-triangle.ts';
import { flatTriangle, type FlatTriangle } from './flat-triangle.ts';
import type { MeshPoint } from './mesh-line.ts';
import { placeOf, weightsIn, type Weights } from './mesh-point.ts';
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

/** A point in the plane of a triangle, mm, and the sides of the triangle that it lies on, as in `TriangleNet`. */
export interface PlanePoint {
  readonly x: number;
  readonly y: number;
  readonly sides: number;
}

/**
 * Points that lines bring to a surface, numbered on from its vertices. Those within {@link LINE_JOIN_MM} of each other, of a corner or of an edge
 * are one with it. A point once there never moves, so lines that come later give way to earlier ones.
 */
export class NetPoints {
  readonly list: NetPoint[] = [];
  readonly #surface: Surface;
  readonly #vertexCount: number;
  readonly #onEdge = new Map<number, number[]>();
  readonly #inTriangle = new Map<number, number[]>();
  readonly #planes = new Map<number, Map<number, PlanePoint>>();
  readonly #flat = new Map<number, FlatTriangle>();

  constructor(surface: Surface) {
    this.#surface = surface;
    this.#vertexCount = surface.positions.length / 3;
  }

  /** Triangles with points inside. */
  heldTriangles(): Iterable<number> {
    return this.#inTriangle.keys();
  }

  /** Edges with points on them, ascending. */
  partedEdges(): number[] {
    return [...this.#onEdge.keys()].sort((p, q) => p - q);
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

  /** x y of a point in the plane of a triangle, and the sides of the triangle that it lies on. */
  inPlane(triangle: number, point: number): PlanePoint {
    let known = this.#planes.get(triangle);
    if (known === undefined) this.#planes.set(triangle, (known = new Map<number, PlanePoint>()));
    let at = known.get(point);
    if (at === undefined) known.set(point, (at = this.#placed(triangle, point)));
    return at;
  }

  #placed(triangle: number, point: number): PlanePoint {
    const weights = this.weights(triangle, point);
    const { x, y } = this.#flatOf(triangle).at(weights);
    const corner = weights.indexOf(1);
    if (corner >= 0 && point < this.#vertexCount) return { x, y, sides: SIDES_OF_CORNER[corner] };
    // No weight on the corner across from a side.
    const sides = (weights[2] === 0 ? 1 : 0) | (weights[0] === 0 ? 2 : 0) | (weights[1] === 0 ? 4 : 0);
    return { x, y, sides };
  }

  /** True where a point lies on an edge or is one of its ends. */
  isOnEdge(p: number, edge: number): boolean {
    const { edgeVertices } = this.#surface.topology;
    if (p < this.#vertexCount) return edgeVertices[2 * edge] === p || edgeVertices[2 * edge + 1] === p;
    const { place } = this.list[p - this.#vertexCount];
    return place.at === 'edge' && place.edge === edge;
  }

  /** The number of a point of a line: that of a vertex or an earlier point where it is near enough, else a new one. */
  add(place: MeshPoint, line: number): number {
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
    const number = this.#vertexCount + this.list.length;
    this.list.push(point);
    if (own.length === 0) lists.set(key, own);
    own.push(number);
    return number;
  }

  #shareOf(p: number): number {
    const { place } = this.list[p - this.#vertexCount];
    if (place.at !== 'edge') throw new Error(`cutAlong: point ${p} lies on no edge`);
    return place.share;
  }

  /** Points of a triangle nearer than this are one, mm. */
  toleranceIn(triangle: number): number {
    return this.#flatOf(triangle).toleranceMm;
  }

  /** The line that brought a point; -1 for a vertex of the surface. */
  lineOf(p: number): number {
    return p < this.#vertexCount ? -1 : this.list[p - this.#vertexCount].line;
  }

  /** Weights of a point on a triangle's corners. @throws Error where it lies outside. */
  weights(triangle: number, p: number): Weights {
    const place: MeshPoint =
      p < this.#vertexCount ? { at: 'vertex', vertex: p } : this.list[p - this.#vertexCount].place;
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
