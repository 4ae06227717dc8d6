import { BufferAttribute, BufferGeometry, DoubleSide, Matrix4, Ray, Vector3 } from 'three';
import { MeshBVH, type BVHOptions, type HitPointInfo } from 'three-mesh-bvh';
import type { Stepwise } from '../base/stepwise.ts';
import { boxesTouch, meetingLeaves, touchingLeaves } from './bvh-leaves.ts';
import type { Vec3 } from './vec.ts';

/** A bounding volume tree as plain buffers, fit to cross to another thread. `indirect` is the order of triangles the tree was built in. */
export interface SerialisedTree {
  readonly roots: readonly ArrayBuffer[];
  readonly indirect: Uint32Array | Uint16Array | null;
}

/** A place on the surface. `distance` is measured from the point or the origin that was asked about, in the unit of the positions. */
export interface SurfaceHit {
  readonly triangle: number;
  readonly point: Vec3;
  readonly distance: number;
}

/** Questions of place about one surface of triangles, answered in the caller's numbering. */
export interface SurfaceTree {
  /**
   * The point of the surface nearest to `point`; null only where the surface has no triangle.
   * @param most  distance from which on nothing is looked for: null where nothing is nearer.
   */
  nearest(point: Vec3, most?: number): SurfaceHit | null;
  /**
   * How far the surface is from `point`, as far as is asked: some distance under `near` where it is nearer than that, the true one up to `most`,
   * Infinity where it is farther. Many times as fast as {@link nearest} where most places are near.
   */
  distanceBetween(point: Vec3, near: number, most: number): number;
  /** The first place where a ray meets the surface, from either side; null when it passes by. `direction` may have any length but 0. */
  raycast(origin: Vec3, direction: Vec3): SurfaceHit | null;
  /**
   * The point of the surface nearest to another surface, which was turned and moved first; null where either has no triangle. The distance is 0
   * where they run into each other.
   * @param place  4 x 4 matrix that brings the other surface to where it is, column by column.
   * @param most   distance from which on nothing is looked for: null where nothing is nearer.
   */
  nearestTo(other: SurfaceTree, place: readonly number[], most?: number): SurfaceHit | null;
  /**
   * Tells of every two triangles whose upright boxes touch, each two once and the lower number first, in an order that depends on the
   * surface alone; in stretches.
   * @param visit  returns true to stop.
   * @param most   how many boxes are compared at most: a heap of triangles on one spot has more pairs than time.
   * @returns whether all pairs were visited.
   */
  pairSteps(visit: (a: number, b: number) => boolean, most?: number): Stepwise<boolean>;
  /**
   * Tells of every triangle of this surface and every one of another, standing where it is, whose upright boxes touch, each two once; the order
   * depends on the surfaces alone.
   * @param most  how many boxes are compared at most.
   * @returns whether all pairs were visited.
   */
  pairsWith(other: SurfaceTree, visit: (own: number, others: number) => void, most?: number): boolean;
  /** The tree as copies of its buffers. */
  serialise(): SerialisedTree;
}

/** Above this a leaf's count no longer fits its 16 bits: reached when more triangles than that have one and the same centre. */
const MOST_IN_LEAF = 0xffff;

const BUILD: BVHOptions & { _strictLeafSize: number } = {
  indirect: true,
  verbose: false,
  setBoundingBox: false,
  _strictLeafSize: MOST_IN_LEAF,
};

/**
 * Builds the tree of a surface. The arrays are kept and must not change.
 * @param positions  x y z per vertex, finite. Queries answer in its precision; the boxes are float32, widened by its rounding.
 * @param triangles  three vertex numbers per triangle.
 */
export function buildTree(positions: Float64Array | Float32Array, triangles: Uint32Array): SurfaceTree {
  if (triangles.length === 0) return EMPTY_TREE;
  return new BoxTree(positions, triangles, new MeshBVH(geometryOf(positions, triangles), BUILD));
}

/**
 * Takes up a tree that {@link SurfaceTree.serialise} gave out, without building it again.
 * @param positions  the positions it was built on, or the same rounded to float32.
 * @param triangles  exactly the triangles it was built on.
 */
export function treeFromSerialised(
  positions: Float64Array | Float32Array,
  triangles: Uint32Array,
  serialised: SerialisedTree,
): SurfaceTree {
  if (triangles.length === 0) return EMPTY_TREE;
  const data = { version: 1, roots: [...serialised.roots], index: triangles, indirectBuffer: serialised.indirect };
  return new BoxTree(
    positions,
    triangles,
    MeshBVH.deserialize(data, geometryOf(positions, triangles), { setIndex: false }),
  );
}

function geometryOf(positions: Float64Array | Float32Array, triangles: Uint32Array): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setIndex(new BufferAttribute(triangles, 1));
  return geometry;
}

const EMPTY_TREE: SurfaceTree = {
  nearest: () => null,
  distanceBetween: () => Infinity,
  raycast: () => null,
  nearestTo: () => null,
  *pairSteps() {
    yield;
    return true;
  },
  pairsWith: () => true,
  serialise: () => ({ roots: [], indirect: null }),
};

class BoxTree implements SurfaceTree {
  readonly #positions: ArrayLike<number>;
  readonly #triangles: Uint32Array;
  readonly #tree: MeshBVH;
  /** Used again and again: one call is over before the next one begins. */
  readonly #asked = new Vector3();
  readonly #found = { point: new Vector3(), distance: 0, faceIndex: 0 };

