import type { BenchInsets } from '../viewport/bench-contract.ts';

/** Room for the row of what is chosen at the foot of the picture, px and share of its height: kept free always, so that a click on a piece moves nothing. */
const FOOT_PX = 130;
const FOOT_SHARE = 0.18;

/**
 * How much of the picture lies under panels; nothing where they stand below it.
 * @param above  panels over its top; one that shows nothing counts for nothing. @param foot  the panel over its foot, which may need more room.
 */
export function insetsOf(stage: HTMLElement, above: readonly HTMLElement[], foot: HTMLElement): BenchInsets {
  const picture = stage.getBoundingClientRect();
  const rows = above.map((part) => part.getBoundingClientRect()).filter(({ height }) => height > 0);
  if (rows.some(({ top }) => top >= picture.bottom)) return { topPx: 0, bottomPx: 0 };
  const { top, height } = foot.getBoundingClientRect();
  const takenPx = height > 0 && top < picture.bottom ? picture.bottom - top : 0;
  return {
    topPx: Math.max(0, ...rows.map(({ bottom }) => bottom - picture.top)),
    bottomPx: Math.max(takenPx, Math.min(FOOT_PX, FOOT_SHARE * picture.height)),
  };
}
