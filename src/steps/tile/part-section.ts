import { CAUTION_ENDING, CAUTIONS, cautionsById } from '../../model/cautions.ts';
import type { PartStep, PartWork } from '../../model/part-work.ts';
import type { Flow } from './flow.ts';

/**
 * The work on parts that no sculpt was parted for, part by part. A caution stands in full before the first part that needs it, and each step names those it
 * needs.
 * @param told  ids of cautions that stand on the sheet already.
 */
export function putPartWorks(
  flow: Flow,
  works: readonly PartWork[],
  told: readonly string[],
  putCautions: (flow: Flow, texts: readonly string[]) => void,
): void {
  const known = new Set(told);
  for (const { name, copies, steps } of works) {
    flow.heading(copies === 1 ? name : `${name}, ${copies} of it`);
    const fresh = steps.flatMap(({ cautions }) => cautions).filter((id) => !known.has(id));
    // The ending stands once, after the first block of the sheet.
    const texts = cautionsById(fresh).filter((text) => known.size === 0 || text !== CAUTION_ENDING);
    putCautions(flow, texts);
    for (const id of fresh) known.add(id);
    steps.forEach((step, i) => flow.paragraph(partStepText(step, i + 1), {}, 0.8));
  }
}

/** `2. Close seam A …  (pieces 3, 4) Caution: Knife, Dust.` */
export function partStepText({ text, numbers, cautions }: PartStep, number: number): string {
  const pieces = numbers.length === 0 ? '' : ` (${numbers.length === 1 ? 'piece' : 'pieces'} ${numbers.join(', ')})`;
  const titles = CAUTIONS.filter(({ id }) => cautions.includes(id)).map(({ title }) => title);
  return `${number}. ${text}${pieces}${titles.length === 0 ? '' : ` Caution: ${titles.join(', ')}.`}`;
}
