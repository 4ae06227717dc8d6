import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatLength, formatThickness } from '../base/format-length.ts';
import { addLayer, moveLayer, removeLayer, setStagger, type WallSide } from '../project/layer-commands.ts';
import { MOST_LAYERS } from '../project/project-file.ts';
import type { LayerChoice } from '../project/project.ts';
import { LEAST_STAGGER_MM, MOST_STAGGER_MM } from '../project/stagger-limits.ts';
import { ViewEvent } from './events.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** The sheets of the wall, the outermost first: which one is worked on and lies on the bench, and more, fewer or in another order. */
@customElement('fl-sheet-choice')
export class SheetChoice extends JobSection {
  static override styles = [
    SHARED,
    css`
      legend {
        font-size: var(--t-small);
        color: var(--ink-soft);
        padding: 0;
      }
      li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--s1) var(--s3);
        padding-block: var(--s1);
        border-block-start: var(--narrow) solid var(--rule-soft);
      }
      li:first-child {
        border-block-start: 0;
      }
      label {
        display: flex;
        align-items: center;
        gap: var(--s2);
        flex: 1;
        min-block-size: var(--target);
        cursor: pointer;
      }
      li fl-length-field {
        flex-basis: 100%;
      }
      .bar {
        fill: var(--foam);
      }
    `,
  ];

  /** The sheet that is worked on, 1 the outermost. */
  @property({ type: Number }) sheet = 1;

  protected override render() {
    // The outermost is the first here, and the last in the document.
    const sheets = [...(this.sculptPart?.layers ?? [])].reverse();
    const words = WORDS.foam.wall;
    return html`${
        sheets.length < 2
          ? nothing
          : html`<fieldset>
              <legend>${words.heading}</legend>
              <ul>
                ${sheets.map((layer, i) => this.#row(layer, i + 1, sheets.length))}
              </ul>
            </fieldset>`
      }
      <div class="row">
        ${(['outside', 'inside'] as const).map(
          (side) =>
            html`<button ?disabled=${sheets.length >= MOST_LAYERS} @click=${() => this.#add(side)}>
              ${words.add[side]}
            </button>`,
        )}
      </div>`;
  }

  #row(layer: LayerChoice, sheet: number, sheets: number) {
    const { id, thicknessMm } = layer;
    const words = WORDS.foam.wall;
    const name = words.name(sheet, sheets, formatThickness(thicknessMm, this.unit));
    return html`<li>
      <label>
        <input
          data-means="wall-sheet"
          type="radio"
          name="sheet"
          .checked=${this.sheet === sheet}
          @change=${() => this.#show(sheet)}
        />
        <svg class="bar" width="62" height=${Math.min(48, 2 * thicknessMm)} aria-hidden="true">
          <rect width="100%" height="100%" />
        </svg>
        ${name}
      </label>
      ${(['outside', 'inside'] as const).map((side) => {
        const next = side === 'outside' ? sheet - 1 : sheet + 1;
        return html`<button
          class="plain"
          aria-label=${words.moveOf(words.move[side], name)}
          ?disabled=${next < 1 || next > sheets}
          @click=${() => {
            this.send(moveLayer(id, side));
            this.#show(next);
          }}
        >
          ${words.move[side]}
        </button>`;
      })}
      <button
        class="plain"
        aria-label=${words.moveOf(words.remove, name)}
        @click=${() => {
          this.send(removeLayer(id));
          this.#show(1);
        }}
      >
        ${words.remove}
      </button>
      ${sheet === 1 ? nothing : this.#stagger(layer, name)}
    </li>`;
  }

  /** How far its seams lie beside those of the sheet that is seen. */
  #stagger({ id, staggerMm = 0 }: LayerChoice, name: string) {
    return html`<fl-length-field
      data-means="stagger"
      label=${WORDS.foam.wall.stagger}
      title=${WORDS.foam.wall.staggerOf(name, formatLength(LEAST_STAGGER_MM, this.unit))}
      .mm=${staggerMm}
      .unit=${this.unit}
      min=${-MOST_STAGGER_MM}
      max=${MOST_STAGGER_MM}
      @fl-length=${(event: LengthEvent) => this.send(setStagger(id, event.mm))}
    ></fl-length-field>`;
  }

  /** The new sheet is the one to choose a foam for. */
  #add(side: WallSide): void {
    const sheets = this.sculptPart?.layers.length ?? 0;
    this.send(addLayer(side));
    this.#show(side === 'outside' ? 1 : sheets + 1);
  }

  #show(sheet: number): void {
    this.dispatchEvent(new ViewEvent({ sheet }));
  }
}
