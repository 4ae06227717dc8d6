import { fail, ok, type Result } from '../../base/result.ts';
import { runningIntegral } from '../../geom/integrate.ts';
import type { WindingWish } from '../../model/build-up.ts';
import { bendAt, radiusAt, slopeAt, spansIn, type Profile, type ProfileSpan } from './profile.ts';

/** The strip at one place of its stretch; lengths mm, angles radians. */
export interface WindingPlace {
  /** Of the neutral surface of the strip, from the axis. */
  readonly radius: number;
  /** Between the strip and a circle round the core, over 0, under a quarter turn. */
  readonly lead: number;
  /** How far round the core a mm along the core brings it, radians/mm. */
  readonly turnPerMm: number;
  /** Length of strip for a mm along the core. */
  readonly stripPerMm: number;
  /** Curvature of the strip in its own plane when it is laid flat, 1/mm, to the side of the core's end > 0. */
  readonly curvature: number;
}

/** Part of a path over one span of the profile. */
export interface WindingPart {
  readonly from: number;
  readonly to: number;
  readonly at: (x: number) => WindingPlace;
  /** Run through from the start of the part: round the core, radians, and along the strip, mm. */
  readonly turned: (x: number) => number;
  readonly run: (x: number) => number;
}

/** A path from end to end; what was run through before each part. */
export interface WindingPath {
  readonly parts: readonly (WindingPart & { readonly turnedBefore: number; readonly runBefore: number })[];
  readonly turned: number;
  readonly stripMm: number;
}

/** Turns at most: marks and lines for more are of no use to hands. */
export const MOST_TURNS = 1000;

/** A step in the profile higher than this, mm, is none that a strip lies over. */
const MOST_STEP_MM = 0.05;

/** The strip must not run steeper than this, radians: beyond it lies nearly along the core and never gets round. */
const MOST_LEAD = (85 * Math.PI) / 180;

/** Tables hold so many places for each turn and each part at least. */
const PLACES_PER_TURN = 6;
const LEAST_PLACES = 48;

interface Ground {
  readonly radius: number;
  /** dr / ds along the slant. */
  readonly sin: number;
  /** Slant for a mm along the core, on the strip's neutral surface. */
  readonly slantPerMm: number;
}

/**
 * The middle line of a strip on the profile, raised to the strip's neutral surface by k t along the normal: radius r + k t cos(slope), slant
 * sqrt(1 + r'²) (1 + k t / R) with R the radius of the profile's own bend. What is kept decides the lead angle at each place:
 *
 *   pitch p:    tan(lead) = slant per mm · p / (2 pi r)
 *   overlap o:  sin(lead) = starts (w - o) / (2 pi r)
 *   straight:   r cos(lead) = const, a geodesic of a surface of revolution (Clairaut)
 *
 * Turns and length are integrals along the core. In its own plane the strip bends by d lead / dl - sin(slope) cos(lead) / r (Liouville).
 * @returns fails with `core/winding`.
 */
export function windingPath(profile: Profile, wish: WindingWish): Result<WindingPath> {
  const { fromMm, toMm, thicknessMm, neutralFraction } = wish;
  const pieces = spansIn(profile, { from: fromMm, to: toMm });
  for (let i = 1; i < pieces.length; i += 1) {
    const step = radiusAt(pieces[i].span, pieces[i].from) - radiusAt(pieces[i - 1].span, pieces[i - 1].to);
    if (Math.abs(step) > MOST_STEP_MM)
      return fail(
        'core/winding',
        `A strip cannot lie over the step of ${Math.abs(step).toFixed(1)} mm at ${pieces[i].from.toFixed(1)} mm: wind each side of it by itself.`,
      );
  }
  const out = neutralFraction * thicknessMm;
  const groundOf = (span: ProfileSpan, x: number): Ground => {
    const slope = slopeAt(span, x);
    const cos = 1 / Math.hypot(1, slope);
    // Convex to the outside where r'' < 0: there a strip over it runs a longer way.
    const bend = -bendAt(span, x) * cos ** 3;
    return { radius: radiusAt(span, x) + out * cos, sin: slope * cos, slantPerMm: (1 + out * bend) / cos };
  };
  const first = groundOf(pieces[0].span, fromMm);
  const lead = leadLaw(wish, first);
  if (!lead.ok) return lead;
  const parts: (WindingPart & { turnedBefore: number; runBefore: number })[] = [];
  let [turned, run] = [0, 0];
  for (const { from, to, span } of pieces) {
    const placeAt = (x: number): WindingPlace => {
      const ground = groundOf(span, x);
      const here = lead.value(ground);
      const stripPerMm = ground.slantPerMm / Math.sin(here);
      return {
        radius: ground.radius,
        lead: here,
        stripPerMm,
        turnPerMm: (stripPerMm * Math.cos(here)) / ground.radius,
        curvature: curvatureAt(wish, ground, here, (u) => groundOf(span, u).slantPerMm, x, from, to),
      };
    };
    const stop = stopIn(placeAt, from, to);
    if (stop !== null) return stop;
    const rough = Math.max(...SHARES.map((share) => placeAt(from + share * (to - from)).turnPerMm)) * (to - from);
    if (turned + rough / 2 > MOST_TURNS * 2 * Math.PI * 2) return tooMany();
    const places = Math.min(20_000, Math.max(LEAST_PLACES, Math.ceil((PLACES_PER_TURN * rough) / (2 * Math.PI))));
    const part: WindingPart = {
      from,
      to,
      at: placeAt,
      turned: runningIntegral((x) => placeAt(x).turnPerMm, from, to, places),
      run: runningIntegral((x) => placeAt(x).stripPerMm, from, to, places),
    };
    parts.push({ ...part, turnedBefore: turned, runBefore: run });
    turned += part.turned(to);
    run += part.run(to);
  }
  if (turned > MOST_TURNS * 2 * Math.PI) return tooMany();
  return ok({ parts, turned, stripMm: run });
}

