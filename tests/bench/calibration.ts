/** Additions of the loop that stands for the speed of a machine, and the time they take on the one that the limits are meant for, s. */
const ADDITIONS = 1e8;
const USUAL_S = 0.1;

/** How many times as long as on the usual machine a plain loop takes here and now, and the sum it came to. */
export function slowness(): { readonly times: number; readonly sum: number } {
  const start = performance.now();
  let sum = 0;
  for (let i = 0; i < ADDITIONS; i += 1) sum += i % 7;
  return { times: (performance.now() - start) / 1000 / USUAL_S, sum };
}
