/** Direction of an arrow key on the screen, y down. */
export const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

export interface Step {
  readonly edge: number;
  readonly to: number;
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Cosine of the widest angle between the arrow and an edge that still counts as that way: 75 degrees (judged by walking the samples). */
const WIDEST = Math.cos((75 * Math.PI) / 180);

/**
 * Which edge to walk for an arrow: the one whose direction on the screen lies nearest to the arrow's.
 * @param from    where the walker stands on the screen, px.
 * @param steps   edges that leave this corner.
 * @param screenOf place of a corner on the screen, px, y down; null when it is behind the camera.
 * @returns null when no edge leads that way, so that an arrow never walks backwards.
 */
export function stepTowards(
  from: Spot,
  arrow: readonly [number, number],
  steps: readonly Step[],
  screenOf: (corner: number) => Spot | null,
): Step | null {
  let best: Step | null = null;
  let bestCosine = WIDEST;
  for (const step of steps) {
    const to = screenOf(step.to);
    if (to === null) continue;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length === 0) continue;
    const cosine = ((to.x - from.x) * arrow[0] + (to.y - from.y) * arrow[1]) / length;
    if (cosine > bestCosine) {
      bestCosine = cosine;
      best = step;
    }
  }
  return best;
}
