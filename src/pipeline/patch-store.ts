import type { Mesh } from '../mesh/mesh.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { Patch } from '../model/patch.ts';
import { carryOver, countShared, type EarlierFlat } from '../steps/flatten/carry-over.ts';
import type { PartWishes } from '../steps/flatten/relax-part.ts';

interface FlatResult {
  /** The surface it was made from, and which of its vertices are the patch's. */
  readonly surface: Float64Array;
  readonly vertices: Uint32Array;
  readonly wishes: string;
  readonly flat: FlatPiece | null;
}

interface Known {
  readonly patch: Patch;
  /** The mesh it was met on last. */
  mesh: Mesh;
  /** Flat results of this patch, the newest first; patches that are alike but for the numbers of the mesh share them. */
  readonly flats: { list: FlatResult[] };
  lastUse: number;
}

/** Flat results kept for one patch: a maker compares two or three thicknesses. */
const FLATS_PER_PATCH = 4;

/** Patches kept for one mesh: enough for a long row of undo steps. */
const MOST_PATCHES = 4000;

/** Patches laid last among which a start for a changed one is looked for: a sculpt's pieces, a few times over. */
const MOST_REMEMBERED_LAID = 200;

/**
 * Gives a patch that was seen before its old object back, so that a change to one seam leaves all other pieces as they were
 * (house style, section 2), and remembers their flat results. Also across meshes of one sculpt that are cut along other lines: where only the
 * numbers of the mesh differ, the patch is another object but its flat results are known.
 */
export class PatchStore {
  #sculpt: Mesh | null = null;
  #mesh: Mesh | null = null;
  #known = new Map<string, Known[]>();
  #byPatch = new Map<Patch, Known>();
  /** What was laid flat last, the newest at the end. */
  readonly #lastLaid = new Set<Known>();
  #clock = 0;

