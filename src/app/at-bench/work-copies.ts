import type { Command } from '../../project/commands.ts';
import { releaseSteps, tickStep } from '../../project/done-commands.ts';
import { stepTick, type TickState } from '../../project/piece-standing.ts';
import type { Project, StepDone } from '../../project/project.ts';
import { lineState, releaseLine, tickLine } from './work-ticks.ts';
import type { WorkLine } from './work-order.ts';

/** A line of a piece of which several are cut. */
type PieceLine = Extract<WorkLine, { what: 'cut' | 'bevel' | 'form' }>;

/** The copies of a line's piece, each a step of its own; none where there is but one. */
export function copiesOf(line: Pick<WorkLine, 'what' | 'key' | 'tick'>): readonly StepDone[] {
  if (!isOfPiece(line) || line.piece.quantity < 2) return [];
  const { key, piece } = line;
  return Array.from({ length: piece.quantity }, (_, i) => ({ id: `${key}/${i + 1}`, as: piece.revision }));
}

/** How a copy stands: with its line all of them are done. */
export const copyState = (project: Project, line: WorkLine, copy: StepDone): TickState =>
  lineState(project, line) === 'done' ? 'done' : stepTick(project.doneSteps, copy);

/** Ticks one copy off, or takes its tick back; the line is ticked with the last of them. */
export function turnCopy(project: Project, line: WorkLine, copy: StepDone): Command {
  const copies = copiesOf(line);
  const done = copies.filter((one) => copyState(project, line, one) === 'done');
  const isDone = done.some(({ id }) => id === copy.id);
  const now = isDone ? done.filter(({ id }) => id !== copy.id) : [...done, copy];
  const isAll = now.length === copies.length;
  return asOne(isDone ? 'release a copy' : 'tick off a copy', [
    isAll ? tickLine(line) : releaseLine(line),
    releaseSteps(copies.map(({ id }) => id)),
    ...(isAll ? [] : now.map(tickStep)),
  ]);
}

const asOne = (label: string, commands: readonly Command[]): Command => ({
  label,
  apply: (project) => commands.reduce((now, command) => command.apply(now), project),
});

const isOfPiece = (line: Pick<WorkLine, 'what'>): line is PieceLine => ['cut', 'bevel', 'form'].includes(line.what);
