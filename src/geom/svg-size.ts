import type { Affine } from './affine.ts';

/** mm of one of each unit (SVG 1.1, chapter 4.2; CSS Values 3, chapter 6.2). */
const MM: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
};

/** No length is longer: of thousands of figures the pattern would try every way to part them. */
const MOST_LETTERS = 200;

const LENGTH = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*([A-Za-z]*|%)\s*$/;

/** A length as it is written; `mmPerUnit` null for a bare number. Null where it is no length, or a share or a unit of type. */
export function readSvgLength(text: string): { readonly value: number; readonly mmPerUnit: number | null } | null {
  const found = text.length > MOST_LETTERS ? null : LENGTH.exec(text);
  if (found === null || !Number.isFinite(Number(found[1]))) return null;
  const unit = found[2].toLowerCase();
  if (unit !== '' && !Object.hasOwn(MM, unit)) return null;
  return { value: Number(found[1]), mmPerUnit: unit === '' ? null : MM[unit] };
}

/** A length of a shape in units of the drawing: one with a unit counts in px, as SVG wants it. */
export function readUserLength(text: string | undefined, missing = 0): number | null {
  if (text === undefined) return missing;
  const length = readSvgLength(text);
  return length === null ? null : (length.value * (length.mmPerUnit ?? MM.px)) / MM.px;
}

/** How units of a drawing become mm. */
export interface SvgScale {
  readonly mmFromUser: Affine;
  /** False where the file names no unit: its units are taken as mm. */
  readonly hasUnits: boolean;
}

/**
 * The scale of a drawing by its width, height and viewBox (SVG 1.1, chapter 7): the smaller of the two where both are given, each by itself
 * with `preserveAspectRatio="none"`. Where the drawing stands in its frame is left out.
 */
export function svgScale(attributes: ReadonlyMap<string, string>): SvgScale {
  const [width, height] = ['width', 'height'].map((name) => {
    const length = readSvgLength(attributes.get(name) ?? '');
    return length !== null && length.value > 0 ? length : null;
  });
  const hasUnits = (width?.mmPerUnit ?? height?.mmPerUnit ?? null) !== null;
  const box = (attributes.get('viewBox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const isBox = box.length === 4 && box.every(Number.isFinite) && box[2] > 0 && box[3] > 0;
  // Without a frame a unit is a px; where nothing names a unit, a mm.
  if (!isBox) return { mmFromUser: scaled(hasUnits ? MM.px : 1), hasUnits };
  const scale = (length: typeof width, size: number): number | null =>
    length === null ? null : (length.value * (length.mmPerUnit ?? (hasUnits ? MM.px : 1))) / size;
  const [sx, sy] = [scale(width, box[2]), scale(height, box[3])];
  if (sx !== null && sy !== null) {
    if ((attributes.get('preserveAspectRatio') ?? '').trim() === 'none')
      return { mmFromUser: scaled(sx, sy), hasUnits };
    const isSlice = /\bslice\b/.test(attributes.get('preserveAspectRatio') ?? '');
    return { mmFromUser: scaled(isSlice ? Math.max(sx, sy) : Math.min(sx, sy)), hasUnits };
  }
  return { mmFromUser: scaled(sx ?? sy ?? 1), hasUnits };
}

const scaled = (x: number, y = x): Affine => [x, 0, 0, y, 0, 0];
