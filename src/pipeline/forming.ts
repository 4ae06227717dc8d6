import { shareOfWork, type Work } from '../base/work.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { Patch } from '../model/patch.ts';
import { formingFiguresOf } from '../steps/flatten/forming-figures.ts';

/**
 * Adds to flat pieces what they mean to the maker: worst spots and the least ratio of any laying flat. Done after laying flat, so that
 * the shape itself is not kept waiting; a piece that was seen before gets the same object back.
 */
export class Forming {
  readonly #known = new WeakMap<FlatPiece, FlatPiece>();

  /**
   * @param flats      one for each patch.
   * @param corners    for each patch those of its triangles, where they are not the surface's.
   * @param surfaces   for each patch the surface it was laid flat from, x y z per mesh vertex, mm.
   * @throws Cancelled when the work was called off.
   */
  async of(
    patches: readonly Patch[],
    flats: readonly (FlatPiece | null)[],
    surfaces: readonly Float64Array[],
    corners: readonly (Float64Array | undefined)[],
    work: Work,
  ): Promise<readonly (FlatPiece | null)[]> {
    const told: (FlatPiece | null)[] = [];
    for (const [i, flat] of flats.entries()) {
      const share = shareOfWork(work, i / flats.length, (i + 1) / flats.length);
      await share.pause(0);
      told.push(flat === null ? null : await this.#told(patches[i], flat, surfaces[i], corners[i], share));
    }
    return told;
  }

  async #told(
    patch: Patch,
    flat: FlatPiece,
    positions: Float64Array,
    corners: Float64Array | undefined,
    work: Work,
  ): Promise<FlatPiece> {
    const known = this.#known.get(flat);
    if (known !== undefined) return known;
    const told = { ...flat, ...(await formingFiguresOf(patch, positions, flat, work, corners)) };
    this.#known.set(flat, told);
    return told;
  }
}
