import type { Notice } from '../workbench.ts';
import { OFFLINE_WORDS } from './offline-words.ts';

/** Names of texts alone. */
type TextName = Exclude<keyof typeof OFFLINE_WORDS, 'states' | symbol>;

/** A notice that may stand for long: it is in the language in force whenever it is drawn. */
export const lastingNotice = (text: TextName): Notice => ({
  tone: 'note',
  get text() {
    return OFFLINE_WORDS[text];
  },
});

/** The same with a way out. @param label  name of what its button says; the other says that there is time */
export const lastingOffer = (text: TextName, label: TextName, run: () => void): Notice => ({
  tone: 'note',
  get text() {
    return OFFLINE_WORDS[text];
  },
  remedy: {
    get label() {
      return OFFLINE_WORDS[label];
    },
    run,
  },
  get close() {
    return OFFLINE_WORDS.later;
  },
});
