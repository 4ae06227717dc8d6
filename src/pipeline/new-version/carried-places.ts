import { inStretches, type Stepwise } from '../../base/stepwise.ts';
import { length3, pointAt3, sub3 } from '../../geom/vec.ts';
import { edgesOfVertices } from '../../mesh/edge-distance.ts';
import { edgeLengths } from '../../mesh/edge-fold.ts';
import type { MeshPoint } from '../../mesh/lines/mesh-line.ts';
import { trianglesAt } from '../../mesh/lines/mesh-point.ts';
import { surfaceOf } from '../../mesh/surface.ts';
import type { SurfacePoint } from '../../model/seams.ts';
import { facePolygons, meshPointOf, surfacePointOf } from '../../steps/seams/surface-points.ts';
import { middleOf, nearestPlace, spotOf, type SculptSide } from './sculpt-side.ts';

/** Triangles looked up in one stretch: a few milliseconds. */
const STRETCH = 256;

/** Share of the shortest edge at a corner of the new version within which an earlier corner is that corner. */
const CORNER_SHARE = 0.25;

/** Where corners, points and polygons of one version of a sculpt lie on another. */
export class CarriedPlaces {
  readonly before: SculptSide;
  readonly after: SculptSide;
  readonly mostMm: number;
  readonly #placeOfVertex = new Map<number, MeshPoint | null>();

  /** @param mostMm  what is farther away than this has no place, mm. */
  constructor(before: SculptSide, after: SculptSide, mostMm: number) {
    this.before = before;
    this.after = after;
    this.mostMm = mostMm;
  }

  /** The place of an earlier vertex. */
  ofVertex(vertex: number): MeshPoint | null {
    let place = this.#placeOfVertex.get(vertex);
    if (place === undefined) {
      place = vertex < 0 ? null : this.#near({ at: 'vertex', vertex });
      this.#placeOfVertex.set(vertex, place);
    }
    return place;
  }

  /** The vertex that an earlier vertex is; -1 where it has become none. */
  vertexOf(vertex: number): number {
    const nearest = this.nearVertexOf(vertex);
    if (nearest < 0) return -1;
    const { mesh } = this.after;
    const { starts, edges } = edgesOfVertices(mesh);
    const lengths = edgeLengths(mesh);
    let shortest = Infinity;
    for (let i = starts[nearest]; i < starts[nearest + 1]; i += 1) shortest = Math.min(shortest, lengths[edges[i]]);
    return this.#apartMm(vertex, nearest) <= CORNER_SHARE * shortest ? nearest : -1;
  }

  /** The vertex nearest to the place of an earlier one, however far from it; -1 where that has no place. */
  nearVertexOf(vertex: number): number {
    const place = this.ofVertex(vertex);
    if (place === null) return -1;
    const { mesh } = this.after;
    const corners = trianglesAt(surfaceOf(mesh), place).flatMap((t) => [...mesh.triangles.subarray(3 * t, 3 * t + 3)]);
    return corners.reduce((best, v) =>
      this.#apartMm(vertex, v) < this.#apartMm(vertex, best) ||
      (this.#apartMm(vertex, v) === this.#apartMm(vertex, best) && v < best)
        ? v
        : best,
    );
  }

  /** The place of an earlier point; null where it has none. */
  ofPoint(point: SurfacePoint): MeshPoint | null {
    const { mesh, model } = this.before;
    const place = meshPointOf(mesh, facePolygons(model), point);
    return place === null ? null : place.at === 'vertex' ? this.ofVertex(place.vertex) : this.#near(place);
  }

  /** A place in the words of the new file. */
  inFile(place: MeshPoint): SurfacePoint {
    const { mesh, model } = this.after;
    return surfacePointOf(mesh, facePolygons(model), place);
  }

  /** The polygon that lies where an earlier one lay; -1 where there is none. */
  ofFace(face: number): number {
    const { mesh, model } = this.before;
    const triangle = largestOf(this.before, facePolygons(model).trianglesOf(face));
    if (triangle < 0) return -1;
    const place = nearestPlace(this.after.mesh, middleOf(mesh, triangle), this.mostMm);
    return place === null ? -1 : this.after.mesh.faceOfTriangle[trianglesAt(surfaceOf(this.after.mesh), place)[0]];
  }

  /** For each triangle of the new version the earlier polygon that it lies on, or -1. */
  *earlierFaces(): Stepwise<Int32Array> {
    const { mesh } = this.after;
    const surface = surfaceOf(this.before.mesh);
    const faces = new Int32Array(mesh.triangles.length / 3);
    yield* inStretches(faces.length, STRETCH, (from, to) => {
      for (let t = from; t < to; t += 1) {
        const place = nearestPlace(this.before.mesh, middleOf(mesh, t), this.mostMm);
        faces[t] = place === null ? -1 : this.before.mesh.faceOfTriangle[trianglesAt(surface, place)[0]];
      }
    });
    return faces;
  }

  #near(place: MeshPoint): MeshPoint | null {
    return nearestPlace(this.after.mesh, spotOf(this.before.mesh, place), this.mostMm);
  }

  #apartMm(before: number, after: number): number {
    return length3(sub3(pointAt3(this.before.mesh.positions, before), pointAt3(this.after.mesh.positions, after)));
  }
}

/** The largest of some triangles by number, or -1 where there are none. */
export function largestOf({ mesh }: SculptSide, triangles: ArrayLike<number>): number {
  let best = -1;
  let most = -1;
  for (let i = 0; i < triangles.length; i += 1) {
    const [a, b, c] = [0, 1, 2].map((k) => pointAt3(mesh.positions, mesh.triangles[3 * triangles[i] + k]));
    const [u, v] = [sub3(b, a), sub3(c, a)];
    const area = Math.hypot(u.y * v.z - u.z * v.y, u.z * v.x - u.x * v.z, u.x * v.y - u.y * v.x);
    if (area > most) [best, most] = [triangles[i], area];
  }
  return best;
}
