import type { PieceId } from '../base/ids.ts';
import type { PiecesView } from '../model/bench-view.ts';
import { placesBy, countInPlace } from '../viewport/taken-apart.ts';
import type { ShopView } from '../worker/shop-api.ts';
import type { Bench } from './bench-state.ts';
import type { ViewState } from './view-state.ts';

/**
 * When each piece is glued, by its index: the number of the last step that puts it to others, 0 for what all others are put to. Units stay
 * together so, and within one what was glued later stands later.
 * @returns empty where it is not known how they are glued.
 */
export function gluedPlaces(shop: ShopView | null, pieces: PiecesView | null): readonly number[] {
  const steps = shop?.gluing.steps ?? [];
  if (pieces === null || steps.length === 0) return [];
  const [first, last] = [new Map<PieceId, number>(), new Map<PieceId, number>()];
  for (const { number, work, adds } of steps) {
    if (work === 'close') continue;
    for (const piece of adds.pieces) {
      if (!first.has(piece)) first.set(piece, number);
      last.set(piece, number);
    }
  }
  return pieces.pieces.map(({ id }) => (last.get(id) ?? 0) + (first.get(id) ?? 0) / (steps.length + 1));
}

/** How far the pieces on show are put together at this place of the slider. `last`: index of the piece in place that is glued last. */
export function putTogether(
  { pieces }: Bench,
  { gluing, look, prop, stage }: ViewState,
): { readonly some: number; readonly all: number; readonly last: number | null } {
  const glued = gluedPlaces(gluing.shop, pieces);
  const seen =
    look === 'prop' && prop !== null
      ? prop.plates.map(({ piece, order }) => ({ piece, at: glued[piece] ?? order }))
      : (pieces?.patches.slice(0, pieces.benchPatches) ?? [])
          .filter(({ piece }) => piece >= 0)
          .map(({ piece }) => ({ piece, at: glued[piece] ?? piece }));
  const places = placesBy(seen.map(({ at }) => at));
  const some = countInPlace(seen.length, Math.min(1, stage));
  return { some, all: seen.length, last: seen[places.indexOf(some - 1)]?.piece ?? null };
}
