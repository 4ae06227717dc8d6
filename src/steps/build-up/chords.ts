import { radiusAt, isStraight, straightSpan, type Profile, type ProfileSpan } from './profile.ts';

/** A straight part of a profile, mm. */
export interface Chord {
  readonly x0: number;
  readonly r0: number;
  readonly x1: number;
  readonly r1: number;
}

/** Chords that one smooth span is parted into at most. */
const MOST_CHORDS = 64;

/** A profile as straight parts: smooth spans in even parts, so many that none stands off by more than `deviation`, mm. */
export const chordsOf = (profile: Profile, deviation: number): readonly Chord[] =>
  profile.flatMap((span) => {
    const count = chordsIn(span, deviation);
    const at = (i: number): number => (i === count ? span.to : span.from + ((span.to - span.from) * i) / count);
    return Array.from({ length: count }, (_, i) => ({
      x0: at(i),
      r0: radiusAt(span, at(i)),
      x1: at(i + 1),
      r1: radiusAt(span, at(i + 1)),
    }));
  });

/** A chord of length h stands off a curve by h² |r''| / 8 at most; r'' of a cubic is greatest at an end. */
function chordsIn(span: ProfileSpan, deviation: number): number {
  if (isStraight(span)) return 1;
  const h = span.to - span.from;
  const most = Math.max(Math.abs(2 * span.c[2]), Math.abs(2 * span.c[2] + 6 * span.c[3] * h));
  return Math.min(MOST_CHORDS, Math.max(1, Math.ceil(h * Math.sqrt(most / (8 * deviation)))));
}

/** Angle between a chord and the axis, radians, positive where it grows. */
export const slopeOf = ({ x0, r0, x1, r1 }: Chord): number => Math.atan2(r1 - r0, x1 - x0);

/** Whether one chord begins where the other ends, so that both meet in a corner rather than at a step. */
export const areJoined = (a: Chord, b: Chord): boolean => a.x1 === b.x0 && Math.abs(a.r1 - b.r0) < JOINED_MM;

/** Rounding of radii, mm. */
const JOINED_MM = 1e-9;

/**
 * Every chord moved inward along its normal by d: corners move along the bisector of both, by d over the cosine of half the turn; at a step and at
 * both ends of all a chord ends at its own length, cut square to the axis.
 * @param d  mm, >= 0.
 */
export function movedInward(chords: readonly Chord[], d: number): readonly Chord[] {
  const end = (i: number, at: 'start' | 'end'): readonly [number, number] => {
    const own = chords[i];
    const j = at === 'start' ? i - 1 : i + 1;
    const [x, r] = at === 'start' ? [own.x0, own.r0] : [own.x1, own.r1];
    const slope = slopeOf(own);
    const isCorner =
      j >= 0 && j < chords.length && (at === 'start' ? areJoined(chords[j], own) : areJoined(own, chords[j]));
    if (!isCorner) return [x, r - d / Math.cos(slope)];
    const other = slopeOf(chords[j]);
    const [mean, half] = [(slope + other) / 2, (slope - other) / 2];
    return [x + (d * Math.sin(mean)) / Math.cos(half), r - (d * Math.cos(mean)) / Math.cos(half)];
  };
  return chords.map((_, i) => {
    const [[x0, r0], [x1, r1]] = [end(i, 'start'), end(i, 'end')];
    return { x0, r0, x1, r1 };
  });
}

/** Chords as a profile. */
export const profileOf = (chords: readonly Chord[]): Profile =>
  chords.map(({ x0, r0, x1, r1 }) => straightSpan(x0, r0, x1, r1));
