import type { PartWork } from '../../model/part-work.ts';
import type { PlainStep } from '../../model/plain-piece.ts';
import type { Outcome } from '../outcome.ts';

/** The work on every part that no sculpt was parted for, in the order of the project; parts that could not be made, or take no work, are left out; then how they are put together. */
export const partWorks = ({ plain, assembly }: Pick<Outcome, 'plain' | 'assembly'>): readonly PartWork[] => [
  ...plain.flatMap(({ part, work, pieces }): PartWork[] =>
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
  ),
  ...(assembly.steps.length === 0 ? [] : [together(assembly.steps)]),
];

/** What is done when each part is made. */
const together = (steps: readonly PlainStep[]): PartWork => ({
  part: 'assembly',
  name: 'All parts together',
  copies: 1,
  steps: steps.map(({ work, text, glueMm2, cautions }) => ({
    work,
    text,
    pieces: [],
    numbers: [],
    glueMm2,
    cautions,
  })),
});
