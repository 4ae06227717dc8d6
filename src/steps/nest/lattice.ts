import { ringArea } from '../../geom/ring.ts';

/** Whole numbers up to this, about 2^24.8: then every side-of-a-line test in plain arithmetic is exact. */
export const MOST_STEPS = 3e7;

/**
 * Steps per unit for numbers up to `reach`: a power of ten, so that what is written with few decimals stays exact.
 * @param reach largest length that will occur, > 0.
 */
export const stepsPerUnit = (reach: number): number => 10 ** Math.floor(Math.log10(MOST_STEPS / reach));

/**
 * A ring on the lattice: whole steps, without corners on one spot or on a straight line, running as asked.
 * @param isHole  true for clockwise.
 * @returns fewer than three corners where nothing is left.
 */
export function latticeRing(ring: ArrayLike<number>, perUnit: number, isHole: boolean): Float64Array {
  const whole: number[] = [];
  for (let i = 0; i < ring.length; i += 2) whole.push(Math.round(ring[i] * perUnit), Math.round(ring[i + 1] * perUnit));
  const kept = withoutIdle(whole);
  const isClockwise = ringArea(kept) < 0;
  if (isClockwise === isHole) return Float64Array.from(kept);
  const out = new Float64Array(kept.length);
  for (let i = 0; i < kept.length; i += 2) {
    out[i] = kept[kept.length - 2 - i];
    out[i + 1] = kept[kept.length - 1 - i];
  }
  return out;
}

/** Takes out corners that change nothing: on the spot of a neighbour, or on the straight line between both. */
function withoutIdle(ring: readonly number[]): number[] {
  let kept = [...ring];
  for (let before = -1; before !== kept.length;) {
    before = kept.length;
    const next: number[] = [];
    for (let i = 0; i < kept.length; i += 2) {
      const [px, py] = next.length > 0 ? next.slice(-2) : kept.slice(-2);
      const j = (i + 2) % kept.length;
      const turn = (kept[i] - px) * (kept[j + 1] - py) - (kept[i + 1] - py) * (kept[j] - px);
      if (turn !== 0) next.push(kept[i], kept[i + 1]);
    }
    kept = next;
  }
  return kept;
}
