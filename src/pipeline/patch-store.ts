import type { Mesh } from '../mesh/mesh.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { Patch } from '../model/patch.ts';
import { carryOver, countShared, type EarlierFlat } from '../steps/flatten/carry-over.ts';
import type { PartWishes } from '../steps/flatten/relax-part.ts';

interface Known {
  readonly patch: Patch;
  /** Flat results of this patch, the newest first, each with the surface it was made from and the wishes it was made by. */
  flats: { readonly surface: Float64Array; readonly wishes: string; readonly flat: FlatPiece | null }[];
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
 * (house style, section 2), and remembers their flat results.
 */
export class PatchStore {
  #mesh: Mesh | null = null;
  #known = new Map<string, Known[]>();
  #byPatch = new Map<Patch, Known>();
  /** What was laid flat last, the newest at the end, and the surface it was laid from. */
  readonly #lastLaid = new Set<Known>();
  #surface: Float64Array | null = null;
  #clock = 0;

  /** The patches with each one that is equal to an earlier one of the same mesh replaced by it; the same list where none is. */
  settle(mesh: Mesh, patches: readonly Patch[]): readonly Patch[] {
    if (mesh !== this.#mesh) {
      this.#mesh = mesh;
      this.#known.clear();
      this.#byPatch.clear();
      this.#lastLaid.clear();
      this.#surface = null;
    }
    this.#clock += 1;
    const settled = patches.map((patch) => this.#settleOne(patch));
    this.#forgetOld();
    return settled.every((patch, i) => patch === patches[i]) ? patches : settled;
  }

  /**
   * The flat piece made of this patch on this surface; undefined when it has not been made.
   * @param wishes  what was asked of the piece, in words that are equal when the wishes are.
   */
  flatOf(patch: Patch, surface: Float64Array, wishes: string): FlatPiece | null | undefined {
    return this.#byPatch.get(patch)?.flats.find((entry) => entry.surface === surface && entry.wishes === wishes)?.flat;
  }

  /**
   * Where to start from: the newest flat coordinates of this patch when only its surface or the wishes changed, else what earlier
   * patches of the same mesh, with which it shares triangles, lead to under these wishes. Undefined where there is no such start.
   */
  startFor(patch: Patch, wishes: PartWishes = {}): Float64Array | undefined {
    const own = this.#byPatch.get(patch)?.flats.find((entry) => entry.flat !== null)?.flat?.uv;
    if (own !== undefined || this.#surface === null) return own;
    return carryOver(patch, this.#surface, this.#earlierOf(patch), wishes) ?? undefined;
  }

  /** Flat patches that share triangles with this one, the last laid first: as many as it takes to have met most of its triangles. */
  #earlierOf(patch: Patch): EarlierFlat[] {
    const found: EarlierFlat[] = [];
    let met = 0;
    for (const { patch: other, flats } of [...this.#lastLaid].reverse()) {
      const flat = flats.find((entry) => entry.flat !== null)?.flat;
      const shared = flat === null || flat === undefined ? 0 : countShared(patch, other);
      if (flat === null || flat === undefined || shared === 0) continue;
      found.push({ patch: other, uv: flat.uv });
      met += shared;
      if (met >= patch.meshTriangles.length) break;
    }
    return found;
  }

  keep(patch: Patch, surface: Float64Array, wishes: string, flat: FlatPiece | null): void {
    const known = this.#byPatch.get(patch);
    if (known === undefined) throw new Error('keep: a patch that was never settled');
    known.flats = [{ surface, wishes, flat }, ...known.flats].slice(0, FLATS_PER_PATCH);
    this.#surface = surface;
    this.#lastLaid.delete(known);
    this.#lastLaid.add(known);
    const [oldest] = this.#lastLaid;
    if (this.#lastLaid.size > MOST_REMEMBERED_LAID) this.#lastLaid.delete(oldest);
  }

  #settleOne(patch: Patch): Patch {
    const key = `${patch.meshTriangles.length} ${patch.meshTriangles[0]} ${fold(patch.meshTriangles)} ${fold(patch.triangles)}`;
    const list = this.#known.get(key) ?? [];
    let known = list.find((entry) => samePatch(entry.patch, patch));
    if (known === undefined) {
      known = { patch, flats: [], lastUse: this.#clock };
      this.#known.set(key, [...list, known]);
      this.#byPatch.set(patch, known);
    }
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
 * Same triangles with the same local numbering, and the same loops: a slit of one edge inside a patch doubles no vertex and so leaves the
 * numbering as it was, but it is a loop of its own.
 */
function samePatch(a: Patch, b: Patch): boolean {
  return (
    sameNumbers(a.meshTriangles, b.meshTriangles) &&
    sameNumbers(a.triangles, b.triangles) &&
    a.loops.length === b.loops.length &&
    a.loops.every((loop, i) => sameNumbers(loop, b.loops[i]))
  );
}

function sameNumbers(a: Uint32Array, b: Uint32Array): boolean {
  return a.length === b.length && a.every((n, i) => n === b[i]);
}
