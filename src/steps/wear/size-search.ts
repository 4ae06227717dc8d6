/** Farthest from the present size that is looked at, as a factor either way. */
const FARTHEST = 16;

/** Steps of the search for two sizes with the wanted one between them, each by this factor. */
const STEP = 1.15;

/** The wanted figure is met to this, mm: far under what a tape shows. */
const NEAR_ENOUGH_MM = 1e-9;
const MOST_ROUNDS = 200;

/**
 * The size nearest to the present one at which a figure comes to what is wanted. Sizes are tried outward from 1, up and down in turn, until
 * two neighbours have the wanted figure between them; then halving and the secant share the work (the secant's guess is taken where it
 * halves the room at least every second time, else the middle), so that the search ends whatever the figure does in between.
 * @param figure  of a size, mm; null where it cannot be measured.
 * @returns null where no size within {@link FARTHEST} gives it.
 */
export function sizeFor(figure: (factor: number) => number | null, wanted: number): number | null {
  const miss = (factor: number): number | null => {
    const value = figure(factor);
    return value === null ? null : value - wanted;
  };
  const now = miss(1);
  if (now === 0) return 1;
  let [upper, above, lower, below] = [1, now, 1, now];
  for (let factor = STEP; factor <= FARTHEST; factor *= STEP) {
    const up = miss(factor);
    const found = crossing(miss, upper, above, factor, up);
    if (found !== null) return found;
    [upper, above] = [factor, up];
    const down = miss(1 / factor);
    const foundLower = crossing(miss, 1 / factor, down, lower, below);
    if (foundLower !== null) return foundLower;
    [lower, below] = [1 / factor, down];
  }
  return null;
}

/**
 * The root of `miss` between two places where it has unlike signs.
 * @returns null where it has not, or cannot be measured at either.
 */
export function crossing(
  miss: (x: number) => number | null,
  low: number,
  atLow: number | null,
  high: number,
  atHigh: number | null,
): number | null {
  if (atLow === null || atHigh === null || atLow > 0 === atHigh > 0) return null;
  let [a, fa, b, fb] = [low, atLow, high, atHigh];
  let isSecant = true;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const middle = (a + b) / 2;
    const guess = a - (fa * (b - a)) / (fb - fa);
    const x: number = isSecant && guess > a && guess < b ? guess : middle;
    if (x === a || x === b) break;
    const fx = miss(x);
    if (fx === null) return null;
    if (Math.abs(fx) <= NEAR_ENOUGH_MM) return x;
    const before = b - a;
    if (fx > 0 === fa > 0) [a, fa] = [x, fx];
    else [b, fb] = [x, fx];
    isSecant = !isSecant || b - a <= before / 2;
  }
  // A figure that jumps over what is wanted has no root.
  if (Math.min(Math.abs(fa), Math.abs(fb)) > JUMP_MM) return null;
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}

/** Over this a figure jumps rather than runs through the wanted value, mm. */
const JUMP_MM = 1e-3;
