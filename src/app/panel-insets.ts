import type { BenchInsets } from '../viewport/bench-contract.ts';

/** Room for the row of what is chosen at the foot of the picture, px and share of its height: kept free always, so that a click on a piece moves nothing. */
const FOOT_PX = 130;
const FOOT_SHARE = 0.18;

/** How much of the picture lies under panels; nothing where they stand below it. */
export function insetsOf(stage: HTMLElement, lookRow: HTMLElement): BenchInsets {
  const [picture, row] = [stage, lookRow].map((part) => part.getBoundingClientRect());
  if (row.top >= picture.bottom) return { topPx: 0, bottomPx: 0 };
  return {
    topPx: Math.max(0, row.bottom - picture.top),
    bottomPx: Math.min(FOOT_PX, FOOT_SHARE * picture.height),
  };
}
