import type { FileKind } from '../../worker/workshop-api.ts';
import type { Verb, WindowActions } from '../verb.ts';
import type { Workbench } from '../workbench.ts';
import { nextStep, type NextStep } from './next-step.ts';
import { findingKey, toldFindings } from './told-findings.ts';
import { VERDICT_WORDS } from './verdict-words.ts';
import { verdictOf } from './verdict.ts';

/** What goes to paper as it is: files, and the browser's own dialogue. */
const PRINTED: readonly (FileKind | 'print')[] = ['pdf', 'changed', 'print'];

/** What is best done next as things stand. */
export const nextOf = ({ project, bench, view, progress }: Workbench): NextStep =>
  nextStep({
    project,
    bench,
    seen: view.seen,
    isPaperOut: bench.paper !== null && view.paperOut === bench.paper,
    isWorking: progress !== null,
    shop: view.gluing.shop,
    offered: Object.keys(view.proposals?.answers ?? {}).length,
  });

/** Leads to the verdict; what stands there counts as shown. */
export function seeFindings(workbench: Workbench, actions: WindowActions): void {
  workbench.setView({ seen: toldFindings(workbench.bench).map(findingKey), printAsked: null });
  actions.goTo('paper', 'fl-verdict');
}

/** Saves what is printed; where something stops it, it is asked for once more first, in its place. @param isSure it was asked and is wished. */
export function saveOrAsk(
  workbench: Workbench,
  actions: WindowActions,
  kind: FileKind | 'print',
  isSure = false,
): void {
  const isStopped = verdictOf(workbench.bench).told.error.length > 0;
  if (PRINTED.includes(kind) && isStopped && !isSure) {
    workbench.setView({ printAsked: kind });
    return actions.goTo('paper', '.ask');
  }
  workbench.setView({ printAsked: null });
  if (kind === 'print') actions.print();
  else actions.save(kind);
}

/** Verbs of what comes next and of whether it will work. */
export function verdictVerbs(workbench: Workbench, actions: WindowActions, rest: readonly Verb[]): Verb[] {
  const next = nextOf(workbench);
  const { printAsked: asked } = workbench.view;
  const see: Verb = { id: 'see-findings', label: VERDICT_WORDS.verbs.see, run: () => seeFindings(workbench, actions) };
  const take: Verb = {
    id: 'go-proposals',
    label: VERDICT_WORDS.next.take(),
    run: () => actions.goTo('seams', 'fl-proposals'),
  };
  const lead = [...rest, see, take].find(({ id }) => id === next.verb);
  return [
    ...(lead === undefined
      ? []
      : [
          {
            id: 'next-step',
            label: VERDICT_WORDS.nextIs(VERDICT_WORDS.next[next.kind](next.count)),
            key: '.',
            run: () => lead.run(),
          },
        ]),
    ...(workbench.project === null ? [] : [see]),
    ...(asked === null
      ? []
      : [
          {
            id: 'save-anyway',
            label: VERDICT_WORDS.verbs.anyway,
            run: () => saveOrAsk(workbench, actions, asked, true),
          },
        ]),
  ];
}
