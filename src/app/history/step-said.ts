import { labelText } from '../label-words.ts';
import type { Trail } from '../../project/history.ts';
import { HISTORY_WORDS } from './history-words.ts';

/** What a step did, in the words of the screen. @param label  of its command; null for the state it was opened in. */
export const stepSaid = (label: string | null): string =>
  label === null ? HISTORY_WORDS.steps.opened : labelText(label);

/** Where the history is now, for who hears it. @param said  what was done; empty: what the step did is said. */
export function placeSaid({ steps, at }: Trail, said: string): string {
  const words = HISTORY_WORDS.steps;
  const last = steps.length - 1;
  return said === '' ? words.walked(stepSaid(steps[at].label), at, last) : `${said} ${words.place(at, last)}`;
}
