import { css, html, nothing, svg } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { StockSheet } from '../model/stock.ts';
import { changeStockSheet, removeStockSheet } from '../project/stock-commands.ts';
import { cleanStockSheet, STOCK_LIMITS } from '../project/stock-sheet.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { countByArrows, figureTyped } from './figure-input.ts';
import { findingText } from './finding-text.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import './outline-board.ts';
import type { OutlineEvent } from './outline-board.ts';
import { outlineOf, sizeOfShape } from './stock-shapes.ts';
import { sizeText, STOCK_WORDS } from './stock-words.ts';
import { SHARED } from './styles.ts';

/** A place to keep clear begins as a square in the middle of its sheet: this share of its shorter side. */
const FIRST_ZONE_SHARE = 0.2;

/** One kind of sheet in hand, or one offcut: what is written on it, its size or outline, how many, and where nothing is cut from. */
@customElement('fl-stock-row')
export class StockRow extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      summary svg {
        flex: none;
        inline-size: 48px;
        block-size: 34px;
      }
      .sheet {
        fill: var(--foam);
      }
      .zone {
        fill: var(--paper-high);
        stroke: var(--wrong);
        stroke-width: 1px;
        vector-effect: non-scaling-stroke;
      }
      details > div {
        padding-block: var(--s2) var(--s4);
        padding-inline-start: var(--s4);
        border-inline-start: var(--narrow) solid var(--rule);
      }
      summary .soft {
        font-weight: 450;
      }
      .fields {
        align-items: end;
      }
      .name {
        inline-size: 14em;
      }
      .count {
        inline-size: 5em;
      }
    `,
  ];

  @property({ attribute: false }) sheet: StockSheet | null = null;
  @state() private fault = '';

  protected override render() {
    const { sheet } = this;
    if (sheet === null) return nothing;
    const words = STOCK_WORDS;
    const { widthMm, heightMm } = sizeOfShape(sheet.shape);
    const size = sizeText(widthMm, heightMm, this.unit);
    return html`<details>
      <summary>
        ${this.#picture(sheet)}
        <span>
          ${sheet.name}<br /><span class="soft"
            >${words.about(sheet.shape.kind === 'outline' ? words.traced(size) : size, sheet.count)}</span
          >
        </span>
      </summary>
      <div class="stack">
        <div class="fields">
          <label>
            ${words.name}
            <input data-means="stock-name" class="name" type="text" .value=${sheet.name} @change=${this.#takeName} />
          </label>
          ${sheet.shape.kind === 'rectangle' ? this.#sizes(sheet.shape) : nothing}
          <label>
            ${words.count}
            <input
              data-means="stock-count"
              class="count"
              type="text"
              inputmode="numeric"
              autocomplete="off"
              .value=${String(sheet.count)}
              @keydown=${countByArrows(1, STOCK_LIMITS.mostCount)}
              @change=${this.#takeCount}
            />
          </label>
        </div>
        <p class="small wrong" role="status">${this.fault}</p>
        ${
          sheet.shape.kind === 'outline'
            ? html`<fl-outline-board
                .points=${sheet.shape.points}
                .name=${sheet.name}
                .unit=${this.unit}
                @fl-outline=${({ points }: OutlineEvent) => this.#change({ shape: { kind: 'outline', points } })}
              ></fl-outline-board>`
            : nothing
        }
        ${this.#zones(sheet)}
        <button
          class="plain"
          aria-label=${words.removeOf(sheet.name)}
          @click=${() => this.send(removeStockSheet(sheet.id))}
        >
          ${words.remove}
        </button>
      </div>
    </details>`;
  }

  #picture({ shape, keepOut = [] }: StockSheet) {
    const { widthMm, heightMm } = sizeOfShape(shape);
    return html`<svg viewBox="0 ${-heightMm} ${widthMm} ${heightMm}" aria-hidden="true">
      <g transform="scale(1 -1)">
        ${svg`<polygon class="sheet" points=${outlineOf(shape).join(' ')} />`}
        ${keepOut.map((zone) => svg`<polygon class="zone" points=${zone.join(' ')} />`)}
      </g>
    </svg>`;
  }

  #sizes(shape: { readonly widthMm: number; readonly heightMm: number }) {
    const field = (key: 'widthMm' | 'heightMm', label: string) =>
      html`<fl-length-field
        data-means=${`stock-${key}`}
        .label=${label}
        .mm=${shape[key]}
        .unit=${this.unit}
        .min=${STOCK_LIMITS.leastMm}
        .max=${STOCK_LIMITS.mostMm}
        @fl-length=${({ mm }: LengthEvent) => this.#change({ shape: { kind: 'rectangle', ...shape, [key]: mm } })}
      ></fl-length-field>`;
    return html`${field('widthMm', STOCK_WORDS.width)} ${field('heightMm', STOCK_WORDS.height)}`;
  }

  #zones(sheet: StockSheet) {
    const words = STOCK_WORDS.clear;
    const { keepOut = [] } = sheet;
    const put = (zones: readonly (readonly number[])[]): void => this.#change({ keepOut: zones });
    return html`<fieldset class="stack">
      <legend>${words.heading}. ${words.why}</legend>
      ${keepOut.map(
        (zone, i) =>
          html`<div>
            <p class="small">
              ${words.place(i + 1)}
              <button
                class="plain"
                aria-label=${words.remove(i + 1)}
                @click=${() => put(keepOut.filter((_, j) => j !== i))}
              >
                ${words.takeAway}
              </button>
            </p>
            <fl-outline-board
              .points=${zone}
              .sheet=${outlineOf(sheet.shape)}
              .others=${keepOut.filter((_, j) => j !== i)}
              .name=${words.place(i + 1)}
              .unit=${this.unit}
              @fl-outline=${({ points }: OutlineEvent) => put(keepOut.map((old, j) => (j === i ? points : old)))}
            ></fl-outline-board>
          </div>`,
      )}
      <button class="small" @click=${() => put([...keepOut, firstZone(sheet)])}>${words.add}</button>
    </fieldset>`;
  }

  /** What cannot be kept is said, and the document stays as it is. */
  #change(change: Partial<StockSheet>): void {
    if (this.sheet === null) return;
    const { keepOut = [], ...rest } = { ...this.sheet, ...change };
    const clean = cleanStockSheet(keepOut.length === 0 ? rest : { ...rest, keepOut });
    this.fault = clean.ok ? '' : findingText(clean.problem, this.unit);
    if (clean.ok) this.send(changeStockSheet(clean.value));
  }

  #takeName(event: Event): void {
    this.#change({ name: (event.target as HTMLInputElement).value });
  }

  #takeCount(event: Event): void {
    this.#change({ count: figureTyped(event) });
  }
}

function firstZone({ shape }: StockSheet): readonly number[] {
  const { widthMm, heightMm } = sizeOfShape(shape);
  const half = Math.round((FIRST_ZONE_SHARE * Math.min(widthMm, heightMm)) / 2);
  const [x, y] = [Math.round(widthMm / 2), Math.round(heightMm / 2)];
  return [x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half];
}
