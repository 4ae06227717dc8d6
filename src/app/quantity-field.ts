import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatPlain } from '../base/format-length.ts';
import { readFigure } from '../base/read-figure.ts';
import { QUANTITY_WORDS } from './quantity-words.ts';
import { SHARED } from './styles.ts';

/** A number was typed; null where the field was emptied. */
export class NumberEvent extends Event {
  constructor(readonly value: number | null) {
    super('fl-number', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-number': NumberEvent;
  }
}

/** A field for one number that is no length: decimal point or comma. */
@customElement('fl-number-field')
export class NumberField extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: inline-block;
      }
      label {
        display: flex;
        flex-direction: column;
        color: var(--ink-soft);
      }
      .unit {
        display: flex;
        align-items: baseline;
        gap: var(--s1);
      }
      input {
        inline-size: 5.5em;
        font-size: var(--t-body);
      }
      .wrong {
        color: var(--wrong);
        max-inline-size: 14em;
      }
    `,
  ];

  /** Number in force; null shows an empty field. */
  @property({ type: Number }) value: number | null = null;
  @property() label = '';
  /** Said behind the number. */
  @property() unit = '';
  @property({ type: Number }) least = 0;
  @property({ type: Number }) most = Infinity;
  /** True where the least itself is not taken. */
  @property({ type: Boolean }) isOver = false;
  @property({ type: Boolean }) isWhole = false;
  /** True where an emptied field says something: it is not known. */
  @property({ type: Boolean }) mayBeEmpty = false;
  @state() private fault = '';

  protected override render() {
    const { value } = this;
    return html`<label>
        ${this.label}
        <span class="unit">
          <input
            type="text"
            inputmode="decimal"
            autocomplete="off"
            .value=${value === null ? '' : formatPlain(value)}
            aria-invalid=${this.fault === '' ? 'false' : 'true'}
            aria-describedby="fault"
            @change=${this.#take}
          />${this.unit === '' ? nothing : html`<span>${this.unit}</span>`}</span
        >
      </label>
      <span id="fault" class="small wrong" role="status">${this.fault}</span>`;
  }

  #take(event: Event): void {
    const text = (event.target as HTMLInputElement).value.trim();
    const value = text === '' ? null : readFigure(text);
    if (value === null ? !this.mayBeEmpty : !this.#isFit(value)) {
      this.fault = QUANTITY_WORDS.wrong(this.least, this.most, this.isOver, this.isWhole);
      return;
    }
    this.fault = '';
    if (value !== this.value) this.dispatchEvent(new NumberEvent(value));
  }

  #isFit(value: number): boolean {
    const { least, most, isOver, isWhole } = this;
    return (isOver ? value > least : value >= least) && value <= most && (!isWhole || Number.isInteger(value));
  }
}
