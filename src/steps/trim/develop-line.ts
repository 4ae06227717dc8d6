import type { LineTurning } from './line-turning.ts';

/** A stretch of a line laid flat with its own turns, beginning at the origin along +x; not yet smooth. */
export interface DevelopedLine {
  /** Ways along the line at its corners, from the first to the last; of a closed line they may run past its length, or begin below 0. */
  readonly ways: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Direction after each corner, radians from +x. */
  readonly headings: Float64Array;
}

/**
 * Lays a stretch of a line flat.
 * @param fromMm @param toMm  ways along it; of a closed line any, from < to. Turns at both ends are left out.
 */
export function developLine(turning: LineTurning, fromMm: number, toMm: number): DevelopedLine {
  const { ways: at, turns, laid, line } = turning;
  const events: [number, number][] = [];
  const whole = laid.lengthMm;
  const firstRound = line.closed ? Math.floor(fromMm / whole) : 0;
  const lastRound = line.closed ? Math.floor(toMm / whole) : 0;
  for (let round = firstRound; round <= lastRound; round += 1)
    for (let i = 0; i < at.length; i += 1) {
      const way = at[i] + round * whole;
      if (way > fromMm && way < toMm) events.push([way, turns[i]]);
    }
  const count = events.length + 2;
  const [ways, x, y, headings] = [0, 1, 2, 3].map(() => new Float64Array(count));
  ways[0] = fromMm;
  for (let i = 1; i < count; i += 1) {
    const [way, turn] = i + 1 < count ? events[i - 1] : [toMm, 0];
    ways[i] = way;
    x[i] = x[i - 1] + (way - ways[i - 1]) * Math.cos(headings[i - 1]);
    y[i] = y[i - 1] + (way - ways[i - 1]) * Math.sin(headings[i - 1]);
    headings[i] = headings[i - 1] + turn;
  }
  return { ways, x, y, headings };
}

/** The part that holds a way, by the number of its first corner. */
export function partAt(ways: Float64Array, mm: number): number {
  let [from, to] = [0, ways.length - 1];
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if (ways[middle] <= mm) from = middle;
    else to = middle;
  }
  return from;
}

/** Place and direction of a developed line at a way. */
export function developedAt(
  { ways, x, y, headings }: DevelopedLine,
  mm: number,
): { readonly x: number; readonly y: number; readonly heading: number } {
  const i = partAt(ways, mm);
  const far = mm - ways[i];
  return { x: x[i] + far * Math.cos(headings[i]), y: y[i] + far * Math.sin(headings[i]), heading: headings[i] };
}
