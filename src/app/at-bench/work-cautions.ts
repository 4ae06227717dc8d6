import data from '../../../shared/cautions.json';
import type { WorkLine } from './work-order.ts';

/** What can hurt at a line, by the ids of the cautions. */
export interface LineCautions {
  /** Told in full. */
  readonly told: readonly string[];
  /** Told in full at an earlier line of the same kind: their names are enough. */
  readonly named: readonly string[];
}

/** Ids of all cautions of a line. */
export const cautionsOf = ({ cautions, hurts }: Pick<WorkLine, 'cautions' | 'hurts'>): readonly string[] =>
  data.cautions
    .filter(({ id, work }) => cautions.includes(id) || work.some((kind) => hurts.includes(kind)))
    .map(({ id }) => id);

/**
 * What is told of cautions at a line: each in full once for a kind of work, at its first line, and at the line at which somebody came in: who comes
 * back a day later has not read them.
 */
export function cautionsAt(lines: readonly WorkLine[], at: number, cameInAt: number): LineCautions {
  const own = cautionsOf(lines[at]);
  if (at === cameInAt) return { told: own, named: [] };
  const before = new Set(
    lines.slice(0, at).flatMap((line) => (line.phase === lines[at].phase ? cautionsOf(line) : [])),
  );
  return { told: own.filter((id) => !before.has(id)), named: own.filter((id) => before.has(id)) };
}
