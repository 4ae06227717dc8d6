import type { Workbench } from '../workbench.ts';

type Field = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

const isField = (at: EventTarget | undefined): at is Field =>
  at instanceof HTMLInputElement || at instanceof HTMLSelectElement || at instanceof HTMLTextAreaElement;

const isTick = (field: Field): field is HTMLInputElement =>
  field instanceof HTMLInputElement && ['checkbox', 'radio'].includes(field.type);

/** The field that has the keyboard goes back to what it said before, where what was typed or ticked in it is refused: nothing else would draw it anew. */
export class FieldKeeper {
  #putBack: () => void = () => undefined;

  constructor(readonly bench: Workbench) {}

  start(): void {
    window.addEventListener('focusin', this.#note, true);
    this.bench.addEventListener('refused', this.#refuse);
  }

  stop(): void {
    window.removeEventListener('focusin', this.#note, true);
    this.bench.removeEventListener('refused', this.#refuse);
  }

  readonly #refuse = (): void => this.#putBack();

  readonly #note = (event: Event): void => {
    const field = event.composedPath()[0];
    this.#putBack = isField(field) ? asItWas(field) : () => undefined;
  };
}

/** What puts a field back to what it says now; of radio buttons all of its name. */
function asItWas(field: Field): () => void {
  if (!isTick(field)) {
    const { value } = field;
    return () => (field.value = value);
  }
  const root = field.getRootNode() as Document | ShadowRoot;
  const group =
    field.type === 'radio' && field.name !== ''
      ? [...root.querySelectorAll<HTMLInputElement>(`input[type="radio"][name="${CSS.escape(field.name)}"]`)]
      : [field];
  const ticked = group.map(({ checked }) => checked);
  return () => group.forEach((one, i) => (one.checked = ticked[i]));
}
