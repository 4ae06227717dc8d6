import type { PieceId } from '../base/ids.ts';
import type { RevisedPiece } from './done-commands.ts';
import type { PieceDone, StepDone } from './project.ts';

/** How far a piece is, held against how it is now. */
export interface PieceStanding {
  /** `stale`: its paper is of an earlier revision. */
  readonly paper: 'none' | 'printed' | 'stale';
  /** `changed`: what was cut is of an earlier revision. */
  readonly foam: 'none' | 'cut' | 'changed';
}

/** How far every piece is, in the order of `pieces`. */
export function standingOf(
  done: readonly PieceDone[] | undefined,
  pieces: readonly RevisedPiece[],
): readonly PieceStanding[] {
  const known = new Map<string, PieceDone>((done ?? []).map((entry) => [entry.piece, entry]));
  return pieces.map(({ id, revision }) => {
    const { printed, cut } = known.get(id) ?? { piece: id };
    return {
      paper: printed === undefined ? 'none' : printed === revision ? 'printed' : 'stale',
      foam: cut === undefined ? 'none' : cut === revision ? 'cut' : 'changed',
    };
  });
}

/** How a tick stands: `changed` where it is of something that was otherwise then. */
export type TickState = 'open' | 'done' | 'changed';

/** How a piece stands in one kind of work. */
export function pieceTick(
  done: readonly PieceDone[] | undefined,
  { id, revision }: RevisedPiece,
  work: Exclude<keyof PieceDone, 'piece'>,
): TickState {
  return stateOf(done?.find(({ piece }) => piece === id)?.[work], revision);
}

/** How a step stands. @param as what it is of now. */
export const stepTick = (steps: readonly StepDone[] | undefined, { id, as }: StepDone): TickState =>
  stateOf(steps?.find((step) => step.id === id)?.as, as);

const stateOf = (then: string | undefined, now: string): TickState =>
  then === undefined ? 'open' : then === now ? 'done' : 'changed';

/** Pieces that need paper: those without, and those whose paper is stale; not those that are cut. */
export function piecesToPrint<T extends RevisedPiece>(
  done: readonly PieceDone[] | undefined,
  pieces: readonly T[],
): readonly T[] {
  const standings = standingOf(done, pieces);
  return pieces.filter((_, i) => standings[i].paper !== 'printed' && standings[i].foam === 'none');
}

/** Ticked pieces that are no more. */
export const goneOf = (
  done: readonly PieceDone[] | undefined,
  pieces: readonly RevisedPiece[],
): readonly PieceDone[] => {
  const left = new Set<string>(pieces.map(({ id }: { id: PieceId }) => id));
  return (done ?? []).filter(({ piece }) => !left.has(piece));
};