  /**
   * The patches with each one that is equal to an earlier one replaced by it; the same list where none is.
   * @param sculpt  what the mesh was cut from: of another sculpt nothing is known.
   */
  settle(mesh: Mesh, patches: readonly Patch[], sculpt: Mesh = mesh): readonly Patch[] {
    if (sculpt !== this.#sculpt) {
      this.#sculpt = sculpt;
      this.#known.clear();
      this.#byPatch.clear();
      this.#lastLaid.clear();
    }
    this.#mesh = mesh;
    this.#clock += 1;
    const settled = patches.map((patch) => this.#settleOne(mesh, patch));
    this.#forgetOld();
    return settled.every((patch, i) => patch === patches[i]) ? patches : settled;
  }

  /**
   * The flat piece made of this patch on this surface; undefined when it has not been made.
   * @param wishes      what was asked of the piece, in words that are equal when the wishes are.
   * @param isByPlaces  false where more than the places of the surface counts: then it must be the very surface.
   */
  flatOf(patch: Patch, surface: Float64Array, wishes: string, isByPlaces = true): FlatPiece | null | undefined {
    const { meshVertices } = patch;
    return this.#byPatch
      .get(patch)
      ?.flats.list.find(
        (entry) =>
          entry.wishes === wishes &&
          (entry.surface === surface
            ? sameNumbers(entry.vertices, meshVertices)
            : isByPlaces && samePlaces(entry.surface, entry.vertices, surface, meshVertices)),
      )?.flat;
  }

  /**
   * Where to start from: the newest flat coordinates of this patch when only its surface or the wishes changed, else what earlier
   * patches of the same sculpt, with which it shares triangles, lead to under these wishes. Undefined where there is no such start.
   */
  startFor(patch: Patch, surface: Float64Array, wishes: PartWishes = {}): Float64Array | undefined {
    const own = this.#byPatch.get(patch)?.flats.list.find((entry) => entry.flat !== null)?.flat?.uv;
    return own ?? carryOver(patch, surface, this.#earlierOf(patch), wishes) ?? undefined;
  }

  /** Flat patches that share triangles with this one, the last laid first: as many as it takes to have met most of its triangles. */
  #earlierOf(patch: Patch): EarlierFlat[] {
    const found: EarlierFlat[] = [];
    let met = 0;
    for (const known of [...this.#lastLaid].reverse()) {
      const flat = known.flats.list.find((entry) => entry.flat !== null)?.flat;
      if (flat === null || flat === undefined || this.#mesh === null) continue;
      const other = known.mesh === this.#mesh ? known.patch : patchOnMesh(known.patch, known.mesh, this.#mesh);
      const shared = countShared(patch, other);
      if (shared === 0) continue;
      found.push({ patch: other, uv: flat.uv });
      met += shared;
      if (met >= patch.meshTriangles.length) break;
    }
    return found;
  }

  keep(patch: Patch, surface: Float64Array, wishes: string, flat: FlatPiece | null): void {
    const known = this.#byPatch.get(patch);
    if (known === undefined) throw new Error('keep: a patch that was never settled');
    const { flats } = known;
    flats.list = [{ surface, vertices: patch.meshVertices, wishes, flat }, ...flats.list].slice(0, FLATS_PER_PATCH);
    this.#lastLaid.delete(known);
    this.#lastLaid.add(known);
    const [oldest] = this.#lastLaid;
    if (this.#lastLaid.size > MOST_REMEMBERED_LAID) this.#lastLaid.delete(oldest);
  }

  #settleOne(mesh: Mesh, patch: Patch): Patch {
    const key = `${patch.meshTriangles.length} ${patch.meshVertices.length} ${fold(patch.triangles)}`;
    const list = this.#known.get(key) ?? [];
    const alike = list.filter((entry) => isAlike(entry, mesh, patch));
    let known = alike.find((entry) => sameNumbering(entry.patch, patch));
    if (known === undefined) {
      known = { patch, mesh, flats: alike.at(0)?.flats ?? { list: [] }, lastUse: this.#clock };
      this.#known.set(key, [...list, known]);
      this.#byPatch.set(patch, known);
    }
    known.mesh = mesh;
    known.lastUse = this.#clock;
    return known.patch;
  }

  #forgetOld(): void {
    if (this.#byPatch.size <= MOST_PATCHES) return;
    const old = [...this.#byPatch.values()]
      .sort((a, b) => a.lastUse - b.lastUse)
      .slice(0, this.#byPatch.size - MOST_PATCHES / 2);
    const gone = new Set(old.filter((entry) => entry.lastUse < this.#clock));
    for (const entry of gone) {
      this.#byPatch.delete(entry.patch);
      this.#lastLaid.delete(entry);
    }
    for (const [key, list] of this.#known) {
      const left = list.filter((entry) => !gone.has(entry));
      if (left.length === 0) this.#known.delete(key);
      else this.#known.set(key, left);
    }
  }
}

/** A short sum over the numbers, so that unlike patches rarely share a key (FNV-1a, 32 bits). */
function fold(numbers: Uint32Array): number {
  let hash = 0x811c9dc5;
  for (const n of numbers) hash = Math.imul(hash ^ n, 0x01000193);
  return hash >>> 0;
}

/**
 * Same triangles in the same places with the same local numbering, and the same loops: a slit of one edge inside a patch doubles no vertex and
 * so leaves the numbering as it was, but it is a loop of its own.
 */
function isAlike({ patch, mesh }: Known, otherMesh: Mesh, other: Patch): boolean {
  return (
    sameNumbers(patch.triangles, other.triangles) &&
    patch.loops.length === other.loops.length &&
    patch.loops.every((loop, i) => sameNumbers(loop, other.loops[i])) &&
    (mesh === otherMesh
      ? sameNumbers(patch.meshVertices, other.meshVertices)
      : samePlaces(mesh.positions, patch.meshVertices, otherMesh.positions, other.meshVertices))
  );
}

const sameNumbering = (a: Patch, b: Patch): boolean =>
  sameNumbers(a.meshTriangles, b.meshTriangles) && sameNumbers(a.meshVertices, b.meshVertices);

function sameNumbers(a: Uint32Array, b: Uint32Array): boolean {
  return a === b || (a.length === b.length && a.every((n, i) => n === b[i]));
}

/** True where listed vertices lie in the same places of two surfaces, to the last bit. */
function samePlaces(p: Float64Array, ofP: Uint32Array, q: Float64Array, ofQ: Uint32Array): boolean {
  if (ofP.length !== ofQ.length) return false;
  for (let i = 0; i < ofP.length; i += 1) {
    const [v, w] = [3 * ofP[i], 3 * ofQ[i]];
    if (p[v] !== q[w] || p[v + 1] !== q[w + 1] || p[v + 2] !== q[w + 2]) return false;
  }
  return true;
}

/**
 * A patch of a mesh in the numbers of another one of the same sculpt: a triangle that both have, corner by corner in the same places, keeps its
 * number; the others are given numbers that the other mesh has not. The order of the triangles changes with their numbers.
 */
function patchOnMesh(patch: Patch, mesh: Mesh, other: Mesh): Patch {
  const count = other.triangles.length / 3;
  const isShared = (t: number): boolean => {
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      const [v, w] = [3 * mesh.triangles[h], 3 * other.triangles[h]];
      for (let axis = 0; axis < 3; axis += 1) if (mesh.positions[v + axis] !== other.positions[w + axis]) return false;
    }
    return true;
  };
  const shared = new Uint8Array(patch.meshTriangles.length);
  patch.meshTriangles.forEach((t, i) => (shared[i] = t < count && isShared(t) ? 1 : 0));
  const order = [...shared.keys()].sort((i, j) => shared[j] - shared[i] || i - j);
  return {
    ...patch,
    meshTriangles: Uint32Array.from(order, (i) => (shared[i] === 1 ? patch.meshTriangles[i] : count + i)),
    triangles: Uint32Array.from(order.flatMap((i) => [...patch.triangles.subarray(3 * i, 3 * i + 3)])),
  };
}
