import { gauss8 } from '../../geom/integrate.ts';

/** Part of a profile: r(x) = c0 + c1 u + c2 u² + c3 u³ with u = x - from, mm. */
export interface ProfileSpan {
  readonly from: number;
  readonly to: number;
  readonly c: readonly [number, number, number, number];
}

/** Radius against length, span after span without a gap; where one ends and the next begins at another radius there is a step. */
export type Profile = readonly ProfileSpan[];

/** A stretch along the core, mm, from < to. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** A surface less than this over the foam, mm, wants no further sheet: less than a sheet of paper. */
export const NOTHING_TO_LAY_MM = 0.01;

export function radiusAt({ from, c }: ProfileSpan, x: number): number {
  const u = x - from;
  return c[0] + u * (c[1] + u * (c[2] + u * c[3]));
}

/** dr / dx. */
export function slopeAt({ from, c }: ProfileSpan, x: number): number {
  const u = x - from;
  return c[1] + u * (2 * c[2] + u * 3 * c[3]);
}

/** d²r / dx², 1/mm. */
export const bendAt = ({ from, c }: ProfileSpan, x: number): number => 2 * c[2] + 6 * c[3] * (x - from);

export const isStraight = ({ c }: ProfileSpan): boolean => c[2] === 0 && c[3] === 0;

/** A straight span. */
export const straightSpan = (from: number, fromRadius: number, to: number, toRadius: number): ProfileSpan => ({
  from,
  to,
  c: [fromRadius, (toRadius - fromRadius) / (to - from), 0, 0],
});

/** Spans that reach into a stretch, with the part of each that lies in it. */
export function spansIn(
  profile: Profile,
  { from, to }: Stretch,
): readonly (Stretch & { readonly span: ProfileSpan })[] {
  // The first that ends past the beginning, by halving: a plan asks this many thousand times.
  let [low, high] = [0, profile.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (profile[middle].to > from) high = middle;
    else low = middle + 1;
  }
  const parts: (Stretch & { readonly span: ProfileSpan })[] = [];
  for (let i = low; i < profile.length && profile[i].from < to; i += 1) {
    const span = profile[i];
    parts.push({ from: Math.max(from, span.from), to: Math.min(to, span.to), span });
  }
  return parts;
}

/** Places within (from, to) where the radius neither grows nor falls. */
function turnsOf(span: ProfileSpan, from: number, to: number): readonly number[] {
  const [, c1, c2, c3] = span.c;
  const roots: number[] = [];
  if (c3 === 0 && c2 !== 0) roots.push(-c1 / (2 * c2));
  if (c3 !== 0) {
    const discriminant = c2 * c2 - 3 * c1 * c3;
    if (discriminant > 0) {
      const q = -(c2 + Math.sign(c2 === 0 ? 1 : c2) * Math.sqrt(discriminant));
      roots.push(q / (3 * c3));
      if (q !== 0) roots.push(c1 / q);
    }
  }
  return roots.map((u) => span.from + u).filter((x) => x > from && x < to);
}

/** Least and greatest radius within a stretch. @returns null where no span reaches into it. */
export function radiiIn(profile: Profile, stretch: Stretch): { readonly least: number; readonly most: number } | null {
  let [least, most] = [Infinity, -Infinity];
  for (const { from, to, span } of spansIn(profile, stretch)) {
    for (const x of [from, to, ...turnsOf(span, from, to)]) {
      const r = radiusAt(span, x);
      least = Math.min(least, r);
      most = Math.max(most, r);
    }
  }
  return most < least ? null : { least, most };
}

/** Halvings after which a crossing is as exact as a double can say it. */
const HALVINGS = 60;

/** Where the radius passes a level within a part of a span, ascending: monotone between its turns, so each is found by halving. */
export function crossings(span: ProfileSpan, level: number, from: number, to: number): readonly number[] {
  if (isStraight(span)) {
    const slope = span.c[1];
    if (slope === 0) return [];
    const x = span.from + (level - span.c[0]) / slope;
    return x > from && x < to ? [x] : [];
  }
  const stops = [from, ...[...turnsOf(span, from, to)].sort((a, b) => a - b), to];
  const found: number[] = [];
  for (let i = 1; i < stops.length; i += 1) {
    let [a, b] = [stops[i - 1], stops[i]];
    const rises = radiusAt(span, b) > radiusAt(span, a);
    if ((radiusAt(span, a) - level) * (radiusAt(span, b) - level) >= 0) continue;
    for (let k = 0; k < HALVINGS && b - a > 0; k += 1) {
      const middle = (a + b) / 2;
      if (radiusAt(span, middle) < level === rises) a = middle;
      else b = middle;
    }
    found.push((a + b) / 2);
  }
  return found;
}

/**
 * Where the radius stands over a level, within a stretch: as few and as long as can be, ascending. What stands over it nowhere by more than
 * `leastMm` is left out.
 */
export function stretchesOver(
  profile: Profile,
  level: number,
  within: Stretch,
  leastMm = NOTHING_TO_LAY_MM,
): readonly Stretch[] {
  const found: { from: number; to: number }[] = [];
  for (const { from, to, span } of spansIn(profile, within)) {
    const stops = [from, ...crossings(span, level, from, to), to];
    for (let i = 1; i < stops.length; i += 1) {
      if (!(radiusAt(span, (stops[i - 1] + stops[i]) / 2) > level)) continue;
      const last = found.at(-1);
      if (last !== undefined && last.to === stops[i - 1]) last.to = stops[i];
      else found.push({ from: stops[i - 1], to: stops[i] });
    }
  }
  return found.filter((one) => (radiiIn(profile, one)?.most ?? 0) > level + leastMm);
}

/** What is left of a stretch beside others that lie in it, ascending. */
export function besides(whole: Stretch, taken: readonly Stretch[]): readonly Stretch[] {
  const left: Stretch[] = [];
  let at = whole.from;
  for (const { from, to } of taken) {
    if (from > at) left.push({ from: at, to: from });
    at = Math.max(at, to);
  }
  if (whole.to > at) left.push({ from: at, to: whole.to });
  return left;
}

/**
 * Volume between two radii under the profile, mm³: ∫ pi (clamp(r, inside, outside)² - inside²) dx. Exact but for rounding: r is at most of third
 * degree between the places where it passes a radius, so r² is of sixth, and eight points are right up to the fifteenth.
 * @param outside  Infinity: all that the profile holds.
 */
export function volumeBetween(profile: Profile, stretch: Stretch, inside: number, outside: number): number {
  let sum = 0;
  for (const { from, to, span } of spansIn(profile, stretch)) {
    const levels = outside === Infinity ? [inside] : [inside, outside];
    const stops = [from, ...levels.flatMap((level) => crossings(span, level, from, to)), to].sort((a, b) => a - b);
    for (let i = 1; i < stops.length; i += 1) {
      const [a, b] = [stops[i - 1], stops[i]];
      const r = radiusAt(span, (a + b) / 2);
      if (r <= inside) continue;
      if (r >= outside) sum += (outside - inside) * (outside + inside) * (b - a);
      else
        sum += gauss8(
          (x) => {
            const here = radiusAt(span, x);
            return (here - inside) * (here + inside);
          },
          a,
          b,
        );
    }
  }
  return Math.PI * sum;
}

/** The stretch from the first to the last span. */
export const wholeOf = (profile: Profile): Stretch => ({ from: profile[0].from, to: profile[profile.length - 1].to });
