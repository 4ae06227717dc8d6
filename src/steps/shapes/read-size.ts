import { MM_PER_INCH } from '../../base/format-length.ts';
import type { SizeField, SizeKind } from '../../model/shape-size.ts';

const INCH = new Set(['in', 'inch', 'inches', '"', '″', '”']);
/** mm, or degrees, of one of each unit that is understood. */
const MM_PER: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, ft: 304.8, "'": 304.8 };
const DEG_PER: Readonly<Record<string, number>> = {
  deg: 1,
  degree: 1,
  degrees: 1,
  '°': 1,
  rad: 180 / Math.PI,
  turn: 360,
};

const FIGURE =
  /^([-+−]?)\s*(?:(\d+)\s*\/\s*(\d+)|(\d+(?:[.,]\d+)?(?:e[+-]?\d+)?|[.,]\d+)(?:[\s-]+(\d+)\s*\/\s*(\d+))?)\s*(.*)$/i;

/**
 * One size as people type it: `4 1/2 in`, `114,3 mm`, `4.5"`, `3/8`, `45°`, `50 %`.
 * @param unit  what a bare length is in.
 * @returns mm, degrees or the plain number; null when it cannot be understood.
 */
export function readSize(text: string, kind: SizeKind, unit: 'mm' | 'in' = 'mm'): number | null {
  const match = FIGURE.exec(text.trim());
  if (match === null) return null;
  const [, sign, onlyTop, onlyBottom, whole, top, bottom, named] = match;
  const fraction = Number(top ?? onlyTop ?? 0) / Number(bottom ?? onlyBottom ?? 1);
  const value = (Number((whole ?? '0').replace(',', '.')) + fraction) * (sign === '-' || sign === '−' ? -1 : 1);
  const scale = scaleOf(named.trim().toLowerCase(), kind, unit);
  return scale === null || !Number.isFinite(value * scale) ? null : value * scale;
}

function scaleOf(named: string, kind: SizeKind, unit: 'mm' | 'in'): number | null {
  switch (kind) {
    case 'length':
      if (named === '') return unit === 'mm' ? 1 : MM_PER_INCH;
      return INCH.has(named) ? MM_PER_INCH : (MM_PER[named] ?? null);
    case 'angle':
      return named === '' ? 1 : (DEG_PER[named] ?? null);
    case 'ratio':
      return named === '' ? 1 : named === '%' ? 0.01 : null;
    case 'number':
      return named === '' || named === '%' ? 1 : null;
    default:
      return named === '' ? 1 : null;
  }
}

/**
 * A row of sizes: `0, 30, 60`, `0;30;60`, `[0, 30, 60]`. Where semicolons part it commas are decimal; else commas part it.
 * @returns null when one of them cannot be understood or there is none.
 */
export function readSizeRow(text: string, field: SizeField, unit: 'mm' | 'in' = 'mm'): readonly number[] | null {
  const bare = text.replace(/[[\]()]/g, ' ').trim();
  if (bare === '') return null;
  const words = bare.includes(';')
    ? bare.split(';')
    : bare.includes(',')
      ? bare.split(',')
      : splitAtGaps(bare, field.kind);
  const row = words.map((word) => readSize(word, field.kind, unit));
  return row.some((one) => one === null) ? null : (row as number[]);
}

/** `10 20 30` is three numbers, `4 1/2 in` is one length. */
const splitAtGaps = (text: string, kind: SizeKind): readonly string[] =>
  kind === 'length' && /\//.test(text) ? [text] : text.split(/\s+(?=[\d.+-])/);
