import type { FoamRules } from '../../model/foam-settings.ts';

/** The last stretch between marks is this many times the first, so that a piece put on end for end does not fit its marks. */
const GROWTH = 1.5;

/**
 * Where match marks stand along a seam, mm from its start on the true length: stretches grow evenly from the first to the last, none longer
 * than the rule allows (foam model 4: at most 80 mm apart, unequal). A closed seam has its first mark at its start, since it has no ends to
 * line up; an open one shorter than the rule's least has none.
 * @param lengthMm  true length of the seam, mm, > 0.
 * @param longestMm length of the longest seam that has its marks at the same places: a hair over this one's; rules are kept for that, mm.
 */
export function markStations(
  lengthMm: number,
  isClosed: boolean,
  rules: FoamRules,
  longestMm = lengthMm,
): readonly number[] {
  if (longestMm < rules.markLeastSeamMm) return isClosed ? [0] : [];
  const ends = stretches(lengthMm, fewestStretches(longestMm, 2, rules.markSpacingMm));
  return isClosed ? ends.slice(0, -1) : ends.slice(1, -1);
}

function fewestStretches(lengthMm: number, least: number, spacingMm: number): number {
  let count = least;
  while (lastStretch(lengthMm, count) > spacingMm) count += 1;
  return count;
}

/** Stretch `j` of `n` is as long as 1 + (GROWTH - 1) j / (n - 1), in parts of the whole. */
const part = (j: number, count: number): number => 1 + ((GROWTH - 1) * j) / (count - 1);

const lastStretch = (lengthMm: number, count: number): number => (lengthMm * GROWTH) / ((count * (1 + GROWTH)) / 2);

/** The ends of the stretches, from 0 to the whole length. */
function stretches(lengthMm: number, count: number): readonly number[] {
  const whole = (count * (1 + GROWTH)) / 2;
  const ends = [0];
  let sum = 0;
  for (let j = 0; j < count; j += 1) {
    sum += part(j, count);
    ends.push((lengthMm * sum) / whole);
  }
  return ends;
}
