import type { PieceId } from '../base/ids.ts';
import type { Command } from './commands.ts';
import type { PieceDone, StepDone } from './project.ts';

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

/** What is done with a piece between cutting and gluing. */
export type PieceWork = 'bevelled' | 'formed';

/** Says that a piece as it is now went through that work. */
export const tickWork = (work: PieceWork, { id, revision }: RevisedPiece): Command =>
  onDone('tick off a piece', (done) => withDone(done, id, (was) => ({ ...was, [work]: revision })));

/** Forgets that it did. */
export const releaseWork = (work: PieceWork, piece: PieceId): Command =>
  onDone('release a piece', (done) => withDone(done, piece, ({ [work]: _, ...rest }) => rest));

/** Forgets that the paper of these pieces was printed. */
export const releasePrinted = (pieces: readonly RevisedPiece[]): Command =>
  onDone('release printed paper', (done) =>
    pieces.reduce((list, { id }) => withDone(list, id, ({ printed: _, ...rest }) => rest), done),
  );

/** Says that a step is done, of what it is now. */
export const tickStep = ({ id, as }: StepDone): Command =>
  onSteps('tick off a step', (steps) =>
    steps.some((step) => step.id === id && step.as === as)
      ? steps
      : [...steps.filter((step) => step.id !== id), { id, as }],
  );

/** Forgets that steps were done. */
export const releaseSteps = (ids: readonly string[]): Command =>
  onSteps('release a step', (steps) => without(steps, ({ id }) => ids.includes(id)));

/** Forgets what was ticked of pieces that are no more. */
export const forgetGone = (pieces: readonly RevisedPiece[]): Command =>
  onDone('forget pieces that are gone', (done) => {
    const left = new Set<string>(pieces.map(({ id }) => id));
    return without(done, ({ piece }) => !left.has(piece));
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

function onSteps(label: string, change: (steps: readonly StepDone[]) => readonly StepDone[]): Command {
  return {
    label,
    apply(project) {
      const { doneSteps = [], ...rest } = project;
      const changed = change(doneSteps);
      if (changed === doneSteps) return project;
      return changed.length === 0 ? rest : { ...rest, doneSteps: changed };
    },
  };
}

/** The same list where nothing is taken out. */
function without<T>(list: readonly T[], isOut: (entry: T) => boolean): readonly T[] {
  return list.some(isOut) ? list.filter((entry) => !isOut(entry)) : list;
}

const TICKS = ['printed', 'cut', 'bevelled', 'formed'] as const;

/** The list with one entry changed; one of which nothing is said any more is left out. The same list where nothing changed. */
function withDone(
  done: readonly PieceDone[],
  piece: PieceId,
  change: (was: PieceDone) => PieceDone,
): readonly PieceDone[] {
  const was = done.find((entry) => entry.piece === piece) ?? { piece };
  const now = change(was);
  if (TICKS.every((tick) => now[tick] === was[tick])) return done;
  const others = done.filter((entry) => entry.piece !== piece);
  return TICKS.every((tick) => now[tick] === undefined) ? others : [...others, now];
}
