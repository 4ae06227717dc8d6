import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { GrainWish } from '../model/flatten-settings.ts';
import { countByArrows, figureShown, figureTyped } from './figure-input.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** A grain was wished for, or none. */
export class GrainEvent extends Event {
  constructor(readonly grain: GrainWish | null) {
    super('fl-grain', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-grain': GrainEvent;
  }
}

/** How a piece lies on the grain of its sheet: at which angle, and where its stretch is asked to lie. */
@customElement('fl-grain-field')
export class GrainField extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: inline-flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--s2);
      }
      label {
        display: inline-flex;
        align-items: center;
        gap: var(--s2);
        color: var(--ink-soft);
      }
      input {
        inline-size: 4em;
      }
    `,
  ];

  @property({ attribute: false }) grain: GrainWish | null = null;
  /** False for a piece that lies level: the angle then counts from its long side. */
  @property({ type: Boolean }) hasUp = false;

  protected override render() {
    const words = WORDS.forming.grain;
    const { grain } = this;
    return html`<label>
        ${words.label}
        <select data-means="grain" @change=${this.#choose}>
          ${(['none', 'any', 'across', 'along'] as const).map(
            (choice) =>
              html`<option value=${choice} .selected=${choice === (grain?.stretch ?? 'none')}>
                ${words.choices[choice]}
              </option>`,
          )}
        </select>
      </label>
      ${
        grain === null
          ? nothing
          : html`<label>
              <input
                data-means="grain-angle"
                type="text"
                inputmode="decimal"
                autocomplete="off"
                .value=${figureShown(grain.angleDeg)}
                @keydown=${countByArrows(-180, 180)}
                @change=${this.#turn}
              />
              ${this.hasUp ? words.fromUp : words.fromSide}
            </label>`
      }`;
  }

  #choose(event: Event): void {
    const choice = (event.target as HTMLSelectElement).value as GrainWish['stretch'] | 'none';
    const angleDeg = this.grain?.angleDeg ?? 0;
    this.dispatchEvent(new GrainEvent(choice === 'none' ? null : { angleDeg, stretch: choice }));
  }

  #turn(event: Event): void {
    const angleDeg = figureTyped(event);
    if (this.grain !== null && angleDeg >= -180 && angleDeg <= 180)
      this.dispatchEvent(new GrainEvent({ ...this.grain, angleDeg }));
  }
}
