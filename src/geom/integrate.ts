/** Places and weights of Gauss and Legendre's rule with eight points on -1 to 1 (Abramowitz and Stegun, table 25.4). */
const PLACES = [0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363];
const WEIGHTS = [0.362683783378362, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

/** The integral of a function over one stretch, by eight points. */
export function gauss8(f: (t: number) => number, from: number, to: number): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  let sum = 0;
  for (let i = 0; i < 4; i += 1) sum += WEIGHTS[i] * (f(middle - half * PLACES[i]) + f(middle + half * PLACES[i]));
  return sum * half;
}

/** Halvings at most: a stretch is then 1e-12 of the whole. */
const MOST_HALVINGS = 40;
/** Share of the whole that a stretch may be off. */
const TOLERANCE = 1e-13;

/** The integral of a function that is smooth but for a few places, to about 1e-12 of itself: stretches are halved until both halves add up to them. */
export function integrate(f: (t: number) => number, from: number, to: number): number {
  const whole = gauss8(f, from, to);
  const scale = Math.abs(gauss8((t) => Math.abs(f(t)), from, to));
  const part = (a: number, b: number, sum: number, left: number): number => {
    const middle = (a + b) / 2;
    const [low, high] = [gauss8(f, a, middle), gauss8(f, middle, b)];
    if (left === 0 || Math.abs(low + high - sum) <= TOLERANCE * scale) return low + high;
    return part(a, middle, low, left - 1) + part(middle, b, high, left - 1);
  };
  return part(from, to, whole, MOST_HALVINGS);
}

/**
 * Running integral from `from` on, for many questions at once: it is tabled over equal steps, and what is over is taken by eight points.
 * @param steps  stretches over which the function is as good as a polynomial of degree 15.
 */
export function runningIntegral(
  f: (t: number) => number,
  from: number,
  to: number,
  steps: number,
): (t: number) => number {
  const step = (to - from) / steps;
  const table = new Float64Array(steps + 1);
  for (let i = 0; i < steps; i += 1) table[i + 1] = table[i] + gauss8(f, from + i * step, from + (i + 1) * step);
  return (t) => {
    const i = Math.min(steps, Math.max(0, Math.round((t - from) / step)));
    const at = from + i * step;
    return table[i] + (t === at ? 0 : gauss8(f, at, t));
  };
}
