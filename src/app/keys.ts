import type { Verb } from './verb.ts';

/** What a key press asks of the window: a verb by its id, or a step back, or the finder. */
export type KeyWish = { readonly verb: string } | 'back' | 'find' | null;

/** Signs that ask the same wherever the maker is, beside the letters of verbs. */
export const SIGN_KEYS: Readonly<Record<string, KeyWish>> = { '/': 'find', '?': { verb: 'help-keys' } };

/** What goes with Ctrl, or with the command key, by verbs; a shift key that says nothing of its own changes nothing. */
export const CONTROL_KEYS: Readonly<Record<string, string>> = {
  z: 'undo',
  'shift z': 'redo',
  y: 'redo',
  s: 'save-project',
  o: 'open',
};

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
  if (Object.hasOwn(SIGN_KEYS, key)) return SIGN_KEYS[key];
  const verb = event.shiftKey ? undefined : verbs.find((candidate) => candidate.key === key);
  return verb === undefined ? null : { verb: verb.id };
}

/** A field being typed in keeps its own undo. */
function withControl(key: string, shift: boolean, isInField: boolean): KeyWish {
  if (isInField && (key === 'z' || key === 'y')) return null;
  const named = [`${shift ? 'shift ' : ''}${key}`, key].find((name) => Object.hasOwn(CONTROL_KEYS, name));
  return named === undefined ? null : { verb: CONTROL_KEYS[named] };
}

/** A key by itself, and not typed into a field. */
export const isBare = (event: KeyboardEvent): boolean =>
  !isTyping(event) && !event.ctrlKey && !event.metaKey && !event.altKey;

/** True where Enter presses what has the focus. */
export const isPressed = (event: Event): boolean => event.composedPath()[0] instanceof HTMLButtonElement;

/** True where letters belong to a field: there they are typed. */
export const isTyping = (event: Event): boolean => takesLetters(event.composedPath()[0]);

/** Sliders, ticks and radios take no letters. */
export function takesLetters(target: EventTarget): boolean {
  if (target instanceof HTMLInputElement)
    return !['range', 'radio', 'checkbox', 'button', 'file'].includes(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}
