import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { formatPlain } from '../base/format-length.ts';
import { MOCK_UP_LIMITS, USUAL_MOCK_UP, type MockUp } from '../project/mock-up.ts';
import { MockUpEvent } from './events.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { MOCK_UP_WORDS } from './mock-up-words.ts';
import { SHARED } from './styles.ts';

/** Asks how small the mock-up is to be and of what card, and for its pages. */
@customElement('fl-mock-up-fields')
export class MockUpFields extends JobSection {
  static override styles = [SHARED, FIELDS_STYLE];

  @state() private wish: MockUp = USUAL_MOCK_UP;

  protected override render() {
    const { times, cardMm } = this.wish;
    const words = MOCK_UP_WORDS;
    return html`<fieldset class="stack">
      <legend>${words.heading}</legend>
      <p class="small soft">${words.what}</p>
      <div class="fields">
        <label>
          ${words.scale}
          <select data-means="mock-up-scale" @change=${this.#takeScale}>
            ${SCALES.map(
              (scale) => html`<option value=${scale} ?selected=${scale === times}>1:${formatPlain(scale)}</option>`,
            )}
          </select>
        </label>
        <fl-length-field
          data-means="card"
          .label=${words.card}
          .mm=${cardMm}
          .unit=${this.unit}
          .min=${MOCK_UP_LIMITS.cardMm.least}
          .max=${MOCK_UP_LIMITS.cardMm.most}
          @fl-length=${this.#takeCard}
        ></fl-length-field>
      </div>
      <div><button @click=${() => this.dispatchEvent(new MockUpEvent(this.wish))}>${words.save}</button></div>
    </fieldset>`;
  }

  #takeScale(event: Event): void {
    this.wish = { ...this.wish, times: Number((event.target as HTMLSelectElement).value) };
  }

  #takeCard(event: LengthEvent): void {
    this.wish = { ...this.wish, cardMm: event.mm };
  }
}

/** Scales that are offered, times smaller. */
const SCALES = [2, 3, 4, 5, 6, 8, 10];
