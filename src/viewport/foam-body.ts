import { Box3, BufferAttribute, BufferGeometry, DynamicDrawUsage, Ray, Sphere, Vector3 } from 'three';
import type { Work } from '../base/work.ts';
import { cornerAfter } from '../mesh/corners-at-vertices.ts';
import { CornerSurface } from './corner-surface.ts';
import type { FoamPatch } from './foam-patch.ts';
import type { Whereabouts } from './journey.ts';
import type { RayHit } from './ray.ts';
import type { ShadingGroups } from './shading-groups.ts';
import { TriangleRuns } from './triangle-runs.ts';

/** Where each corner of a triangle goes on the back, which is seen from the other side. */
export const BACK_CORNER = [0, 2, 1] as const;

/** All foam on the bench in two geometries: skins (faces, then backs, in the order of the sculpt's triangles) and the cut faces between them. */
export class FoamBody {
  readonly skins: CornerSurface;
  readonly walls = new BufferGeometry();
  readonly patches: readonly FoamPatch[];
  /** Packed xyz per corner of the sculpt's triangles on the face side: a view into the skins. */
  readonly facePoints: Float32Array;
  /** Box round each patch where it is now. */
  readonly boxes: readonly Box3[];
  readonly hasBack: boolean;
  readonly #groups: ShadingGroups;
  readonly #groupNormals: Float32Array;
  readonly #half: number;
  readonly #wallStarts: Uint32Array;
  readonly #wallPoints: Float32Array;
  readonly #wallNormals: Float32Array;
  readonly #face: Float32Array;
  readonly #back: Float32Array;
  /** For rays, made of each patch with the first that comes near it. */
  readonly #runs: (TriangleRuns | undefined)[] = [];
  /** Patches whose runs were measured where they are now. */
  readonly #measured = new Set<number>();

