import { decimalMark } from './figure-marks.ts';

/**
 * Lengths and other figures as text, and text as lengths. The same on every machine: no locale is asked, and the decimal mark is a point until a
 * window sets another. Thousands are not parted: 1.234 would be read for another length by half of the makers.
 */
export type LengthUnit = 'mm' | 'in';

/** Exact by definition since 1959. */
export const MM_PER_INCH = 25.4;

/** No-break space: a figure and its unit stay on one line. */
const GAP = '\u00a0';

/** Finest part of an inch that a workshop rule shows. */
const INCH_PARTS = 16;

/**
 * A number with a fixed count of decimals and a true minus sign.
 * @param decimals digits after the point, 0 to 6.
 */
export function formatNumber(value: number, decimals = 0): string {
  const text = value.toFixed(decimals);
  const bare = Number(text) === 0 ? text.replace('-', '') : text;
  return bare.replace('-', '\u2212').replace('.', decimalMark());
}

/** A number as it is typed: up to `decimals` decimals, 1 to 6, none of them nought at the end. */
export const formatPlain = (value: number, decimals = 2): string =>
  formatNumber(value, decimals).replace(/[.,]?0+$/, '');

/** mm as a maker reads them: whole from 100 on and where the tenth is nought, else with one decimal: `322 mm`, `48.5 mm`, `6 mm`. */
export function formatMm(mm: number): string {
  const tenths = Math.round(Math.abs(mm) * 10);
  return `${formatNumber(mm, tenths >= 1000 || tenths % 10 === 0 ? 0 : 1)}${GAP}mm`;
}

/** Inches with a fraction in sixteenths, reduced: `12 11/16 in`. Below half a sixteenth: `0 in`. */
export const formatInches = (mm: number): string => inFractions(mm, INCH_PARTS);

/** The same in sixty-fourths, for what is measured off with a steel rule: `2 23/64 in`. */
export const formatSixtyFourths = (mm: number): string => inFractions(mm, 64);

/** @param finest  parts of an inch, a power of two. */
function inFractions(mm: number, finest: number): string {
  const parts = Math.round((Math.abs(mm) / MM_PER_INCH) * finest);
  const whole = Math.floor(parts / finest);
  let top = parts % finest;
  let bottom = finest;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const sign = mm < 0 && parts > 0 ? '\u2212' : '';
  const fraction = top === 0 ? '' : `${top}/${bottom}`;
  const figure = whole === 0 && fraction !== '' ? fraction : `${whole}${fraction === '' ? '' : GAP + fraction}`;
  return `${sign}${figure}${GAP}in`;
}

/** True where a length is sixteenths of an inch to a hundredth of a millimetre, so that `formatInches` says all of it. */
export function isWholeSixteenths(mm: number): boolean {
  const sixteenthMm = MM_PER_INCH / INCH_PARTS;
  return Math.abs(mm - Math.round(mm / sixteenthMm) * sixteenthMm) < 0.005;
}

/** In the unit the maker reads. */
export function formatLength(mm: number, unit: LengthUnit): string {
  return unit === 'mm' ? formatMm(mm) : formatInches(mm);
}

/** A thickness of foam: in inches only where it is sold by them. One that is sold by the millimetre keeps it: 4 and 5 mm would both be 3/16 in. */
export const formatThickness = (mm: number, unit: LengthUnit): string =>
  unit === 'in' && isWholeSixteenths(mm) ? formatInches(mm) : formatMm(mm);

/** For columns of measured lengths that are compared: always one decimal in mm, hundredths in inches. */
export function formatMeasured(mm: number, unit: LengthUnit): string {
  return unit === 'mm' ? `${formatNumber(mm, 1)}${GAP}mm` : `${formatNumber(mm / MM_PER_INCH, 2)}${GAP}in`;
}

/** Small differences: two decimals in mm, thousandths in inches. */
export function formatFine(mm: number, unit: LengthUnit): string {
  return unit === 'mm' ? `${formatNumber(mm, 2)}${GAP}mm` : `${formatNumber(mm / MM_PER_INCH, 3)}${GAP}in`;
}

/** Area for cut lists: cm² or square inches. */
export function formatArea(mm2: number, unit: LengthUnit): string {
  const value = unit === 'mm' ? mm2 / 100 : mm2 / MM_PER_INCH ** 2;
  return `${formatNumber(value, value < 10 ? 1 : 0)}${GAP}${unit === 'mm' ? 'cm²' : 'in²'}`;
}

/** Per cent with one decimal; the value is already in per cent. */
export function formatPercent(pct: number, decimals = 1): string {
  return `${formatNumber(pct, decimals)}${GAP}%`;
}

/** Fractions that keyboards and printed rules have a letter for. */
const VULGAR: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const MM_PER: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000 };

const DECIMAL = String.raw`\d+(?:[.,]\d+)?|[.,]\d+`;
const FRACTION = String.raw`(\d+)\s*\/\s*(\d+)`;
const ONE_LENGTH = new RegExp(
  String.raw`^\s*(?:(${DECIMAL})(?:[\s-]+${FRACTION})?|${FRACTION})\s*(mm|cm|m|in|inch|inches|zoll|")?\s*$`,
  'i',
);
const IN_FEET = new RegExp(String.raw`^\s*(${DECIMAL})\s*(?:'|ft|foot|feet)\s*-?\s*(.*)$`, 'i');

/** No length is longer: of thousands of blanks the patterns would try every way to part them. */
const MOST_LETTERS = 100;

/**
 * A length as people type it: `322`, `32,2 cm`, `12 11/16 in`, `4½`, `4-1/2"`, `12.5"`, `3/8`, `5' 4 1/2"`. Point and comma both mark decimals.
 * @param unit what a bare number means; after feet a bare number is inches.
 * @returns mm, or null when the text is no positive length.
 */
export function parseLength(text: string, unit: LengthUnit): number | null {
  if (text.length > MOST_LETTERS) return null;
  const plain = plainSigns(text);
  const feet = IN_FEET.exec(plain);
  if (feet === null) return oneLength(plain, unit);
  const mm = asNumber(feet[1]) * 12 * MM_PER_INCH;
  const rest = feet[2].trim() === '' ? 0 : /^0+("|in)?$/i.test(feet[2].trim()) ? 0 : oneLength(feet[2], 'in');
  return rest !== null && mm + rest > 0 ? mm + rest : null;
}

/** Letters of fractions and slanted marks as they are typed. */
const plainSigns = (text: string): string =>
  text
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (letter) => ` ${VULGAR[letter]}`)
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/[\u2033\u201c-\u201f]|''/g, '"')
    .replace(/[\u2032\u2018\u2019]/g, "'");

function oneLength(text: string, unit: LengthUnit): number | null {
  const match = ONE_LENGTH.exec(text);
  if (match === null) return null;
  const [, whole, top, bottom, onlyTop, onlyBottom, named] = match;
  const fraction = Number(top ?? onlyTop ?? 0) / Number(bottom ?? onlyBottom ?? 1);
  const mm = (asNumber(whole ?? '0') + fraction) * (MM_PER[named?.toLowerCase() ?? unit] ?? MM_PER_INCH);
  return Number.isFinite(mm) && mm > 0 ? mm : null;
}

const asNumber = (text: string): number => Number(text.replace(',', '.'));
