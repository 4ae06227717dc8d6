import { isMeant, type Meant } from './means-words.ts';

/** What a value is typed into or picked from. */
export type Field = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

const FIELDS = 'input, select, textarea';
/** Lines and ends of the job sheet: they keep a margin free beside what is in them. */
const LINES = 'fl-job-line, fl-job-head, fl-job-foot';

/** The next element outward, out of shadow roots and slots as well. */
function outward(element: Element): Element | null {
  const { parentNode } = element;
  if (parentNode instanceof ShadowRoot) return parentNode.host;
  return parentNode instanceof Element ? parentNode : null;
}

/** What a field is, by the nearest `data-means` on it or around it; null where nothing is said of it. */
export function meaningOf(field: Element): Meant | null {
  for (let here: Element | null = field; here !== null; here = outward(here)) {
    const of = here instanceof HTMLElement ? here.dataset['means'] : undefined;
    if (of !== undefined) return isMeant(of) ? of : null;
  }
  return null;
}

/** The field that something happened at, or at its label; null where that is none that is spoken of. */
export function fieldAt(event: Event): Field | null {
  for (const part of event.composedPath()) {
    const field = part instanceof HTMLLabelElement ? part.control : part;
    if (field instanceof HTMLElement && field.matches(FIELDS) && meaningOf(field) !== null) return field as Field;
  }
  return null;
}

/** The line of the job sheet a field lies in; null where it lies beside the bench. */
export function lineOf(field: Element): HTMLElement | null {
  for (let here: Element | null = field; here !== null; here = outward(here)) {
    if (here instanceof HTMLElement && here.matches(LINES)) return here;
  }
  return null;
}

/** Where a field lies with its label, px of the window. */
export function boxOf(field: Field): DOMRect {
  const own = field.getBoundingClientRect();
  const label = field.closest('label')?.getBoundingClientRect();
  if (label === undefined || label.width === 0) return own;
  const [x, y] = [Math.min(own.x, label.x), Math.min(own.y, label.y)];
  return new DOMRect(x, y, Math.max(own.right, label.right) - x, Math.max(own.bottom, label.bottom) - y);
}
