import { formatNumber } from '../../base/format-length.ts';
import type { Finding } from '../../base/finding.ts';
import { ok, type Result } from '../../base/result.ts';
import type { ArtPiece, Artwork } from '../../model/artwork.ts';
import type { InlayWish } from '../../model/artwork-craft.ts';
import { offsetArtwork } from './offset-artwork.ts';

/** Both outlines of an inlay, as they are cut. */
export interface Inlay {
  readonly pocket: Artwork;
  readonly insert: Artwork;
  /** How far each was moved from the drawing, mm, outward > 0. */
  readonly pocketMm: number;
  readonly insertMm: number;
  /** In the finished work, mm. */
  readonly gapMm: number;
}

/**
 * An inlay: the areas as they are let in, and the pocket for them. A cut of some width that runs on its line takes half of it off the insert and
 * widens the pocket by half, so the insert's line stands that much outside and the pocket's that much inside.
 * @returns fails as {@link offsetArtwork} does.
 */
export function inlayPair(artwork: Artwork, { clearanceMm, from, kerfMm, corners }: InlayWish): Result<Inlay> {
  const ofPocket = from === 'pocket' ? 1 : from === 'both' ? 0.5 : 0;
  const pocketMm = clearanceMm * ofPocket - kerfMm / 2;
  const insertMm = kerfMm / 2 - clearanceMm * (1 - ofPocket);
  const pocket = offsetArtwork(artwork, pocketMm, corners);
  if (!pocket.ok) return pocket;
  const insert = offsetArtwork(artwork, insertMm, corners);
  if (!insert.ok) return insert;
  const gapMm = pocketMm - insertMm + kerfMm;
  const note: Finding = {
    code: 'artwork/inlay',
    severity: 'note',
    text:
      kerfMm > 0
        ? `Both lines are cut on the line with a cut ${formatNumber(kerfMm, 2)} mm wide: the gap all round is then ${formatNumber(gapMm, 2)} mm. Do not let the machine allow for its cut as well.`
        : `The gap all round is ${formatNumber(gapMm, 2)} mm with a blade, or where the machine allows for its cut; on the line itself, what the cut takes away comes to it.`,
    value: gapMm,
    unit: 'mm',
    where: {},
  };
  return ok(
    {
      pocket: named(pocket.value, 'pocket'),
      insert: named(insert.value, 'insert'),
      pocketMm,
      insertMm,
      gapMm,
    },
    [note, ...pocket.notes, ...insert.notes],
  );
}

const named = (artwork: Artwork, what: string): Artwork => ({
  ...artwork,
  pieces: artwork.pieces.map((piece): ArtPiece => ({ ...piece, name: `${piece.name} ${what}` })),
});
