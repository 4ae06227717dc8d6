import type { Verb } from './verbs.ts';

/** What a key press asks of the window: a verb by its id, or a step back, or the finder. */
export type KeyWish = { readonly verb: string } | 'back' | 'find' | null;

/**
 * Reads a key press.
 * @param letterKeys false leaves single letters alone (WCAG 2.1.4).
 */
export function keyWish(event: KeyboardEvent, verbs: readonly Verb[], letterKeys: boolean): KeyWish {
  const key = event.key.toLowerCase();
  if (event.ctrlKey || event.metaKey) return event.altKey ? null : withControl(key, event.shiftKey, isTyping(event));
  if (event.altKey) return null;
  if (event.key === 'Escape') return 'back';
  if (!letterKeys || isTyping(event)) return null;
  if (key === '/') return 'find';
  const verb = event.shiftKey ? undefined : verbs.find((candidate) => candidate.key === key);
  return verb === undefined ? null : { verb: verb.id };
}

/** A field being typed in keeps its own undo. */
function withControl(key: string, shift: boolean, isInField: boolean): KeyWish {
  if (isInField && (key === 'z' || key === 'y')) return null;
  if (key === 'z') return { verb: shift ? 'redo' : 'undo' };
  if (key === 'y') return { verb: 'redo' };
  if (key === 's') return { verb: 'save-project' };
  return key === 'o' ? { verb: 'open' } : null;
}

/** A key by itself, and not typed into a field. */
export const isBare = (event: KeyboardEvent): boolean =>
  !isTyping(event) && !event.ctrlKey && !event.metaKey && !event.altKey;

/** True where Enter presses what has the focus. */
export const isPressed = (event: Event): boolean => event.composedPath()[0] instanceof HTMLButtonElement;

/** True where letters belong to a field: there they are typed. Sliders, ticks and radios take no letters. */
export function isTyping(event: Event): boolean {
  const [target] = event.composedPath();
  if (target instanceof HTMLInputElement)
    return !['range', 'radio', 'checkbox', 'button', 'file'].includes(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}
