import { ReactiveElement } from 'lit';

/** Has every element of a tree say its words anew. Nothing is made anew, so that fields, the keyboard's place and the 3D picture stay. */
export function drawAnew(root: Document | ShadowRoot | Element): void {
  for (const element of root.querySelectorAll('*')) {
    if (element instanceof ReactiveElement) element.requestUpdate();
    if (element.shadowRoot !== null) drawAnew(element.shadowRoot);
  }
}
