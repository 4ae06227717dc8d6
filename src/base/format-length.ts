/**
 * Lengths and other figures as text, and text as lengths. Pure, and the same on every machine: no locale is asked.
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
  return bare.replace('-', '\u2212');
}

/** A number as it is typed: up to two decimals, none of them nought at the end. */
export const formatPlain = (value: number): string => formatNumber(value, 2).replace(/\.?0+$/, '');

/** mm as a maker reads them: whole from 100 on and where the tenth is nought, else with one decimal: `322 mm`, `48.5 mm`, `6 mm`. */
export function formatMm(mm: number): string {
  const tenths = Math.round(Math.abs(mm) * 10);
  return `${formatNumber(mm, tenths >= 1000 || tenths % 10 === 0 ? 0 : 1)}${GAP}mm`;
}

/** Inches with a fraction in sixteenths, reduced: `12 11/16 in`. Below half a sixteenth: `0 in`. */
export function formatInches(mm: number): string {
  const parts = Math.round((Math.abs(mm) / MM_PER_INCH) * INCH_PARTS);
  const whole = Math.floor(parts / INCH_PARTS);
  let top = parts % INCH_PARTS;
  let bottom = INCH_PARTS;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const sign = mm < 0 && parts > 0 ? '\u2212' : '';
  const fraction = top === 0 ? '' : `${top}/${bottom}`;
  const figure = whole === 0 && fraction !== '' ? fraction : `${whole}${fraction === '' ? '' : GAP + fraction}`;
  return `${sign}${figure}${GAP}in`;
}

/** In the unit the maker reads. */
export function formatLength(mm: number, unit: LengthUnit): string {
  return unit === 'mm' ? formatMm(mm) : formatInches(mm);
}

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

/**
 * A length as people type it: `322`, `32,2 cm`, `12 11/16 in`, `12.5"`, `3/8`.
 * @param unit what a bare number means.
 * @returns mm, or null when the text is no positive length.
 */
export function parseLength(text: string, unit: LengthUnit): number | null {
  const match =
    /^\s*(?:(\d+(?:[.,]\d+)?|[.,]\d+)(?:[\s-]+(\d+)\s*\/\s*(\d+))?|(\d+)\s*\/\s*(\d+))\s*(mm|cm|m|in|inch|inches|")?\s*$/i.exec(
      text,
    );
  if (match === null) return null;
  const [, whole, top, bottom, onlyTop, onlyBottom, named] = match;
  const fraction = Number(top ?? onlyTop ?? 0) / Number(bottom ?? onlyBottom ?? 1);
  const figure = Number((whole ?? '0').replace(',', '.')) + fraction;
  const mm = figure * mmPer(named?.toLowerCase() ?? unit);
  return Number.isFinite(mm) && mm > 0 ? mm : null;
}

function mmPer(unit: string): number {
  if (unit === 'mm') return 1;
  if (unit === 'cm') return 10;
  return unit === 'm' ? 1000 : MM_PER_INCH;
}
