import { pieceId } from '../../base/ids.ts';
import type { FoamPiece, FoamSeam } from '../../model/foam-piece.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { FoamStrip } from '../../model/foam-strip.ts';
import { revisionCode } from './revision.ts';

/**
 * The strips that seams beyond the blade ask for, numbered on from the pieces: those that share a fold from the foam of its pieces, the thicker
 * of two, those that cover a gap from the thinnest foam in stock.
 * @param seams in the order they are printed in.
 */
export function foamStrips(
  pieces: readonly FoamPiece[],
  seams: readonly FoamSeam[],
  stock: readonly FoamSheet[],
): readonly FoamStrip[] {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const strips: FoamStrip[] = [];
  let number = pieces.reduce((most, piece) => Math.max(most, piece.number), 0);
  for (const seam of seams) {
    const sides = seam.pieces.flatMap((id) => byId.get(id) ?? []);
    const made = stripOf(seam, sides, stock);
    if (made === null) continue;
    number += 1;
    const { id, name, quantity, lengthMm, faceMm, backMm, bevelDeg } = made;
    const revision = revisionCode([number, id, name, quantity, made.foam, lengthMm, faceMm, backMm, bevelDeg]);
    const areaMm2 = lengthMm * Math.max(faceMm.max, backMm.max);
    strips.push({ ...made, number, revision, areaMm2 });
  }
  return strips;
}

function stripOf(
  seam: FoamSeam,
  sides: readonly FoamPiece[],
  stock: readonly FoamSheet[],
): Omit<FoamStrip, 'number' | 'revision' | 'areaMm2'> | null {
  const { steep, letter } = seam;
  if (steep === undefined || steep.way === 'fill' || sides.length === 0) return null;
  const thickest = sides.reduce((a, b) => (b.thicknessMm > a.thicknessMm ? b : a));
  const copies = Math.max(...sides.map(({ quantity }) => quantity));
  const own = {
    id: pieceId(`strip-${seam.id}`),
    seam: seam.id,
    letter,
    layer: seam.layer,
    tracedSide: 'face' as const,
    lengthMm: seamReachMm(seam),
  };
  const where = sides.map((piece) => piece.number).join(' and ');
  if (steep.way === 'split') {
    const isConvex = steep.faceMm.max >= steep.backMm.max;
    return {
      ...own,
      name: `Strip between ${where}, seam ${letter}`,
      use: 'between',
      foam: thickest.foam,
      thicknessMm: thickest.thicknessMm,
      quantity: copies * steep.strips,
      faceMm: steep.faceMm,
      backMm: steep.backMm,
      bevelDeg: isConvex ? steep.bevelDeg : -steep.bevelDeg,
    };
  }
  const thinnest = stock.reduce((a, b) => (b.thicknessMm < a.thicknessMm ? b : a));
  const widthMm = { min: steep.trimMm ?? 0, max: steep.trimMm ?? 0 };
  return {
    ...own,
    name: `Trim over ${where}, seam ${letter}`,
    use: 'over',
    foam: thinnest.id,
    thicknessMm: thinnest.thicknessMm,
    quantity: copies,
    faceMm: widthMm,
    backMm: widthMm,
    bevelDeg: 0,
  };
}

/** Whole mm that reach along a seam at its longest, on the neutral surface or on the side that is traced. */
export const seamReachMm = ({ trueLengthMm, lengthMm, tracedLengthMm }: FoamSeam): number =>
  Math.ceil(Math.max(trueLengthMm, ...lengthMm, ...tracedLengthMm) - ROUNDING_MM);

/** What rounding adds to a whole length, mm. */
const ROUNDING_MM = 1e-6;
