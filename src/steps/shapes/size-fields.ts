import type { SizeAlias, SizeField } from '../../model/shape-size.ts';

/** Greatest length a shape may have, mm: far beyond any prop, near enough that no figure loses its digits. */
export const MOST_LENGTH_MM = 100_000;
/** Most pieces, points, gores or layers of one shape. */
export const MOST_COUNT = 1000;

type Extra = Partial<Pick<SizeField, 'default' | 'least' | 'over' | 'most' | 'isList'>> & {
  readonly also?: readonly (string | SizeAlias)[];
};

/** The rest of a field, with its other names as records. */
const filled = ({ also, ...rest }: Extra): Omit<Extra, 'also'> & Pick<SizeField, 'also'> =>
  also === undefined ? rest : { ...rest, also: also.map((one) => (typeof one === 'string' ? { name: one } : one)) };

/** A length over nought, unless `least` says otherwise. */
export function length(name: string, means: string, extra: Extra = {}): SizeField {
  const limits = extra.least === undefined ? { over: 0 } : {};
  return { name, means, kind: 'length', unit: 'mm', most: MOST_LENGTH_MM, ...limits, ...filled(extra) };
}

/** An angle in degrees: its name ends in `_deg`. */
export function angle(name: string, means: string, extra: Extra = {}): SizeField {
  return { name, means, kind: 'angle', unit: 'deg', ...filled(extra) };
}

/** A whole number. */
export function count(name: string, means: string, extra: Extra = {}): SizeField {
  return { name, means, kind: 'count', unit: '', least: 1, most: MOST_COUNT, ...filled(extra) };
}

/** A share from 0 to 1 unless said otherwise. */
export function ratio(name: string, means: string, extra: Extra = {}): SizeField {
  return { name, means, kind: 'ratio', unit: '', least: 0, most: 1, ...filled(extra) };
}

/** A number in a unit of its own. */
export function figure(name: string, means: string, unit: string, extra: Extra = {}): SizeField {
  return { name, means, kind: 'number', unit, ...filled(extra) };
}

export function choice(name: string, means: string, choices: readonly string[], first = choices[0]): SizeField {
  return { name, means, kind: 'choice', unit: '', choices, default: first };
}

/** Sheet that is rolled: its thickness and where its neutral surface lies, from the inside of the bend. */
export const THICKNESS = length('thickness', 'thickness of the sheet; 0: the size is that of the neutral surface', {
  default: 0,
  least: 0,
  most: 200,
});
export const K = ratio('K', 'neutral fraction: place of the surface that keeps its length, from the inside', {
  default: 0.5,
  also: ['neutral', 'neutral_fraction', 'k_factor'],
});
export const SURFACES = ['outside', 'middle', 'inside'] as const;
/** Which surface of the sheet the diameters and radii are measured on. */
export const surface = (first: (typeof SURFACES)[number]): SizeField =>
  choice('surface', 'surface of the sheet that the size is measured on', SURFACES, first);

/** Every thirty degrees over half a turn. */
export const STEPS_30: readonly number[] = Array.from({ length: 7 }, (_, i) => 30 * i);

/** Angles round a circle at which ordinates are given. */
export const thetas = (degrees: readonly number[]): SizeField =>
  angle('theta_deg', 'angles round the axis at which figures are given', {
    default: degrees,
    isList: true,
    least: -3600,
    most: 3600,
  });
