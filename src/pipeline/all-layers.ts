import { Memo } from '../base/memo.ts';
import type { DryFit } from '../model/dry-fit.ts';
import type { FoamPiece, FoamSeam } from '../model/foam-piece.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import type { Springing } from '../model/springing.ts';
import { dryFitOf } from '../steps/dryfit/dry-fit.ts';
import { byPull } from '../steps/dryfit/springing.ts';
import { remembered } from './remembered.ts';
import type { LayerRun } from './sculpt-run.ts';

/** Results kept: a maker goes a few steps back and forth. */
const KEPT = 8;

/**
 * What the sheets of a part are together. The same parts give the same object again, and a single sheet its own, so that what follows is
 * known by identity.
 */
export class AllLayers {
  readonly #pieces = new Memo<(readonly FoamPiece[])[], readonly FoamPiece[]>(KEPT);
  readonly #seams = new Memo<(readonly FoamSeam[])[], readonly FoamSeam[]>(KEPT);
  readonly #dryFits = new Memo<DryFit[], DryFit>(KEPT);
  readonly #springings = new Memo<Springing[], Springing>(KEPT);
  readonly #walls = new Memo<ShellLayer[], ShellLayer>(KEPT);

  pieces(layers: readonly LayerRun[]): readonly FoamPiece[] | null {
    return together(
      this.#pieces,
      layers,
      ({ pieces }) => pieces,
      (all) => all.flat(),
    );
  }

  seams(layers: readonly LayerRun[]): readonly FoamSeam[] | null {
    return together(
      this.#seams,
      layers,
      ({ seams }) => seams,
      (all) => all.flat(),
    );
  }

  dryFit(layers: readonly LayerRun[]): DryFit | null {
    return together(this.#dryFits, layers, ({ dryFit }) => dryFit, dryFitOfAll);
  }

  springing(layers: readonly LayerRun[]): Springing | null {
    return together(this.#springings, layers, ({ springing }) => springing, springingOfAll);
  }

  /** The wall as one sheet: from the back of the innermost to the face of the outermost. */
  wall(shells: readonly ShellLayer[]): ShellLayer {
    if (shells.length === 1) return shells[0];
    return remembered(this.#walls, [...shells], () => {
      const [outer, inner] = [shells[0], shells[shells.length - 1]];
      const { backMm } = inner;
      // A sheet with seams of its own has more vertices, behind those of the sculpt.
      const backPositions = inner.backPositions.subarray(0, outer.backPositions.length);
      return { ...outer, backMm, backPositions, thicknessMm: outer.backMm + outer.thicknessMm - backMm };
    });
  }
}

/** How the pieces of several sheets or sculpts meet. */
export const dryFitOfAll = (all: readonly DryFit[]): DryFit =>
  dryFitOf(
    all.flatMap(({ perSeam }) => perSeam),
    all.flatMap(({ corners }) => corners).sort((p, q) => q.overlapMm - p.overlapMm),
  );

/** What the joints of several sheets or sculpts carry. */
export const springingOfAll = (all: readonly Springing[]): Springing => ({
  pieces: all.flatMap(({ pieces }) => pieces),
  seams: byPull(all.flatMap(({ seams }) => seams)),
});

/** Null while one of the sheets has none. */
function together<T>(
  memo: Memo<T[], T>,
  layers: readonly LayerRun[],
  of: (layer: LayerRun) => T | null,
  sum: (all: T[]) => T,
): T | null {
  const all = layers.map(of).filter((one) => one !== null);
  if (all.length === 0 || all.length < layers.length) return null;
  return all.length === 1 ? all[0] : remembered(memo, all, () => sum(all));
}
