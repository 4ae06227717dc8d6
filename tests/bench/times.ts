/** The value in the middle; of an even number the mean of the two. NaN of none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[(sorted.length - 1) >> 1] + sorted[sorted.length >> 1]) / 2;
}

/** A time in ms with three figures or more. */
export const msText = (ms: number): string => ms.toFixed(ms < 9.995 ? 2 : ms < 99.95 ? 1 : 0);

/** Median and spread of times in ms: `12.3 (11.9-14.0)`. */
export function timesText(times: readonly number[]): string {
  return `${msText(median(times))} (${msText(Math.min(...times))}-${msText(Math.max(...times))})`;
}

/** Median of the ratios of times taken in pairs: what else the machine did then weighs on both alike. */
export function medianRatio(times: readonly number[], beside: readonly number[]): number {
  return median(times.map((ms, i) => ms / beside[i]));
}
