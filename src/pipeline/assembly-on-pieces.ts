import { Memo } from '../base/memo.ts';
import { handOf4 } from '../geom/matrix4.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import { letInRole } from '../model/let-in.ts';
import type { PlainLine, PlainPiece } from '../model/plain-piece.ts';
import type { LinesOfPieces } from '../steps/assembly/holes-on-pieces.ts';
import { revisionCode } from '../steps/foam/revision.ts';
import type { PlainOutcome } from './plain/plain-outcome.ts';
import { remembered } from './remembered.ts';

/** Results kept: of a sheet or a part each, and a maker goes a few steps back and forth. */
const KEPT = 256;

/** Brings what other parts leave on pieces onto them. */
export class AssemblyOnPieces {
  readonly #foam = new Memo<unknown[], readonly FoamPiece[]>(KEPT);
  readonly #plain = new Memo<unknown[], readonly PlainPiece[]>(KEPT);
  readonly #outcomes = new Memo<unknown[], readonly PlainOutcome[]>(KEPT);

  /** The same pieces where none of them has any. */
  ofSculpt(pieces: readonly FoamPiece[], lines: LinesOfPieces): readonly FoamPiece[] {
    if (!pieces.some(({ id }) => lines.has(id))) return pieces;
    return remembered(this.#foam, [pieces, lines], () =>
      pieces.map((piece) => {
        const letIns = lines.get(piece.id);
        return letIns === undefined
          ? piece
          : { ...piece, letIns, revision: revisionCode([piece.revision, letIns.map((one) => [one.points, one.text])]) };
      }),
    );
  }

  /** The same list where none of them has any. */
  ofPlain(all: readonly PlainOutcome[], lines: LinesOfPieces): readonly PlainOutcome[] {
    if (!all.some(({ pieces }) => pieces.some(({ id }) => lines.has(id)))) return all;
    return remembered(this.#outcomes, [all, lines], () =>
      all.map((one) => {
        const pieces = this.#ofPart(one.pieces, lines, handOf4(one.part.transform) < 0);
        return pieces === one.pieces ? one : { ...one, pieces };
      }),
    );
  }

  /** Of parts that no sculpt is parted for: lines of their own, and a sentence for each thing. */
  #ofPart(pieces: readonly PlainPiece[], lines: LinesOfPieces, isMirrored: boolean): readonly PlainPiece[] {
    if (!pieces.some(({ id }) => lines.has(id))) return pieces;
    return remembered(this.#plain, [pieces, lines, isMirrored], () =>
      pieces.map((piece) => {
        const letIns = lines.get(piece.id);
        if (letIns === undefined) return piece;
        const own = letIns.map(({ points, closed, ...one }): PlainLine => ({
          // Such a piece is traced on its face.
          role: letInRole(one, 'face'),
          // Found on the part as it is drawn, whose mirror image the piece is.
          points: isMirrored ? points.map((value, k) => (k % 2 === 0 ? 0 - value : value)) : points,
          closed,
        }));
        const texts = [...new Set(letIns.map(({ text }) => `${text}.`))];
        const { draft } = piece;
        return {
          ...piece,
          draft: { ...draft, lines: [...draft.lines, ...own], notes: [...texts, ...draft.notes] },
          revision: revisionCode([piece.revision, own, texts]),
        };
      }),
    );
  }
}
