import { Memo } from '../base/memo.ts';
import { sharesOfWork, type Work } from '../base/work.ts';
import type { CutOffer, Patch } from '../model/patch.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import { easeOverlap, type LayTrial } from './ease-overlap.ts';
import type { FlattenCrew } from './flatten-crew.ts';
import type { FlatInput } from './lay-flat.ts';
import { wishesOfPatches } from './patch-wishes.ts';

/** Offers remembered: a maker goes a few steps back and forth over a few pieces that overlap. */
const KEPT = 32;

/** Finds for each piece that lies over itself the shortest cut that frees it; what was found for a flat piece is remembered. */
export class OverlapOffers {
  readonly #crew: FlattenCrew;
  readonly #known = new Memo<[FlatPiece], { readonly offer: CutOffer | null }>(KEPT);

  constructor(crew: FlattenCrew) {
    this.#crew = crew;
  }

  /**
   * @param flats  one for each patch of the cut.
   * @returns offers in the order of the patches.
   * @throws Cancelled when the work was called off.
   */
  async of(input: FlatInput, flats: readonly (FlatPiece | null)[], work: Work): Promise<readonly CutOffer[]> {
    const { patches } = input.cut;
    const overlapping = [...patches.keys()].filter((i) => (flats[i]?.overlapCount ?? 0) > 0);
    const shares = sharesOfWork(
      work,
      overlapping.map((i) => patches[i].meshTriangles.length),
    );
    const offers: CutOffer[] = [];
    for (const [n, i] of overlapping.entries()) {
      const flat = flats[i];
      const offer = flat === null ? null : await this.#offerFor(input, i, flat, shares[n]);
      // The piece may have had another number when its offer was found.
      if (offer !== null) offers.push({ ...offer, patch: i });
    }
    return offers;
  }

  async #offerFor(input: FlatInput, i: number, flat: FlatPiece, work: Work): Promise<CutOffer | null> {
    const known = this.#known.get([flat]);
    if (known !== undefined) return known.offer;
    const { patches, shells } = input.cut;
    const offer = await easeOverlap(i, patches[i], flat, shells[i].neutralPositions, this.#trial(input, i), work);
    return this.#known.set([flat], { offer }).offer;
  }

  /** Lays a part of a piece flat with the wishes of the whole; edges that other seams would have to be known for are let go. */
  #trial({ mesh, cut, part }: FlatInput, i: number): LayTrial {
    const positions = cut.shells[i].neutralPositions;
    return async (patch: Patch, look, work) => {
      const [{ options, key }] = wishesOfPatches(mesh, { patches: [patch], chains: [] }, [], part);
      const task = { patch, positions, options: { ...options, ...look }, wishes: `${look.quality} ${key}` };
      const result = await this.#crew.flatten(task, work);
      return result.ok ? result.value : null;
    };
  }
}
