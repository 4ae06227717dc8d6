import type { Finding } from '../base/finding.ts';
import type { RevisedPiece } from '../project/done-commands.ts';
import { goneOf, standingOf } from '../project/piece-standing.ts';
import type { PieceDone } from '../project/project.ts';

/** So many are named; the rest is counted. */
const MOST_NAMED = 8;

/** A piece or strip as it is told of. */
interface Told extends RevisedPiece {
  readonly number: number;
  readonly name: string;
  /** Of a strip: the seam it is for. */
  readonly seam?: string;
}

/**
 * What the maker must know of paper that is printed and foam that is cut: a cut piece that would change is said one by one, as its foam is spent;
 * stale paper in one sentence.
 */
export function standingFindings(done: readonly PieceDone[] | undefined, pieces: readonly Told[]): readonly Finding[] {
  if (done === undefined) return [];
  const standings = standingOf(done, pieces);
  const changed = pieces.filter((_, i) => standings[i].foam === 'changed');
  const stale = pieces.filter((_, i) => standings[i].paper === 'stale' && standings[i].foam === 'none');
  const gone = goneOf(done, pieces);
  const cutAndGone = gone.filter(({ cut }) => cut !== undefined).length;
  return [
    ...changed.map(({ id, number, name, revision, seam }): Finding => ({
      code: 'done/changed',
      severity: 'warning',
      text: `${number} ${name} is ticked as cut, but is no longer what was cut (now revision ${revision}): take the last change back, or release the piece and cut it anew.`,
      where: seam === undefined ? { piece: id } : { seam },
    })),
    ...(cutAndGone === 0
      ? []
      : [
          {
            code: 'done/gone',
            severity: 'warning',
            text: `${cutAndGone === 1 ? 'A piece that is' : `${cutAndGone} pieces that are`} ticked as cut ${cutAndGone === 1 ? 'is' : 'are'} no more: take the last change back, or forget what was ticked.`,
            value: cutAndGone,
            where: {},
          } as const,
        ]),
    ...(stale.length === 0
      ? []
      : [
          {
            code: 'done/stale',
            severity: 'note',
            text: `Printed paper is out of date for ${listed(stale)}: save the pages of what changed, and throw the old ones away.`,
            value: stale.length,
            where: {},
          } as const,
        ]),
  ];
}

function listed(pieces: readonly Told[]): string {
  const named = pieces.slice(0, MOST_NAMED).map(({ number, name }) => `${number} ${name}`);
  const rest = pieces.length - named.length;
  return named.join(', ') + (rest > 0 ? ` and ${rest} more` : '');
}
