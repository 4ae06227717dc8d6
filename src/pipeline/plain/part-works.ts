import type { PartWork } from '../../model/part-work.ts';
import type { PlainOutcome } from './plain-outcome.ts';

/** The work on every part that no sculpt was parted for, in the order of the project; parts that could not be made, or take no work, are left out. */
export const partWorks = (plain: readonly PlainOutcome[]): readonly PartWork[] =>
  plain.flatMap(({ part, work, pieces }): PartWork[] =>
    work === null || work.steps.length === 0
      ? []
      : [
          {
            part: part.id,
            name: part.name,
            copies: part.copies,
            steps: work.steps.map((step) => {
              const own = pieces.filter(({ draft }) => step.pieces.includes(draft.key));
              return {
                work: step.work,
                text: step.text,
                pieces: own.map(({ id }) => id),
                numbers: own.map(({ number }) => number),
                glueMm2: step.glueMm2,
                cautions: step.cautions,
              };
            }),
          },
        ],
  );
