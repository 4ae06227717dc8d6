import { versionsOf } from '../../project/kept-version.ts';
import type { Verb, WindowActions } from '../verb.ts';
import type { Workbench } from '../workbench.ts';
import { HISTORY_WORDS } from './history-words.ts';

/** Ways to the history, to keeping a version, and to two side by side. */
export function historyVerbs({ project }: Workbench, actions: WindowActions): Verb[] {
  if (project === null) return [];
  const { verbs } = HISTORY_WORDS;
  return [
    { id: 'history', label: verbs.history, key: 'y', run: () => actions.goTo('history', 'fl-step-list') },
    { id: 'keep-version', label: verbs.keep, run: () => actions.goTo('history', 'fl-version-list') },
    {
      id: 'compare-two',
      label: versionsOf(project).length === 0 ? verbs.compareSteps : verbs.compare,
      run: () => actions.goTo('history', 'fl-compare-two'),
    },
  ];
}
