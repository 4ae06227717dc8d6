import type { Wishes } from '../view-state.ts';
import { drawAnew } from './draw-anew.ts';
import { language, languageFor, speak, type LanguageWish } from './language.ts';

/** What it follows: the window's state, which tells of each change. */
export interface Wishing extends EventTarget {
  readonly wishes: Wishes;
}

/**
 * Keeps the window in the language that is wished. Where its words cannot be fetched the window stays in the one before, until another is wished.
 * @returns when the window may be drawn for the first time.
 */
export function followLanguage(workbench: Wishing): Promise<void> {
  let seen: LanguageWish | null = null;
  let running = Promise.resolve();
  const catchUp = async (): Promise<void> => {
    const wanted = languageFor(seen ?? 'auto', navigator.languages);
    if (wanted === language()) return;
    try {
      await speak(wanted, document.documentElement);
    } catch {
      return;
    }
    drawAnew(document);
  };
  const follow = (): Promise<void> => (running = running.then(catchUp));
  workbench.addEventListener('change', () => {
    const { language: wish = 'auto' } = workbench.wishes;
    if (wish === seen) return;
    seen = wish;
    void follow();
  });
  window.addEventListener('languagechange', () => void follow());
  return follow();
}
