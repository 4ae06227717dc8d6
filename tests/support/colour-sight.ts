/** Colours as eyes see them, for checks of scales. sRGB, 0 to 1. */
export type Rgb = readonly [number, number, number];

/** Kinds of colour blindness at their strongest. */
export type Blindness = 'protanopia' | 'deuteranopia' | 'tritanopia';

/**
 * Matrices for severity 1.0 on linear RGB: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for Simulation of Color Vision
 * Deficiency", IEEE TVCG 15 (6), 2009, the table that the authors publish with it.
 */
const SIGHT: Readonly<Record<Blindness, readonly number[]>> = {
  protanopia: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deuteranopia: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritanopia: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
};

/** IEC 61966-2-1. */
const toLinear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);

type Linear = readonly number[];

const linear = (rgb: Rgb): Linear => rgb.map(toLinear);

const turned = (m: readonly number[], v: Linear): Linear =>
  [0, 3, 6].map((row) => m[row] * v[0] + m[row + 1] * v[1] + m[row + 2] * v[2]);

/** To CIE XYZ under D65, and that white. */
const TO_XYZ = [0.4124564, 0.3575761, 0.1804375, 0.2126729, 0.7151522, 0.072175, 0.0193339, 0.119192, 0.9503041];
const WHITE = [0.95047, 1, 1.08883];

/** CIE 1976 L* a* b*. */
function labOf(v: Linear): readonly number[] {
  const f = (t: number): number => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
  const [x, y, z] = turned(
    TO_XYZ,
    v.map((c) => Math.max(0, Math.min(1, c))),
  ).map((c, i) => f(c / WHITE[i]));
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** Lightness L* of a grey print, 0 to 100. */
export const lightnessOf = (rgb: Rgb): number => labOf(linear(rgb))[0];

/** CIE 1976 difference of two colours; about 2.3 is just seen. @param blindness of who looks; none where left out. */
export function differenceOf(one: Rgb, other: Rgb, blindness?: Blindness): number {
  const seen = (rgb: Rgb): readonly number[] =>
    labOf(blindness === undefined ? linear(rgb) : turned(SIGHT[blindness], linear(rgb)));
  const [a, b] = [seen(one), seen(other)];
  return Math.hypot(...a.map((value, i) => value - b[i]));
}
