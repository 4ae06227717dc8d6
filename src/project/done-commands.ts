import type { PieceId } from '../base/ids.ts';
import type { Command } from './commands.ts';
import type { PieceDone } from './project.ts';

/** A piece as it is now: what of it is printed carries its revision. */
export interface RevisedPiece {
  readonly id: PieceId;
  readonly revision: string;
}

/** Says that the paper of these pieces is printed as they are now. */
export const tickPrinted = (pieces: readonly RevisedPiece[]): Command =>
  onDone('tick as printed', (done) =>
    pieces.reduce((list, { id, revision }) => withDone(list, id, (was) => ({ ...was, printed: revision })), done),
  );

/** Says that a piece is cut from foam as it is now. */
export const tickCut = ({ id, revision }: RevisedPiece): Command =>
  onDone('tick as cut', (done) => withDone(done, id, (was) => ({ ...was, cut: revision })));

/** Forgets that a piece was cut: it is to be cut anew, or the tick was a slip. */
export const releaseCut = (piece: PieceId): Command =>
  onDone('release a cut piece', (done) => withDone(done, piece, ({ cut: _, ...rest }) => rest));

/** Forgets what was ticked of pieces that are no more. */
export const forgetGone = (pieces: readonly RevisedPiece[]): Command =>
  onDone('forget pieces that are gone', (done) => {
    const left = new Set<string>(pieces.map(({ id }) => id));
    return done.every(({ piece }) => left.has(piece)) ? done : done.filter(({ piece }) => left.has(piece));
  });

function onDone(label: string, change: (done: readonly PieceDone[]) => readonly PieceDone[]): Command {
  return {
    label,
    apply(project) {
      const { done = [], ...rest } = project;
      const changed = change(done);
      if (changed === done) return project;
      return changed.length === 0 ? rest : { ...rest, done: changed };
    },
  };
}

/** The list with one entry changed; one of which nothing is said any more is left out. The same list where nothing changed. */
function withDone(
  done: readonly PieceDone[],
  piece: PieceId,
  change: (was: PieceDone) => PieceDone,
): readonly PieceDone[] {
  const was = done.find((entry) => entry.piece === piece) ?? { piece };
  const now = change(was);
  if (now.printed === was.printed && now.cut === was.cut) return done;
  const others = done.filter((entry) => entry.piece !== piece);
  return now.printed === undefined && now.cut === undefined ? others : [...others, now];
}
