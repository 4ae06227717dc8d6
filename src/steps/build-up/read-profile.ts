import { fail, ok, type Result } from '../../base/result.ts';
import type { ProfileCorner } from '../../model/build-up.ts';
import { straightSpan, type Profile, type ProfileSpan } from './profile.ts';

/** More corners than this are a drawing gone wrong. */
const MOST_CORNERS = 200;

/** No prop is thicker, mm. */
const MOST_RADIUS_MM = 2000;

/** Stretches shorter than this, mm, are no stretch but a step that was typed badly. */
const SHORTEST_MM = 0.01;

/**
 * A profile from its corners. Smooth stretches run through their corners without ever passing the radius of both neighbours: cubic pieces whose
 * slope at a corner is the weighted harmonic mean of both chords, 0 where they differ in sign (Fritsch and Butland, A method for constructing local
 * monotone piecewise cubic interpolants, SIAM J. Sci. Stat. Comput. 5, 1984). Where a smooth stretch meets a straight one it takes its slope, as far
 * as it stays monotone.
 * @param coreRadius  mm; the profile may touch the core, never go inside it.
 * @param cut         length of the core, mm.
 * @returns an empty profile for no corners. Fails with `core/profile` or `core/inside-core`.
 */
export function readProfile(corners: readonly ProfileCorner[], coreRadius: number, cut: number): Result<Profile> {
  if (corners.length === 0) return ok([]);
  const fault = faultOf(corners, coreRadius, cut);
  if (fault !== null) return fail(fault.code, fault.text);
  const spans: ProfileSpan[] = [];
  for (let i = 0; i + 1 < corners.length; i += 1) {
    const [a, b] = [corners[i], corners[i + 1]];
    if (a.atMm === b.atMm) continue;
    if (a.onward !== 'smooth') spans.push(straightSpan(a.atMm, a.radiusMm, b.atMm, b.radiusMm));
    else spans.push(smoothSpan(a, b, cornerSlope(corners, i, i), cornerSlope(corners, i, i + 1)));
  }
  return ok(spans);
}

function faultOf(
  corners: readonly ProfileCorner[],
  coreRadius: number,
  cut: number,
): { readonly code: string; readonly text: string } | null {
  const wrong = (text: string) => ({ code: 'core/profile', text });
  if (corners.length < 2) return wrong('A profile needs two corners at least, as 0:20,300:24.');
  if (corners.length > MOST_CORNERS) return wrong(`A profile takes at most ${MOST_CORNERS} corners: leave some out.`);
  for (const [i, { atMm, radiusMm }] of corners.entries()) {
    if (!Number.isFinite(atMm) || !Number.isFinite(radiusMm) || radiusMm < 0 || radiusMm > MOST_RADIUS_MM)
      return wrong(`Corner ${i + 1} of the profile is no length and radius in mm up to ${MOST_RADIUS_MM}.`);
    if (atMm < 0 || atMm > cut)
      return wrong(
        `Corner ${i + 1} of the profile lies at ${short(atMm)} mm, off the core, which is cut to ${short(cut)} mm: lengths are measured from the core's start.`,
      );
    if (radiusMm < coreRadius)
      return {
        code: 'core/inside-core',
        text: `Corner ${i + 1} of the profile, ${short(radiusMm)} mm, lies inside the core, whose radius is ${short(coreRadius)} mm: make it larger, or take a thinner core.`,
      };
    if (i === 0) continue;
    const before = corners[i - 1];
    if (atMm < before.atMm)
      return wrong(`Corner ${i + 1} of the profile lies before the one before it: give them by ascending length.`);
    if (atMm === before.atMm && radiusMm === before.radiusMm)
      return wrong(`Corner ${i + 1} of the profile is the one before it again: leave it out.`);
    if (atMm === before.atMm && i > 1 && corners[i - 2].atMm === atMm)
      return wrong(`Three corners of the profile lie at ${short(atMm)} mm: a step has two.`);
    if (atMm > before.atMm && atMm - before.atMm < SHORTEST_MM)
      return wrong(
        `Corners ${i} and ${i + 1} of the profile are less than ${SHORTEST_MM} mm apart: put them at one length for a step.`,
      );
  }
  if (corners[0].atMm === corners[corners.length - 1].atMm) return wrong('The profile has no length.');
  return null;
}

/** Slope at corner `at`, one end of the smooth stretch that begins at corner `i`. */
function cornerSlope(corners: readonly ProfileCorner[], i: number, at: number): number {
  const own = chord(corners, i);
  const j = at === i ? i - 1 : i + 1;
  // At an end of the profile, and at a step, there is no neighbour to go along with.
  if (j < 0 || j + 1 >= corners.length || corners[j].atMm === corners[j + 1].atMm) return own.slope;
  const other = chord(corners, j);
  if (own.slope * other.slope <= 0) return 0;
  if (corners[j].onward !== 'smooth')
    return Math.sign(own.slope) * Math.min(Math.abs(other.slope), 3 * Math.abs(own.slope));
  const [w1, w2] = [2 * other.long + own.long, other.long + 2 * own.long];
  // The longer chord counts less: its slope says less about the corner.
  return (w1 + w2) / (w1 / own.slope + w2 / other.slope);
}

function chord(corners: readonly ProfileCorner[], i: number): { readonly slope: number; readonly long: number } {
  const long = corners[i + 1].atMm - corners[i].atMm;
  return { long, slope: (corners[i + 1].radiusMm - corners[i].radiusMm) / long };
}

function smoothSpan(a: ProfileCorner, b: ProfileCorner, m0: number, m1: number): ProfileSpan {
  const h = b.atMm - a.atMm;
  const rise = (b.radiusMm - a.radiusMm) / h;
  return {
    from: a.atMm,
    to: b.atMm,
    c: [a.radiusMm, m0, (3 * rise - 2 * m0 - m1) / h, (m0 + m1 - 2 * rise) / (h * h)],
  };
}

const short = (value: number): string => String(Number(value.toFixed(2)) + 0);
