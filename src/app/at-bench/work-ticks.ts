import type { Command } from '../../project/commands.ts';
import {
  releaseCut,
  releasePrinted,
  releaseSteps,
  releaseWork,
  tickCut,
  tickPrinted,
  tickStep,
  tickWork,
} from '../../project/done-commands.ts';
import { pieceTick, standingOf, stepTick, type TickState } from '../../project/piece-standing.ts';
import type { Project } from '../../project/project.ts';
import type { WorkLine } from './work-order.ts';

/** How a line stands: `changed` where what was ticked is no longer what it was. */
export function lineState({ done, doneSteps }: Project, { tick }: Pick<WorkLine, 'tick'>): TickState {
  if (tick.of === 'step') return stepTick(doneSteps, tick.step);
  if (tick.of !== 'printed') return pieceTick(done, tick.piece, tick.of);
  // What is cut as it is now needs no paper any more; what is to be cut anew does.
  const waiting = standingOf(done, tick.pieces).filter(({ paper, foam }) => paper !== 'printed' && foam !== 'cut');
  if (waiting.length === 0) return 'done';
  return waiting.some(({ paper }) => paper === 'stale') ? 'changed' : 'open';
}

/** Ticks a line off, as it is now. */
export function tickLine({ tick }: Pick<WorkLine, 'tick'>): Command {
  if (tick.of === 'step') return tickStep(tick.step);
  if (tick.of === 'printed') return tickPrinted(tick.pieces);
  return tick.of === 'cut' ? tickCut(tick.piece) : tickWork(tick.of, tick.piece);
}

/** Takes the tick back. */
export function releaseLine({ tick }: Pick<WorkLine, 'tick'>): Command {
  if (tick.of === 'step') return releaseSteps([tick.step.id]);
  if (tick.of === 'printed') return releasePrinted(tick.pieces);
  return tick.of === 'cut' ? releaseCut(tick.piece.id) : releaseWork(tick.of, tick.piece.id);
}

/** Place of the line to go on with: the first that is not done, from a place on and then from the top; past the last where all are done. */
export function nextOpen(project: Project, lines: readonly WorkLine[], from = 0): number {
  const isOpen = (line: WorkLine): boolean => lineState(project, line) !== 'done';
  const after = lines.findIndex((line, i) => i >= from && isOpen(line));
  const any = after >= 0 ? after : lines.findIndex(isOpen);
  return any >= 0 ? any : lines.length;
}

/** Ids of ticked steps of the work that are no more; what is ticked at the shop is none of them, and copies go with their line. */
export function goneSteps({ doneSteps = [] }: Project, lines: readonly WorkLine[]): readonly string[] {
  const known = new Set(lines.flatMap(({ tick }) => (tick.of === 'step' ? [tick.step.id] : [])));
  const isCopy = (id: string): boolean => lines.some(({ key }) => id.startsWith(`${key}/`));
  return doneSteps.map(({ id }) => id).filter((id) => !id.startsWith('buy/') && !known.has(id) && !isCopy(id));
}
