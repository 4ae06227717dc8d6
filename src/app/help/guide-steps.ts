import { sculptAtWork } from '../../project/at-work.ts';
import type { Project } from '../../project/project.ts';
import type { ViewState, Wishes } from '../view-state.ts';
import type { GUIDE_WORDS } from './guide-words.ts';

export type StepName = keyof typeof GUIDE_WORDS.steps;

/** What the steps are told by. */
export interface GuideFacts {
  readonly project: Project | null;
  readonly view: Pick<ViewState, 'stage' | 'colouring' | 'look' | 'choice' | 'paperOut' | 'help'>;
  readonly wishes: Pick<Wishes, 'printers'>;
}

/** One step of the guided job. */
export interface GuideStep {
  readonly name: StepName;
  /** Line of the job sheet it is done at, or `stage`: at the slider under the picture. */
  readonly at: string;
  /** True once the maker has really done it. @param then  how all was when the job was begun. */
  isDone(now: GuideFacts, then: GuideFacts): boolean;
}

/** Whether something of the document is another than it was. */
function hasChanged(read: (project: Project) => unknown, now: GuideFacts, then: GuideFacts): boolean {
  if (now.project === null || then.project === null) return false;
  return JSON.stringify(read(now.project)) !== JSON.stringify(read(then.project));
}

const stageOf = ({ view }: GuideFacts): number => Math.round(view.stage);

/** The steps in their order. */
export const GUIDE_STEPS: readonly GuideStep[] = [
  {
    name: 'size',
    at: 'size',
    isDone: (now, then) => hasChanged((project) => sculptAtWork(project)?.scale ?? null, now, then),
  },
  { name: 'apart', at: 'stage', isDone: (now) => stageOf(now) === 1 },
  {
    name: 'seam',
    at: 'seams',
    isDone: (now, then) => hasChanged((project) => sculptAtWork(project)?.seams ?? null, now, then),
  },
  {
    name: 'foam',
    at: 'foam',
    isDone: (now, then) =>
      hasChanged(
        (project) => sculptAtWork(project)?.layers.map(({ foam, thicknessMm }) => [foam, thicknessMm]) ?? null,
        now,
        then,
      ),
  },
  { name: 'stretch', at: 'fit', isDone: ({ view }) => view.colouring === 'stretch' },
  { name: 'fit', at: 'fit', isDone: ({ view }) => view.colouring === 'fit' || view.look === 'prop' },
  { name: 'sheets', at: 'sheets', isDone: (now) => stageOf(now) === 3 || now.view.choice.kind === 'sheet' },
  {
    name: 'paper',
    at: 'paper',
    isDone: (now, then) => now.view.choice.kind === 'page' || hasChanged(({ paper }) => paper, now, then),
  },
  { name: 'pdf', at: 'paper', isDone: ({ view }) => view.paperOut !== null || view.help.saved.includes('pdf') },
  {
    name: 'square',
    at: 'paper',
    isDone: (now, then) =>
      hasChanged(({ printers = [] }) => printers.length > 0 && printers, now, then) ||
      (now.wishes.printers?.length ?? 0) > (then.wishes.printers?.length ?? 0),
  },
];

/** Names of all steps that are done, those that were done before first. */
export const doneSteps = (before: readonly string[], now: GuideFacts, then: GuideFacts): readonly string[] => [
  ...before,
  ...GUIDE_STEPS.filter((step) => !before.includes(step.name) && step.isDone(now, then)).map(({ name }) => name),
];

/** The first step after one that is not done yet, from the beginning again where none is left behind it; null when all are done. */
export function nextStep(done: readonly string[], after: number): number | null {
  const open = GUIDE_STEPS.map((_, i) => i).filter((i) => !done.includes(GUIDE_STEPS[i].name));
  return open.find((i) => i > after) ?? open.at(0) ?? null;
}