const SHARES = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1];

const tooMany = () =>
  fail('core/winding', `The strip would go round more than ${MOST_TURNS} times: take a wider strip, or wind in parts.`);

/** A problem where the strip turns back, runs along the core, or the surface is bent too tightly for its thickness; null where it gets on. */
function stopIn(at: (x: number) => WindingPlace, from: number, to: number): Result<never> | null {
  for (let i = 0; i <= 32; i += 1) {
    const x = from + ((to - from) * i) / 32;
    const { lead, radius, stripPerMm } = at(x);
    if (!Number.isFinite(lead))
      return fail(
        'core/winding',
        `The strip cannot get past ${x.toFixed(1)} mm: there it would have to run straight round or advance by more than once round. Take another pitch, or a narrower strip.`,
      );
    if (lead > MOST_LEAD)
      return fail(
        'core/winding',
        `At ${x.toFixed(1)} mm the strip would run along the core rather than round it: take a smaller pitch.`,
      );
    if (!(radius > 0) || !(stripPerMm > 0))
      return fail(
        'core/winding',
        `At ${x.toFixed(1)} mm the surface is bent too tightly for a strip so thick: take a thinner one.`,
      );
  }
  return null;
}

/** The lead angle by what is known of a place; NaN where there is none. Fails with `core/winding`. */
function leadLaw(wish: WindingWish, first: Ground): Result<(ground: Ground) => number> {
  const { by, keep, widthMm, starts } = wish;
  const byPitch = (pitch: number) => (ground: Ground) =>
    Math.atan((ground.slantPerMm * pitch) / (2 * Math.PI * ground.radius));
  const byOverlap = (overlap: number) => (ground: Ground) =>
    Math.asin((starts * (widthMm - overlap)) / (2 * Math.PI * ground.radius));
  const begin = 'pitchMm' in by ? byPitch(by.pitchMm)(first) : byOverlap(by.overlapMm)(first);
  if (!(begin > 0))
    return fail(
      'core/winding',
      `A strip of ${widthMm} mm would advance by more than once round the core at its start: take a narrower strip, fewer starts, or wrap it once instead.`,
    );
  switch (keep) {
    case 'straight': {
      const reach = first.radius * Math.cos(begin);
      return ok((ground) => Math.acos(reach / ground.radius));
    }
    case 'pitch':
      // A pitch that is kept is the one at the start.
      return ok(
        byPitch('pitchMm' in by ? by.pitchMm : (Math.tan(begin) * 2 * Math.PI * first.radius) / first.slantPerMm),
      );
    case 'overlap':
      return ok(
        byOverlap('overlapMm' in by ? by.overlapMm : widthMm - (2 * Math.PI * first.radius * Math.sin(begin)) / starts),
      );
  }
}

/** Share of a part over which the change of its slant is taken. */
const SLANT_SHARE = 1e-5;

/** Liouville's formula with d lead / ds of each law in closed form; only the bend of the profile itself is taken by a difference. */
function curvatureAt(
  { keep }: WindingWish,
  { radius, sin, slantPerMm }: Ground,
  lead: number,
  slantAt: (x: number) => number,
  x: number,
  from: number,
  to: number,
): number {
  if (keep === 'straight') return 0;
  const [s, c] = [Math.sin(lead), Math.cos(lead)];
  const turn = (sin * c) / radius;
  if (keep === 'overlap') return (-s * s * sin) / (radius * c) - turn;
  const step = SLANT_SHARE * (to - from);
  const [a, b] = [Math.max(from, x - step), Math.min(to, x + step)];
  const slantChange = (slantAt(b) - slantAt(a)) / (b - a) / slantPerMm / slantPerMm;
  return s * s * c * (slantChange - sin / radius) - turn;
}
