import {
  formatArea,
  formatFine,
  formatLength,
  formatNumber,
  formatPercent,
  formatThickness,
  type LengthUnit,
} from '../../base/format-length.ts';
import type { ComparedPiece, Comparison, VersionFigures, Worst } from '../../model/comparison.ts';
import { HISTORY_WORDS } from './history-words.ts';

/** A figure of both states, and what the second has more or less, in words; empty where they read alike. */
export interface CompareRow {
  readonly name: string;
  readonly one: string;
  readonly other: string;
  readonly differs: string;
}

type Text = (value: number) => string;

/** The table of two states. Figures that read alike are alike: nobody cuts a thousandth. */
export function compareRows({ one, other }: Comparison, unit: LengthUnit): readonly CompareRow[] {
  const { rows } = HISTORY_WORDS.compare;
  const count: Text = (value) => formatNumber(value);
  const area: Text = (mm2) => formatArea(mm2, unit);
  const fine: Text = (mm) => formatFine(mm, unit);
  const percent: Text = (pct) => formatPercent(pct);
  const plain = (name: string, of: (figures: VersionFigures) => number, text: Text): CompareRow => ({
    name,
    one: text(of(one)),
    other: text(of(other)),
    differs: differenceSaid(of(one), of(other), text),
  });
  const worst = (name: string, of: (figures: VersionFigures) => Worst | null, text: Text): CompareRow => {
    const [a, b] = [of(one), of(other)];
    const differs = a === null || b === null ? '' : differenceSaid(a.value, b.value, text);
    return { name, one: worstSaid(a, text), other: worstSaid(b, text), differs };
  };
  return [
    { ...plain(rows.pieces, ({ cuts }) => cuts, count), one: piecesSaid(one), other: piecesSaid(other) },
    ...foamIds(one, other).map(({ id, name }) => plain(rows.foam(name), areaOf(id), area)),
    plain(rows.sheets, ({ sheets }) => sheets, count),
    plain(rows.seams, ({ seams }) => seams, count),
    plain(
      rows.seamMm,
      ({ seamMm }) => seamMm,
      (mm) => formatLength(mm, unit),
    ),
    worst(rows.stretch, ({ stretch }) => stretch, percent),
    worst(rows.squash, ({ squash }) => squash, percent),
    worst(rows.gap, ({ gap }) => gap, fine),
    worst(rows.overlap, ({ overlap }) => overlap, fine),
    worst(rows.slip, ({ slip }) => slip, fine),
    worst(
      rows.bevel,
      ({ bevel }) => bevel,
      (deg) => `${formatNumber(deg, 1)}°`,
    ),
    plain(rows.pages, ({ pages }) => pages, count),
    plain(rows.warnings, ({ warnings }) => warnings, count),
  ];
}

/** What differs of a piece, each in a few words. */
export function pieceSaid({ kind, one, other, movedMm }: ComparedPiece, unit: LengthUnit): readonly string[] {
  const words = HISTORY_WORDS.compare;
  const area: Text = (mm2) => formatArea(mm2, unit);
  if (one === null || other === null) {
    const only = one ?? other;
    return only === null ? [] : [(kind === 'gone' ? words.gone : words.come)(area(only.areaMm2))];
  }
  const [thick, thickOther] = [one, other].map(({ thicknessMm }) => formatThickness(thicknessMm, unit));
  const more = differenceSaid(one.areaMm2, other.areaMm2, area);
  const said = [
    movedMm !== null && formatFine(movedMm, unit) !== formatFine(0, unit) ? words.moved(movedMm, unit) : '',
    one.foam === other.foam ? '' : words.foam(one.foam, other.foam),
    thick === thickOther ? '' : words.thickness(thick, thickOther),
    one.quantity === other.quantity ? '' : words.quantity(one.quantity, other.quantity),
    more === '' ? '' : words.area(more),
    percentSaid(one.stretchPct, other.stretchPct, words.stretch),
    percentSaid(one.squashPct, other.squashPct, words.squash),
  ].filter((text) => text !== '');
  return said.length === 0 ? [words.stays] : said;
}

function percentSaid(one: number | null, other: number | null, said: (from: string, to: string) => string): string {
  if (one === null || other === null) return '';
  const [from, to] = [formatPercent(one), formatPercent(other)];
  return from === to ? '' : said(from, to);
}

/** Empty where both read alike. */
function differenceSaid(one: number, other: number, text: Text): string {
  if (text(one) === text(other)) return '';
  const { more, less, littleMore, littleLess } = HISTORY_WORDS.compare;
  const apart = text(Math.abs(other - one));
  if (apart === text(0)) return other > one ? littleMore : littleLess;
  return other > one ? more(apart) : less(apart);
}

const worstSaid = (worst: Worst | null, text: Text): string =>
  worst === null ? HISTORY_WORDS.compare.none : HISTORY_WORDS.compare.at(text(worst.value), worst.at);

const piecesSaid = ({ pieces, cuts }: VersionFigures): string => HISTORY_WORDS.compare.count(pieces, cuts);

const areaOf =
  (foam: string) =>
  ({ foams }: VersionFigures): number =>
    foams.find(({ id }) => id === foam)?.areaMm2 ?? 0;

function foamIds(
  one: VersionFigures,
  other: VersionFigures,
): readonly { readonly id: string; readonly name: string }[] {
  const names = new Map([...one.foams, ...other.foams].map(({ id, name }) => [id, name]));
  return [...names].map(([id, name]) => ({ id, name }));
}
