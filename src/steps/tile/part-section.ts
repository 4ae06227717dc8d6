import { cautionsById } from '../../model/cautions.ts';
import type { PartStep, PartWork } from '../../model/part-work.ts';
import type { Flow } from './flow.ts';

/** The work on parts that no sculpt was parted for, part by part, with the cautions before the steps. */
export function putPartWorks(
  flow: Flow,
  works: readonly PartWork[],
  putCautions: (flow: Flow, texts: readonly string[]) => void,
): void {
  for (const { name, copies, steps } of works) {
    flow.heading(copies === 1 ? name : `${name}, ${copies} of it`);
    putCautions(flow, cautionsById(steps.flatMap(({ cautions }) => cautions)));
    steps.forEach((step, i) => flow.paragraph(partStepText(step, i + 1), {}, 0.8));
  }
}

/** `2. Close seam A …  (3, 4)` */
export const partStepText = ({ text, numbers }: PartStep, number: number): string =>
  `${number}. ${text}${numbers.length === 0 ? '' : ` (${numbers.length === 1 ? 'piece' : 'pieces'} ${numbers.join(', ')})`}`;
