import type { PieceId } from '../../base/ids.ts';
import type { ShopView } from '../../worker/shop-api.ts';

/** How a piece is warmed before it is glued, each sentence once, in the words of the build sheet. */
export function warmOf(shop: ShopView | null, piece: PieceId): readonly string[] {
  const texts = (shop?.gluing.steps ?? []).flatMap((step, i) =>
    step.warm.flatMap((warm, j) => (warm.piece === piece ? [shop!.steps[i].warm[j]] : [])),
  );
  return [...new Set(texts)];
}
