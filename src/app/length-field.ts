import { LitElement, css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatInches, formatPlain, isWholeSixteenths, parseLength, type LengthUnit } from '../base/format-length.ts';
import { partsThousands } from '../base/read-figure.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** A length was typed, mm. */
export class LengthEvent extends Event {
  constructor(readonly mm: number) {
    super('fl-length', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-length': LengthEvent;
  }
}

/** Before a length whose sixteenths of an inch are rounded: what is meant stays as it is until something else is typed. */
const ABOUT = '\u2248\u00a0';

/** A field for one length: takes mm, cm, m and inches with fractions, decimal point or comma. */
@customElement('fl-length-field')
export class LengthField extends LitElement {
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
      input {
        inline-size: 7.5em;
        font-size: var(--t-body);
      }
      :host(.inline) label {
        flex-direction: row;
        align-items: center;
        gap: var(--s2);
        font-size: var(--t-small);
      }
      :host(.inline) input {
        inline-size: 5em;
      }
      .wrong {
        color: var(--wrong);
        max-inline-size: 12em;
      }
    `,
  ];

  /** Length in force, mm; null shows an empty field. */
  @property({ type: Number }) mm: number | null = null;
  /** What a bare number means, and how the length is shown. */
  @property() unit: LengthUnit = 'mm';
  @property() label = '';
  /** Least and greatest length taken, mm. */
  @property({ type: Number }) min = 0;
  @property({ type: Number }) max = Infinity;
  @state() private fault = '';

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector('input')?.focus(options);
  }

  protected override render() {
    return html`
      <label>
        ${this.label}
        <input
          type="text"
          inputmode="decimal"
          autocomplete="off"
          .value=${this.#shown()}
          aria-invalid=${this.fault === '' ? 'false' : 'true'}
          aria-describedby="fault"
          @change=${this.#take}
        />
      </label>
      <span id="fault" class="small wrong" role="status">${this.fault}</span>
    `;
  }

  #shown(): string {
    if (this.mm === null) return '';
    const sign = this.mm < 0 ? '\u2212' : '';
    const size = Math.abs(this.mm);
    if (this.unit === 'mm') return `${sign}${formatPlain(size)}\u00a0mm`;
    return `${isWholeSixteenths(size) ? '' : ABOUT}${sign}${formatInches(size)}`;
  }

  #take(event: Event): void {
    const input = event.target as HTMLInputElement;
    const mm = this.#read(input.value.replace(ABOUT.trim(), ''));
    if (mm === null || mm < this.min || mm > this.max) {
      const { wrong, thousands } = WORDS.field;
      this.fault = partsThousands(input.value) ? thousands : wrong(this.min, this.max, this.unit);
      return;
    }
    this.fault = '';
    if (mm !== this.mm) this.dispatchEvent(new LengthEvent(mm));
  }

  /** Nothing is a length here where the field allows it, a margin or an overlap; and less than nothing, a way inward, where it allows that. */
  #read(text: string): number | null {
    if (this.min <= 0 && /^\s*0+([.,]0*)?\s*(mm|in)?\s*$/.test(text)) return 0;
    const minus = this.min < 0 ? /^\s*[-\u2212]/.exec(text) : null;
    if (minus === null) return parseLength(text, this.unit);
    const mm = parseLength(text.slice(minus[0].length), this.unit);
    return mm === null ? null : -mm;
  }
}
