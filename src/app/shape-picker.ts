import { LitElement, css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ShapeOffer } from '../worker/parts-api.ts';
import { shapeText } from './data-words.ts';
import { PART_WORDS } from './part-words.ts';
import { groupedShapes } from './shape-groups.ts';
import { SHARED } from './styles.ts';

/** A shape was chosen by its name. */
export class ShapeNameEvent extends Event {
  constructor(readonly shape: string) {
    super('fl-shape-name', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-shape-name': ShapeNameEvent;
  }
}

/** The catalogue of shapes: a word narrows it, arrow keys go through it. */
@customElement('fl-shape-picker')
export class ShapePicker extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: grid;
        gap: var(--s2);
      }
      input {
        inline-size: 100%;
        font-size: var(--t-body);
      }
      select {
        inline-size: 100%;
        block-size: 12.5em;
        padding: var(--s1);
        border: var(--narrow) solid var(--ink);
      }
      optgroup {
        font-style: normal;
        font-weight: 600;
        font-size: var(--t-small);
        color: var(--ink-soft);
      }
      option {
        font-size: var(--t-body);
        font-weight: 450;
        color: var(--ink);
        padding-block: 3px;
      }
      option:checked {
        background: var(--lamp) linear-gradient(var(--lamp), var(--lamp));
        color: var(--on-lamp);
      }
    `,
  ];

  @property({ attribute: false }) offers: readonly ShapeOffer[] = [];
  /** Name of the one in force. */
  @property() shape = '';
  @state() private word = '';

  override focus(): void {
    this.renderRoot.querySelector('input')?.focus();
  }

  protected override render() {
    const words = PART_WORDS.shapes;
    const groups = groupedShapes(this.offers, this.word);
    const found = groups.reduce((sum, { offers }) => sum + offers.length, 0);
    return html`<label>
        ${words.find}
        <input
          data-means="shape-find"
          type="text"
          autocomplete="off"
          spellcheck="false"
          .value=${this.word}
          @input=${(event: Event) => (this.word = (event.target as HTMLInputElement).value)}
          @keydown=${this.#key}
        />
      </label>
      <select data-means="shape" size="9" aria-label=${words.list} @change=${this.#take}>
        ${groups.map(
          ({ group, offers }) =>
            html`<optgroup label=${PART_WORDS.groups[group]}>
              ${offers.map(
                ({ name }) => html`<option value=${name} .selected=${name === this.shape}>${shapeText(name)}</option>`,
              )}
            </optgroup>`,
        )}
      </select>
      <p class="small soft" role="status">${words.found(found)}</p>`;
  }

  /** From the word down into the list; Enter takes the first that was found. */
  #key(event: KeyboardEvent): void {
    const [first] = groupedShapes(this.offers, this.word);
    const list = this.renderRoot.querySelector('select');
    if (first === undefined || list === null || !['ArrowDown', 'Enter'].includes(event.key)) return;
    event.preventDefault();
    if (event.key === 'ArrowDown') return list.focus();
    this.#choose(first.offers[0].name);
  }

  #take(event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    if (value !== '') this.#choose(value);
  }

  #choose(shape: string): void {
    if (shape !== this.shape) this.dispatchEvent(new ShapeNameEvent(shape));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-shape-picker': ShapePicker;
  }
}
