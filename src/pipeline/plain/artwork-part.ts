import { formatNumber } from '../../base/format-length.ts';
import { ok, type Result } from '../../base/result.ts';
import type { Artwork } from '../../model/artwork.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { PlainWork } from '../../model/plain-piece.ts';
import type { ArtworkPart, PlainSource } from '../../project/plain-part.ts';
import type { Drawing, PartCraft } from '../../project/artwork-part.ts';
import { artworkWork } from '../../steps/artwork/artwork-work.ts';
import { inlayPair } from '../../steps/artwork/inlay.ts';
import { craftArtwork } from '../artwork-craft.ts';
import { artworkFromSvg, USUAL_ARTWORK } from '../artwork.ts';
import { artworkFromPicture } from '../picture-artwork.ts';
import { bytesOf, type PlainGround } from './plain-ground.ts';

/** Flat artwork in the first of its foams. Fails where a file is not here or cannot be read, and as what is done with it does. */
export function artworkPartWork(part: ArtworkPart, ground: PlainGround): Result<PlainWork> {
  const artwork = artworkOf(part.source, part.drawing, ground);
  if (!artwork.ok) return artwork;
  // What is open there is meant so: only its lines and areas are taken.
  const other = part.other === undefined ? null : artworkOf(part.other, LINES_ALONE, ground);
  if (other?.ok === false) return other;
  const made = workOf(artwork.value, part.craft, ground.foams[0], other?.value ?? null);
  if (!made.ok) return made;
  // Steps hand what they found on as notes too.
  const told = new Map(
    [...artwork.notes, ...made.value.findings, ...made.notes].map((one) => [`${one.code} ${one.text}`, one]),
  );
  return ok({ ...made.value, findings: [...told.values()] });
}

const LINES_ALONE: Drawing = { from: 'svg', choice: USUAL_ARTWORK };

/** The artwork of a file; fails where that is not here or cannot be read. */
export function artworkOf(source: PlainSource, drawing: Drawing, ground: PlainGround): Result<Artwork> {
  const bytes = bytesOf(source, ground);
  if (!bytes.ok) return bytes;
  if (drawing.from === 'svg') return artworkFromSvg(new TextDecoder().decode(bytes.value), drawing.choice);
  const traced = artworkFromPicture(bytes.value, drawing.choice);
  return traced.ok ? ok(traced.value.artwork, traced.notes) : traced;
}

function workOf(
  artwork: Artwork,
  craft: PartCraft,
  { thicknessMm, neutralFraction }: FoamSheet,
  other: Artwork | null,
): Result<PlainWork> {
  const of = { thicknessMm, neutralFraction };
  if (craft.kind === 'inlay') return inlaid(artwork, craft, thicknessMm);
  const made = craftArtwork(artwork, { ...craft, ...of }, other);
  if (!made.ok) return made;
  const { work, figures } = made.value;
  if (work !== null) return ok(work, made.notes);
  // Copies that are all alike are cut with one template.
  const areAlike = craft.kind === 'along' || (craft.kind === 'scatter' && craft.sizeShare === 0);
  const cut = areAlike
    ? artworkWork(artwork, { thicknessMm, quantity: figures.count })
    : artworkWork(made.value.artwork, { thicknessMm });
  return cut.ok ? ok(cut.value, [...made.notes, ...cut.notes]) : cut;
}

/** The insert; its pocket is cut in what it is let into. */
function inlaid(
  artwork: Artwork,
  craft: Extract<PartCraft, { kind: 'inlay' }>,
  thicknessMm: number,
): Result<PlainWork> {
  const pair = inlayPair(artwork, craft);
  if (!pair.ok) return pair;
  const cut = artworkWork(pair.value.insert, { thicknessMm });
  if (!cut.ok) return cut;
  const outsideMm = pair.value.pocketMm - pair.value.insertMm;
  const where =
    outsideMm === 0 ? 'on' : `${formatNumber(Math.abs(outsideMm), 2)} mm ${outsideMm > 0 ? 'outside' : 'inside'} of`;
  const pieces = cut.value.pieces.map((piece) => ({
    ...piece,
    notes: [...piece.notes, `Cut its pocket ${where} this line.`],
  }));
  return ok({ ...cut.value, pieces }, [...pair.notes, ...cut.notes]);
}
