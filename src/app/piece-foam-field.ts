import { LitElement, css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FoamId } from '../base/ids.ts';
import { formatLength, formatThickness, type LengthUnit } from '../base/format-length.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** Another foam was wished for a piece, or that of its sheet of the wall (null). */
export class PieceFoamEvent extends Event {
  constructor(readonly foam: FoamId | null) {
    super('fl-piece-foam', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-piece-foam': PieceFoamEvent;
  }
}

/** Which foam a piece is cut from: that of its sheet of the wall, or another. */
@customElement('fl-piece-foam-field')
export class PieceFoamField extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: inline-flex;
      }
      label {
        display: inline-flex;
        align-items: center;
        gap: var(--s2);
        color: var(--ink-soft);
      }
    `,
  ];

  /** The maker's stock. */
  @property({ attribute: false }) foams: readonly FoamSheet[] = [];
  /** Foam and thickness of the sheet of the wall. */
  @property() layerFoam = '';
  @property({ type: Number }) layerMm = 0;
  /** Of the piece. */
  @property() foam = '';
  @property() unit: LengthUnit = 'mm';

  protected override render() {
    const words = WORDS.joins;
    return html`<label>
      ${words.pieceFoam}
      <select data-means="piece-foam" @change=${this.#choose}>
        <option value="" .selected=${this.foam === this.layerFoam}>
          ${words.asSheet(formatLength(this.layerMm, this.unit))}
        </option>
        ${this.#others().map(
          ({ id, thicknessMm }) =>
            html`<option value=${id} .selected=${id === this.foam}>${formatThickness(thicknessMm, this.unit)}</option>`,
        )}
      </select>
    </label>`;
  }

  /** One for each other thickness, the piece's own if it is one of several. */
  #others(): readonly FoamSheet[] {
    const own = this.foams.find(({ id }) => id === this.foam);
    const ofLayer = this.foams.find(({ id }) => id === this.layerFoam);
    return this.foams.filter((foam, i) => {
      if (foam.id === this.layerFoam || foam.thicknessMm === ofLayer?.thicknessMm)
        return foam === own && own !== ofLayer;
      if (foam.thicknessMm === own?.thicknessMm) return foam === own;
      return this.foams.findIndex(({ thicknessMm }) => thicknessMm === foam.thicknessMm) === i;
    });
  }

  #choose(event: Event): void {
    const id = (event.target as HTMLSelectElement).value;
    this.dispatchEvent(new PieceFoamEvent(this.foams.find((foam) => foam.id === id)?.id ?? null));
  }
}
