import { html } from 'lit';
import type { Verb } from './verb.ts';

const nameOf = (key: string): string => `--key-${key.toLowerCase()}`;

/** A key on a button; hidden while the window says that the key does something else, with what is chosen or in hand. */
export const keyCap = (key: string) => html`<kbd class=${`key-${key.toLowerCase()}`}>${key}</kbd>`;

/** Verbs whose key is taken by one that stands before them: it goes first when the key is pressed. */
export function isTaken(verbs: readonly Verb[], verb: Verb): boolean {
  return verb.key !== undefined && verbs.find(({ key }) => key === verb.key) !== verb;
}

/** Hides the keys that are taken, on every button inside an element, and shows the others. */
export function showKeys(element: HTMLElement, verbs: readonly Verb[]): void {
  const taken = new Set(verbs.flatMap((verb) => (isTaken(verbs, verb) ? [nameOf(verb.key ?? '')] : [])));
  for (const name of [...element.style].filter((own) => own.startsWith('--key-')))
    if (!taken.has(name)) element.style.removeProperty(name);
  for (const name of taken) if (element.style.getPropertyValue(name) === '') element.style.setProperty(name, 'none');
}
