import { formatNumber } from '../../base/format-length.ts';
import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import type { ArtPath, Artwork } from '../../model/artwork.ts';
import type { AlongWish, RepeatCount } from '../../model/artwork-craft.ts';
import { placesAlong } from './along-path.ts';
import { boxOfArtwork, copiedArtwork, type CopyPlace } from './copied-artwork.ts';
import { pathLength } from './segments.ts';

export interface Repeated {
  readonly artwork: Artwork;
  readonly places: readonly CopyPlace[];
  readonly spacingMm: number;
  /** Of the whole line, mm. */
  readonly lengthMm: number;
}

/** Copies at most. */
export const MOST_COPIES = 2000;

/**
 * Artwork repeated at equal true lengths along a line, each copy with the middle of its box on it.
 * @returns fails with `artwork/along-short` where nothing of the line is left between what is free at its ends, or `artwork/too-many`.
 */
export function repeatAlong(artwork: Artwork, curve: ArtPath, wish: AlongWish): Result<Repeated> {
  const { startMm, stand } = wish;
  const lengthMm = pathLength(curve);
  const usedMm = curve.isClosed ? lengthMm : lengthMm - startMm - wish.endMm;
  if (!(usedMm > 0))
    return fail(
      'artwork/along-short',
      `The line is ${formatNumber(lengthMm, 1)} mm long, and nothing of it is left between what is kept free at its ends: keep less free, or draw it longer.`,
    );
  const row = rowOf(usedMm, curve.isClosed, wish);
  if (row.count > MOST_COPIES) return tooMany(row.count);
  const distances = Array.from({ length: row.count }, (_, i) => startMm + row.firstMm + i * row.spacingMm);
  const places = placesAlong(curve, distances).map(({ at, turnRad }): CopyPlace => ({
    at,
    turnRad: stand === 'along' ? turnRad : 0,
    scale: 1,
  }));
  const made = copiedArtwork(artwork, places);
  return ok({ artwork: made, places, spacingMm: row.spacingMm, lengthMm }, [
    ...fittedNote(wish.repeat, row.spacingMm, row.count),
    ...tightNote(artwork, row.spacingMm, row.count),
  ]);
}

export const tooMany = (count: number): Result<never> =>
  fail('artwork/too-many', `That makes ${count} copies, and ${MOST_COPIES} is the most: take a greater spacing.`);

interface Row {
  readonly count: number;
  readonly spacingMm: number;
  readonly firstMm: number;
}

function rowOf(usedMm: number, isClosed: boolean, { repeat, ends }: AlongWish): Row {
  const gaps = 'spacingMm' in repeat ? Math.max(1, Math.round(usedMm / repeat.spacingMm)) : null;
  if (isClosed || ends !== 'both') {
    const count = gaps ?? countOf(repeat);
    const spacingMm = usedMm / count;
    return { count, spacingMm, firstMm: !isClosed && ends === 'none' ? spacingMm / 2 : 0 };
  }
  const count = gaps === null ? countOf(repeat) : gaps + 1;
  return count === 1
    ? { count, spacingMm: usedMm, firstMm: usedMm / 2 }
    : { count, spacingMm: usedMm / (count - 1), firstMm: 0 };
}

const countOf = (repeat: RepeatCount): number => ('count' in repeat ? repeat.count : 1);

/** What a wished spacing came to. */
export function fittedNote(repeat: RepeatCount, spacingMm: number, count: number): readonly Finding[] {
  if (!('spacingMm' in repeat)) return [];
  return [
    {
      code: 'artwork/fitted',
      severity: 'note',
      text: `A spacing of ${formatNumber(repeat.spacingMm, 2)} mm was fitted to ${count} copies: ${formatNumber(spacingMm, 3)} mm each.`,
      value: spacingMm,
      unit: 'mm',
      where: {},
    },
  ];
}

/** Where copies are wider than their spacing. */
export function tightNote(artwork: Artwork, spacingMm: number, count: number): readonly Finding[] {
  const { minX, maxX } = boxOfArtwork(artwork);
  const over = maxX - minX - spacingMm;
  if (count < 2 || over <= 1e-9) return [];
  return [
    {
      code: 'artwork/copies-touch',
      severity: 'warning',
      text: `Copies are ${formatNumber(over, 2)} mm wider than their spacing of ${formatNumber(spacingMm, 2)} mm and may lie over each other: take fewer, or make the artwork smaller.`,
      value: over,
      unit: 'mm',
      where: {},
    },
  ];
}
