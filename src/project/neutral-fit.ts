import { fail, ok, type Result } from '../base/result.ts';
import type { NeutralFit, NeutralReading, NeutralTest } from '../model/neutral-test.ts';

/** Standard error of a length read off a tape measure laid round or along, mm [J]. */
const TAPE_ERROR_MM = 0.5;
/** Standard error of a thickness or diameter taken with a calliper on foam or tube, mm [J]. */
const CALLIPER_ERROR_MM = 0.1;
/** A reading that far from the others, in its own standard errors, stands apart. */
const APART_ERRORS = 3;
/** Coverage factor for about 95 in 100 (JCGM 100:2008, 6.3.3). */
const COVERAGE = 2;

/** One reading's k and how it depends on what was measured. */
interface Single {
  readonly k: number;
  /** Variance from what was measured for this reading alone: arc and diameter. */
  readonly own: number;
  /** Slope of k along the strip's length, which all readings share. */
  readonly perLength: number;
}

/**
 * The neutral fraction of a foam from strips bent round mandrels. The neutral surface keeps the strip's length `L`, so round a diameter `d`
 * an arc `s` of the mandrel lies under it with `L = s (d/2 + k t) / (d/2)`, or `k = (L/s - 1) d / 2t`.
 *
 * Errors are carried on by the slopes of that formula (JCGM 100:2008, equation 10). Readings are weighed by what is their own; where they
 * differ by more than that explains, the error is made larger by the ratio found (Birge 1932). What they share, length and thickness,
 * is added once.
 * @returns fails with `neutral/none` without a reading, `neutral/reading` for an impossible one, and `neutral/outside` where k does not lie
 *          in the foam.
 */
export function fitNeutral({ lengthMm, thicknessMm, readings }: NeutralTest): Result<NeutralFit> {
  if (!(lengthMm > 0 && thicknessMm > 0) || readings.length === 0) {
    return fail('neutral/none', 'Type the length and thickness of the strip and at least one bend.');
  }
  for (const [i, reading] of readings.entries()) {
    const wrong = whatIsWrong(reading, lengthMm);
    if (wrong !== null) return fail('neutral/reading', `Bend ${i + 1} ${wrong}.`);
  }
  const singles = readings.map((reading) => singleOf(reading, lengthMm, thicknessMm));
  const weights = singles.map(({ own }) => 1 / own);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (of: (single: Single) => number): number =>
    singles.reduce((sum, single, i) => sum + weights[i] * of(single), 0) / total;
  const k = mean((single) => single.k);
  const square = singles.reduce((sum, single, i) => sum + weights[i] * (single.k - k) ** 2, 0);
  const birge = singles.length > 1 ? Math.max(1, square / (singles.length - 1)) : 1;
  const shared = (mean(({ perLength }) => perLength) * TAPE_ERROR_MM) ** 2;
  const ofThickness = ((k / thicknessMm) * CALLIPER_ERROR_MM) ** 2;
  const plusMinus = COVERAGE * Math.sqrt(birge / total + shared + ofThickness);
  if (!(k + plusMinus >= 0 && k - plusMinus <= 1)) {
    return fail(
      'neutral/outside',
      `These bends put the neutral surface outside the foam (k ${k.toFixed(2)}): measure the flat strip again, and the arc under the foam, not over it.`,
    );
  }
  // Held against the middle one, which a single wrong reading does not draw away.
  const middle = singles.map((single) => single.k).sort((a, b) => a - b)[Math.floor(singles.length / 2)];
  const apart = singles.flatMap((single, i) =>
    singles.length > 2 && Math.abs(single.k - middle) > APART_ERRORS * Math.sqrt(single.own) ? [i] : [],
  );
  return ok({ k: Math.min(1, Math.max(0, k)), plusMinus, each: singles.map((single) => single.k), apart });
}

function whatIsWrong({ mandrelMm, arcMm }: NeutralReading, lengthMm: number): string | null {
  if (!(mandrelMm > 0 && arcMm > 0)) return 'needs a diameter and an arc';
  if (arcMm > Math.PI * mandrelMm + COVERAGE * TAPE_ERROR_MM) {
    return `says that ${arcMm} mm of a tube of ${mandrelMm} mm were covered, but it is only ${(Math.PI * mandrelMm).toFixed(1)} mm round: take a thicker tube or a shorter strip`;
  }
  if (arcMm > lengthMm + COVERAGE * TAPE_ERROR_MM) {
    return `covers ${arcMm} mm, more than the ${lengthMm} mm of the flat strip: measure under the foam, on the tube`;
  }
  return null;
}

function singleOf({ mandrelMm: d, arcMm: s }: NeutralReading, length: number, t: number): Single {
  const share = length / s - 1;
  const perArc = (-length * d) / (2 * t * s * s);
  const perDiameter = share / (2 * t);
  return {
    k: (share * d) / (2 * t),
    own: (perArc * TAPE_ERROR_MM) ** 2 + (perDiameter * CALLIPER_ERROR_MM) ** 2,
    perLength: d / (2 * t * s),
  };
}
