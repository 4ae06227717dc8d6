import type { Work } from '../../base/work.ts';
import { layRingOn } from '../../geom/lay-ring-on.ts';
import { movePoints } from '../../geom/turn-and-move.ts';
import type { ComparedPiece, Comparison, PieceFigures } from '../../model/comparison.ts';
import type { MadeFigures } from './figures-of.ts';

const KINDS = ['changed', 'gone', 'come', 'same'] as const;

/** Puts two states of a project side by side. Pieces are the same piece by their ids, which survive a change of seams. */
export async function compare(one: MadeFigures, other: MadeFigures, work: Work): Promise<Comparison> {
  const others = new Map(other.pieces.map((piece) => [piece.id, piece]));
  const ids = new Set(one.pieces.map(({ id }) => id));
  const pieces: ComparedPiece[] = [];
  for (const [i, piece] of one.pieces.entries()) {
    await work.pause(i / one.pieces.length, 'laying pieces on each other');
    const twin = others.get(piece.id);
    pieces.push(
      twin === undefined ? { kind: 'gone', one: piece, other: null, movedMm: null } : comparedPiece(piece, twin),
    );
  }
  for (const piece of other.pieces)
    if (!ids.has(piece.id)) pieces.push({ kind: 'come', one: null, other: piece, movedMm: null });
  pieces.sort((a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind));
  return { one: one.figures, other: other.figures, pieces };
}

function comparedPiece(one: PieceFigures, other: PieceFigures): ComparedPiece {
  if (isSame(one, other)) return { kind: 'same', one, other, movedMm: 0 };
  const { move, apartMm } = layRingOn(one.rings[0], other.rings[0]);
  const rings = other.rings.map((ring) => movePoints(ring, move));
  return { kind: 'changed', one, other: { ...other, rings }, movedMm: apartMm };
}

const isSame = (one: PieceFigures, other: PieceFigures): boolean =>
  one.revision === other.revision &&
  one.quantity === other.quantity &&
  one.foam === other.foam &&
  one.thicknessMm === other.thicknessMm;
