/**
 * One scale for stretch and squash, for the bench and for its legend: the diverging scheme PuOr of eleven classes, published by
 * C. A. Brewer, ColorBrewer 2.0 (Apache-2.0), safe for the common kinds of colour blindness. Both ends grow darker alike, so that a
 * grey print still shows how much, and the sign is told by the legend and by strokes.
 */

/** A colour at a place of the scale: -1 squashed to the limit, 0 true length, 1 stretched to the limit. */
export interface StretchStop {
  readonly at: number;
  /** sRGB, 0 to 255. */
  readonly rgb: readonly [number, number, number];
}

/** From squash (purple) over neutral to stretch (orange). */
export const STRETCH_STOPS: readonly StretchStop[] = (
  [
    [45, 0, 75],
    [84, 39, 136],
    [128, 115, 172],
    [178, 171, 210],
    [216, 218, 235],
    [247, 247, 247],
    [254, 224, 182],
    [253, 184, 99],
    [224, 130, 20],
    [179, 88, 6],
    [127, 59, 8],
  ] as const
).map((rgb, i) => ({ at: i / 5 - 1, rgb }));

/**
 * The colour of a change of length.
 * @param signedPct  per cent; stretch > 0, squash < 0. Beyond the limit the end's colour is kept.
 * @param limitPct   per cent at the ends of the scale, > 0, else RangeError.
 * @returns sRGB, each 0 to 1.
 */
export function stretchColour(signedPct: number, limitPct: number): [number, number, number] {
  if (!(limitPct > 0)) throw new RangeError(`limit ${limitPct} %`);
  const last = STRETCH_STOPS.length - 1;
  const place = ((Math.max(-1, Math.min(1, signedPct / limitPct)) + 1) / 2) * last;
  const low = Math.min(last - 1, Math.floor(place));
  const share = place - low;
  const [a, b] = [STRETCH_STOPS[low].rgb, STRETCH_STOPS[low + 1].rgb];
  return [mix(a[0], b[0], share), mix(a[1], b[1], share), mix(a[2], b[2], share)];
}

/** The one figure that is coloured where a place is pulled one way and gathered the other: the larger, squash negative; per cent. */
export const signedStretch = (stretchPct: number, squashPct: number): number =>
  stretchPct >= squashPct ? stretchPct : -squashPct;

const mix = (a: number, b: number, share: number): number => (a + (b - a) * share) / 255;
