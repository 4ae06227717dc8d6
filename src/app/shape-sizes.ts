import { formatPlain, type LengthUnit } from '../base/format-length.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { SizeField } from '../model/shape-size.ts';
import { PART_WORDS } from './part-words.ts';

/** Sizes that are the foam's, by the names shapes give them. */
const THICKNESS: readonly string[] = ['thickness', 'strip_thickness', 'layer'];
const NEUTRAL = 'K';
/** Places along a piece at which figures are given: they change no piece. */
const STATIONS: readonly string[] = ['theta_deg', 'latitude_deg'];

const GAP = '\u00a0';

/** Sizes that are seldom typed: those of the foam, and where figures are given. */
export const isFiner = ({ name }: SizeField): boolean => isOfFoam(name) || STATIONS.includes(name);

const isOfFoam = (name: string): boolean => THICKNESS.includes(name) || name === NEUTRAL;

/** What a size is while nothing was typed, as it could be typed; empty where it has no usual size. */
export function usualText(size: SizeField, foam: FoamSheet | null): string {
  const { name, kind, default: usual } = size;
  if (foam !== null && THICKNESS.includes(name)) return `${formatPlain(foam.thicknessMm)}${GAP}mm`;
  if (foam !== null && name === NEUTRAL) return formatPlain(foam.neutralFraction);
  if (usual === undefined || typeof usual === 'string') return usual ?? '';
  const row = typeof usual === 'number' ? [usual] : usual;
  const unit = kind === 'length' ? 'mm' : kind === 'angle' ? '°' : size.unit;
  const text = row.map(plain).join(', ');
  return unit === '' || kind === 'number' ? text : `${text}${kind === 'angle' ? '' : GAP}${unit}`;
}

/** With a true minus, and as many digits as the size has. */
const plain = (value: number): string => String(Number(value.toPrecision(9))).replace('-', '\u2212');

/**
 * Sizes with one that was typed; one that is emptied, or says what it is anyhow, is as usual again. A bare length is in the unit of the job.
 * @returns the very same sizes where nothing changed.
 */
export function sizeAsTyped(
  sizes: Readonly<Record<string, string>>,
  size: SizeField,
  text: string,
  unit: LengthUnit,
  foam: FoamSheet | null,
): Readonly<Record<string, string>> {
  const { name } = size;
  const said = text.replaceAll(GAP, ' ').trim();
  const isUsual = said === '' || said === usualText(size, foam).replaceAll(GAP, ' ');
  if (isUsual) {
    if (sizes[name] === undefined) return sizes;
    return Object.fromEntries(Object.entries(sizes).filter(([other]) => other !== name));
  }
  const isBare = size.kind === 'length' && size.isList !== true && /[\d./]$/.test(said);
  const typed = isBare && unit === 'in' ? `${said} in` : said;
  return sizes[name] === typed ? sizes : { ...sizes, [name]: typed };
}

/** What the size goes back to when it is emptied, as a sentence after what it means. */
export function fieldKeeps(size: SizeField, text: string | undefined, usual: string): string {
  const words = PART_WORDS.shapes;
  if (usual === '' || size.kind === 'choice') return '';
  if (isOfFoam(size.name)) return `. ${words.ofFoam(usual)}`;
  return text === undefined ? '' : `. ${words.usual(usual)}`;
}