  constructor(positions: ArrayLike<number>, triangles: Uint32Array, tree: MeshBVH) {
    this.#positions = positions;
    this.#triangles = triangles;
    this.#tree = tree;
  }

  nearest(point: Vec3, most = Infinity): SurfaceHit | null {
    const hit = this.#tree.closestPointToPoint(new Vector3(point.x, point.y, point.z), undefined, 0, most);
    // Of boxes that reach nearer than that, a triangle may not.
    if (hit === null || hit.distance > most) return null;
    return {
      triangle: hit.faceIndex,
      point: { x: hit.point.x, y: hit.point.y, z: hit.point.z },
      distance: hit.distance,
    };
  }

  distanceBetween({ x, y, z }: Vec3, near: number, most: number): number {
    const hit = this.#tree.closestPointToPoint(this.#asked.set(x, y, z), this.#found, near, most);
    return hit === null || hit.distance > most ? Infinity : hit.distance;
  }

  raycast(origin: Vec3, direction: Vec3): SurfaceHit | null {
    const along = new Vector3(direction.x, direction.y, direction.z).normalize();
    const hit = this.#tree.raycastFirst(new Ray(new Vector3(origin.x, origin.y, origin.z), along), DoubleSide);
    if (hit === null || hit.faceIndex === undefined || hit.faceIndex === null) return null;
    return {
      triangle: hit.faceIndex,
      point: { x: hit.point.x, y: hit.point.y, z: hit.point.z },
      distance: hit.distance,
    };
  }

  nearestTo(other: SurfaceTree, place: readonly number[], most = Infinity): SurfaceHit | null {
    if (!(other instanceof BoxTree)) return null;
    const target: HitPointInfo = { point: new Vector3(), distance: 0, faceIndex: 0 };
    const geometry = other.#tree.geometry as BufferGeometry & { boundsTree?: MeshBVH };
    geometry.boundsTree = other.#tree;
    const matrix = new Matrix4().fromArray(place);
    if (this.#tree.closestPointToGeometry(geometry, matrix, target, undefined, 0, most) === null) return null;
    const { point, faceIndex, distance } = target;
    return { triangle: faceIndex, point: { x: point.x, y: point.y, z: point.z }, distance };
  }

  *pairSteps(visit: (a: number, b: number) => boolean, most = Infinity): Stepwise<boolean> {
    const resolve = this.#tree.resolveTriangleIndex;
    const boxes = boxesOf(this.#positions, this.#triangles);
    const root = rootOf(this.#tree);
    let compared = 0;
    yield;
    for (const { first, firstEnd, second, secondEnd } of touchingLeaves(root)) {
      for (let i = first; i < firstEnd; i += 1) {
        for (let j = first === second ? i + 1 : second; j < secondEnd; j += 1) {
          if (compared >= most) return false;
          compared += 1;
          if (compared % STRETCH_PAIRS === 0) yield;
          const [a, b] = [resolve(i), resolve(j)];
          if (boxesTouch(boxes, 6 * a, 6 * b) && visit(Math.min(a, b), Math.max(a, b))) return false;
        }
      }
    }
    return true;
  }

  pairsWith(other: SurfaceTree, visit: (own: number, others: number) => void, most = Infinity): boolean {
    if (!(other instanceof BoxTree)) return true;
    const boxes = boxesOf(this.#positions, this.#triangles);
    const otherBoxes = boxesOf(other.#positions, other.#triangles);
    const [own, others] = [this.#tree, other.#tree];
    let compared = 0;
    for (const { first, firstEnd, second, secondEnd } of meetingLeaves(rootOf(own), rootOf(others))) {
      for (let i = first; i < firstEnd; i += 1) {
        const a = own.resolveTriangleIndex(i);
        for (let j = second; j < secondEnd; j += 1) {
          if (compared >= most) return false;
          compared += 1;
          const b = others.resolveTriangleIndex(j);
          if (boxesTouch(boxes, 6 * a, 6 * b, otherBoxes)) visit(a, b);
        }
      }
    }
    return true;
  }

  serialise(): SerialisedTree {
    const { roots, indirectBuffer } = MeshBVH.serialize(this.#tree, { cloneBuffers: true });
    return { roots, indirect: indirectBuffer };
  }
}

/** The packed nodes of a tree, not copied. */
const rootOf = (tree: MeshBVH): ArrayBuffer => MeshBVH.serialize(tree, { cloneBuffers: false }).roots[0];

/** Pairs of boxes compared in one stretch: a few milliseconds. */
const STRETCH_PAIRS = 1 << 16;

/** Least x y z and greatest x y z per triangle. */
function boxesOf(positions: ArrayLike<number>, triangles: Uint32Array): Float64Array {
  const boxes = new Float64Array(2 * triangles.length);
  for (let t = 0; t < triangles.length / 3; t += 1) {
    const [a, b, c] = [3 * triangles[3 * t], 3 * triangles[3 * t + 1], 3 * triangles[3 * t + 2]];
    for (let axis = 0; axis < 3; axis += 1) {
      boxes[6 * t + axis] = Math.min(positions[a + axis], positions[b + axis], positions[c + axis]);
      boxes[6 * t + 3 + axis] = Math.max(positions[a + axis], positions[b + axis], positions[c + axis]);
    }
  }
  return boxes;
}
