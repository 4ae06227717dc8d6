import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FoamId } from '../base/ids.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { SheetShape, StockSheet } from '../model/stock.ts';
import { addStockSheet } from '../project/stock-commands.ts';
import { newStockId } from '../project/stock-sheet.ts';
import { allCut } from './bench-state.ts';
import { OffcutFileEvent, WishEvent } from './events.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import './fill-fields.ts';
import { JobSection } from './job-section.ts';
import { shelfFor, type Shelf } from './shelf.ts';
import { sizeOfShape } from './stock-shapes.ts';
import './stock-row.ts';
import { sizeText, STOCK_WORDS } from './stock-words.ts';
import { SHARED } from './styles.ts';

/** An offcut to begin with, mm. */
const FIRST_OFFCUT = { widthMm: 400, heightMm: 300 };

/** A traced one to begin with: a corner is cut away, so that it is seen to be more than a rectangle. */
const FIRST_TRACED = [0, 0, 400, 0, 400, 180, 240, 300, 0, 300];

/** The foam on the shelf, and how sheets of it are filled, for each foam of the job. */
@customElement('fl-stock-list')
export class StockList extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      section + section {
        margin-block-start: var(--s4);
        border-block-start: var(--narrow) solid var(--rule-soft);
        padding-block-start: var(--s3);
      }
      h3 {
        font-size: var(--t-small);
        font-weight: 600;
      }
      li + li {
        border-block-start: var(--narrow) solid var(--rule-soft);
      }
      input[type='file'] {
        display: none;
      }
    `,
  ];

  /** Foam that earlier jobs left. */
  @property({ attribute: false }) shelf: Shelf = [];

  protected override render() {
    const foams = this.#foamsInUse();
    if (foams.length === 0) return nothing;
    return html`<details>
      <summary>${STOCK_WORDS.heading}</summary>
      <p class="small soft">${STOCK_WORDS.why}</p>
      ${foams.map((foam) => this.#foam(foam))}
    </details>`;
  }

  #foam(foam: FoamSheet) {
    const words = STOCK_WORDS;
    const sheets = (this.project?.stock?.sheets ?? []).filter((sheet) => sheet.foam === foam.id);
    return html`<section class="stack" aria-label=${foam.name}>
      <div>
        <h3>${foam.name}</h3>
        <p class="small soft">${words.fill.bought(sizeText(foam.sheetWidthMm, foam.sheetHeightMm, this.unit))}</p>
      </div>
      ${
        sheets.length === 0
          ? html`<p class="small soft">${words.nothing}</p>`
          : html`<ul>
              ${sheets.map(
                (sheet) =>
                  html`<li>
                    <fl-stock-row .project=${this.project} .bench=${this.bench} .sheet=${sheet}></fl-stock-row>
                  </li>`,
              )}
            </ul>`
      }
      <div class="row">
        <button
          class="small"
          @click=${() => this.#add(foam.id, words.names.sheet, { kind: 'rectangle', widthMm: foam.sheetWidthMm, heightMm: foam.sheetHeightMm })}
        >
          ${words.add.sheet}
        </button>
        <button
          class="small"
          @click=${() => this.#add(foam.id, words.names.offcut, { kind: 'rectangle', ...FIRST_OFFCUT })}
        >
          ${words.add.offcut}
        </button>
        <button
          class="small"
          @click=${() => this.#add(foam.id, words.names.traced, { kind: 'outline', points: FIRST_TRACED })}
        >
          ${words.add.traced}
        </button>
        <button class="small" @click=${this.#chooseFile}>${words.add.drawing}</button>
        <input
          type="file"
          accept=".svg"
          tabindex="-1"
          aria-hidden="true"
          @change=${(event: Event) => this.#takeFile(event, foam.id)}
        />
      </div>
      ${this.#fromShelf(foam, sheets)}
      <fl-fill-fields .project=${this.project} .bench=${this.bench} .foam=${foam.id}></fl-fill-fields>
    </section>`;
  }

  /** What earlier jobs left of this foam, to be taken or thrown away. */
  #fromShelf({ id, name }: FoamSheet, own: readonly StockSheet[]) {
    const words = STOCK_WORDS.shelf;
    const left = shelfFor(this.shelf, id, own);
    if (left.length === 0) return nothing;
    return html`<div>
      <p class="small soft">${words.heading}</p>
      <ul aria-label=${words.of(name)}>
        ${left.map((sheet) => {
          const { widthMm, heightMm } = sizeOfShape(sheet.shape);
          const text = words.sheet(sheet.name, sizeText(widthMm, heightMm, this.unit), sheet.count);
          return html`<li class="row small">
            ${text}
            <button class="plain" aria-label=${words.takeOf(sheet.name)} @click=${() => this.#take(sheet)}>
              ${words.take}
            </button>
            <button
              class="plain"
              aria-label=${words.forgetOf(sheet.name)}
              @click=${() => this.dispatchEvent(new WishEvent({ shelf: this.shelf.filter((one) => one !== sheet) }))}
            >
              ${words.forget}
            </button>
          </li>`;
        })}
      </ul>
    </div>`;
  }

  #take(sheet: StockSheet): void {
    this.send(addStockSheet({ ...sheet, id: newStockId(this.project?.stock) }));
  }

  /** Foams that something is cut from, each once; those of the wall before there are pieces. */
  #foamsInUse(): readonly FoamSheet[] {
    const used = allCut(this.bench).map(({ foam }) => foam);
    const ids = new Set<string>(used.length > 0 ? used : (this.sculptPart?.layers ?? []).map(({ foam }) => foam));
    return this.project?.foams.filter(({ id }) => ids.has(id)) ?? [];
  }

  #add(foam: FoamId, name: string, shape: SheetShape): void {
    const stock = this.project?.stock;
    const alike = (stock?.sheets ?? []).filter((sheet) => sheet.name === name || sheet.name.startsWith(`${name} `));
    const ownName = alike.length === 0 ? name : `${name} ${alike.length + 1}`;
    this.send(addStockSheet({ id: newStockId(stock), name: ownName, foam, shape, count: 1 }));
  }

  #chooseFile(event: Event): void {
    (event.target as HTMLElement).parentElement?.querySelector<HTMLInputElement>('input[type=file]')?.click();
  }

  #takeFile(event: Event, foam: FoamId): void {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    input.value = '';
    if (file !== undefined) this.dispatchEvent(new OffcutFileEvent(file, foam));
  }
}
