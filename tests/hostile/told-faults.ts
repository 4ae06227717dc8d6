import type { Finding } from '../../src/base/finding.ts';
import type { Problem } from '../../src/base/result.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { unsound } from './expect-sound.ts';

const CLEAR = /^[A-Z0-9].{20,}[.!?]$/s;
const BROKEN = /NaN|Infinity|undefined|null|\[object/;

/** What is wrong with what a run tells: sentences that say nothing, figures that are none, and any number of what it made that is not finite. */
export function toldFaults(outcome: Outcome): string[] {
  const { stopped, pieces, seams, templates, turned, sheets, paper, dryFit, springing, findings, layers } = outcome;
  return [
    ...unsound({ pieces, seams, templates, turned, sheets, paper, dryFit, springing, findings }),
    ...layers.flatMap(({ cut, flats, hinges }, i) =>
      unsound({ shell: cut?.shell, shells: cut?.shells, flats, hinges }, `.layers[${i}]`),
    ),
    ...findings.flatMap(findingFaults),
    ...(stopped === null ? [] : problemFaults(stopped.problem)),
  ];
}

/** What is wrong with the sentence of a refusal. */
export const problemFaults = ({ code, text }: Problem): string[] => [
  ...(/^[a-z]+\/[a-z-]+$/.test(code) ? [] : [`code of a problem: ${code}`]),
  ...(CLEAR.test(text) && !BROKEN.test(text) ? [] : [`${code} says: ${text}`]),
];

function findingFaults({ code, text, value, limit }: Finding): string[] {
  const figures = [value, limit].filter((figure) => figure !== undefined && !Number.isFinite(figure));
  return [
    ...problemFaults({ code, text, where: {} }),
    ...figures.map((figure) => `${code} has the figure ${String(figure)}`),
  ];
}