  /**
   * @param triangleCount of the sculpt.
   * @param hasBack       false for a closed wall whose inside is never seen.
   */
  constructor(patches: readonly FoamPatch[], triangleCount: number, groups: ShadingGroups, hasBack: boolean) {
    this.patches = patches;
    this.#groups = groups;
    this.#groupNormals = new Float32Array(3 * groups.count);
    this.#half = 9 * triangleCount;
    this.hasBack = hasBack;
    this.skins = new CornerSurface((hasBack ? 6 : 3) * triangleCount);
    this.facePoints = this.skins.positions.subarray(0, this.#half);
    this.boxes = patches.map(() => new Box3());
    this.#wallStarts = new Uint32Array(patches.length + 1);
    patches.forEach((patch, i) => (this.#wallStarts[i + 1] = this.#wallStarts[i] + patch.borders.length));
    const wallCount = this.#wallStarts[patches.length];
    this.#wallPoints = new Float32Array(12 * wallCount);
    this.#wallNormals = new Float32Array(12 * wallCount);
    const index = new Uint32Array(6 * wallCount);
    for (let i = 0; i < wallCount; i += 1) index.set([4 * i, 4 * i + 1, 4 * i + 2, 4 * i, 4 * i + 2, 4 * i + 3], 6 * i);
    this.walls.setAttribute('position', new BufferAttribute(this.#wallPoints, 3).setUsage(DynamicDrawUsage));
    this.walls.setAttribute('normal', new BufferAttribute(this.#wallNormals, 3).setUsage(DynamicDrawUsage));
    this.walls.setIndex(new BufferAttribute(index, 1));
    this.walls.boundingSphere = new Sphere(undefined, Infinity);
    const most = patches.reduce((largest, { shape }) => Math.max(largest, shape.face.length), 0);
    this.#face = new Float32Array(most);
    this.#back = new Float32Array(most);
  }

  /** Brings patch `i` to where it is; {@link moved} must follow. Pauses only where one patch is very large. */
  async place(i: number, at: Whereabouts, work: Work): Promise<void> {
    const patch = this.patches[i];
    this.#measured.delete(i);
    patch.pose(at, this.#face, this.#back);
    await work.pause(0);
    await this.#skin(patch, work);
    await work.pause(0);
    this.#cutFaces(i);
    setBox(this.boxes[i], this.#face, this.#back, patch.shape.face.length);
    this.#measured.delete(i);
  }

  moved(): void {
    this.skins.moved();
    this.walls.getAttribute('position').needsUpdate = true;
    this.walls.getAttribute('normal').needsUpdate = true;
  }

  /**
   * The nearest triangle of the sculpt whose face or back a ray meets, and its patch; null when there is none.
   * @param direction of length 1.
   */
  hit(origin: Vector3, direction: Vector3): (RayHit & { readonly patch: number }) | null {
    const ray = new Ray(origin, direction);
    let hit: (RayHit & { readonly patch: number }) | null = null;
    for (let patch = 0; patch < this.patches.length; patch += 1) {
      if (!ray.intersectsBox(this.boxes[patch])) continue;
      const met = this.#runsOf(patch).hit(
        origin,
        direction,
        this.skins.positions,
        this.#sides,
        hit?.distance ?? Infinity,
      );
      if (met !== null) hit = { ...met, patch };
    }
    return hit;
  }

  /** How far the nearest skin is from a place, or `most` where none is nearer. */
  distanceTo(place: Vector3, most: number): number {
    let nearest = most;
    for (let patch = 0; patch < this.patches.length; patch += 1) {
      if (this.boxes[patch].distanceToPoint(place) < nearest)
        nearest = this.#runsOf(patch).distanceTo(place, this.skins.positions, this.#sides, nearest);
    }
    return nearest;
  }

  /** Where triangle 0 has its corners, on each side that is there. */
  get #sides(): readonly number[] {
    return this.hasBack ? [0, this.#half] : [0];
  }

  #runsOf(patch: number): TriangleRuns {
    const { meshTriangles, triangles, face } = this.patches[patch].shape;
    const runs = (this.#runs[patch] ??= new TriangleRuns(meshTriangles, triangles, face));
    if (!this.#measured.has(patch)) runs.measure(this.skins.positions, this.#sides);
    this.#measured.add(patch);
    return runs;
  }

  /** Paints both sides of triangle `t` of the sculpt, 0 to 255. */
  paint(t: number, r: number, g: number, b: number): void {
    this.skins.paint(t, r, g, b);
    if (this.hasBack) this.skins.paint(t + this.#half / 9, r, g, b);
  }

  dispose(): void {
    this.skins.dispose();
    this.walls.dispose();
  }

  async #skin(patch: FoamPatch, work: Work): Promise<void> {
    const { triangles, meshTriangles } = patch.shape;
    const { groupOfCorner } = this.#groups;
    const sums = this.#groupNormals;
    const { positions, normals } = this.skins;
    const [face, back, half] = [this.#face, this.#back, this.#half];
    for (let t = 0; t < meshTriangles.length; t += 1) {
      for (let k = 0; k < 3; k += 1) {
        const g = 3 * groupOfCorner[3 * meshTriangles[t] + k];
        sums[g] = sums[g + 1] = sums[g + 2] = 0;
      }
    }
    for (let t = 0; t < meshTriangles.length; t += 1) {
      if (t % 8192 === 8191) await work.pause(0);
      const [a, b, c] = [3 * triangles[3 * t], 3 * triangles[3 * t + 1], 3 * triangles[3 * t + 2]];
      const [ux, uy, uz] = [face[b] - face[a], face[b + 1] - face[a + 1], face[b + 2] - face[a + 2]];
      const [vx, vy, vz] = [face[c] - face[a], face[c + 1] - face[a + 1], face[c + 2] - face[a + 2]];
      const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
      for (let k = 0; k < 3; k += 1) {
        const g = 3 * groupOfCorner[3 * meshTriangles[t] + k];
        sums[g] += nx;
        sums[g + 1] += ny;
        sums[g + 2] += nz;
      }
    }
    for (let t = 0; t < meshTriangles.length; t += 1) {
      if (t % 8192 === 8191) await work.pause(0);
      const m = 3 * meshTriangles[t];
      for (let k = 0; k < 3; k += 1) {
        const v = 3 * triangles[3 * t + k];
        const g = 3 * groupOfCorner[m + k];
        const [x, y, z] = [sums[g], sums[g + 1], sums[g + 2]];
        const length = Math.sqrt(x * x + y * y + z * z) || 1;
        const at = 3 * (m + k);
        positions[at] = face[v];
        positions[at + 1] = face[v + 1];
        positions[at + 2] = face[v + 2];
        normals[at] = x / length;
        normals[at + 1] = y / length;
        normals[at + 2] = z / length;
        if (!this.hasBack) continue;
        const to = half + 3 * (m + BACK_CORNER[k]);
        positions[to] = back[v];
        positions[to + 1] = back[v + 1];
        positions[to + 2] = back[v + 2];
        normals[to] = -x / length;
        normals[to + 1] = -y / length;
        normals[to + 2] = -z / length;
      }
    }
  }

  /** Seen from outside, counter-clockwise: back start, back end, face end, face start. */
  #cutFaces(i: number): void {
    const { shape, borders } = this.patches[i];
    const points = this.#wallPoints;
    for (let j = 0; j < borders.length; j += 1) {
      const v = 3 * shape.triangles[borders[j]];
      const w = 3 * shape.triangles[cornerAfter(borders[j])];
      const at = 12 * (this.#wallStarts[i] + j);
      for (let k = 0; k < 3; k += 1) {
        points[at + k] = this.#back[v + k];
        points[at + 3 + k] = this.#back[w + k];
        points[at + 6 + k] = this.#face[w + k];
        points[at + 9 + k] = this.#face[v + k];
      }
      const along = new Vector3(
        points[at + 3] - points[at],
        points[at + 4] - points[at + 1],
        points[at + 5] - points[at + 2],
      );
      const up = new Vector3(
        points[at + 9] - points[at],
        points[at + 10] - points[at + 1],
        points[at + 11] - points[at + 2],
      );
      along.cross(up).normalize();
      for (let corner = 0; corner < 4; corner += 1) along.toArray(this.#wallNormals, at + 3 * corner);
    }
  }
}

function setBox(box: Box3, face: Float32Array, back: Float32Array, length: number): void {
  const { min, max } = box.makeEmpty();
  for (const points of [face, back]) {
    for (let i = 0; i < length; i += 3) {
      min.x = Math.min(min.x, points[i]);
      min.y = Math.min(min.y, points[i + 1]);
      min.z = Math.min(min.z, points[i + 2]);
      max.x = Math.max(max.x, points[i]);
      max.y = Math.max(max.y, points[i + 1]);
      max.z = Math.max(max.z, points[i + 2]);
    }
  }
}
