import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatLength, formatPercent } from '../base/format-length.ts';
import type { Sheet } from '../model/sheet.ts';
import { forgetLayout } from '../project/stock-commands.ts';
import { besideOf } from './bench-state.ts';
import { ChooseEvent } from './events.ts';
import './findings.ts';
import { hasWrong } from './findings.ts';
import './job-line.ts';
import { JobSection } from './job-section.ts';
import './layout-panel.ts';
import './offcut-row.ts';
import { PLACING_WORDS } from './placing-words.ts';
import './sheet-picture.ts';
import type { Shelf } from './shelf.ts';
import './stock-list.ts';
import { sizeText } from './stock-words.ts';
import { SHARED } from './styles.ts';
import { NOTHING, type Choice, type LayoutSearch } from './view-state.ts';
import { WORDS } from './words.ts';

/** How many sheets of foam the job takes, and what lies on each. */
@customElement('fl-sheets-line')
export class SheetsLine extends JobSection {
  static override styles = [
    SHARED,
    css`
      figure + figure {
        margin-block-start: var(--s4);
      }
      figcaption {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        align-items: baseline;
        gap: 0 var(--s3);
        font-size: var(--t-small);
        margin-block-end: var(--s1);
      }
    `,
  ];

  @property({ attribute: false }) choice: Choice = NOTHING;
  /** Foam that earlier jobs left. */
  @property({ attribute: false }) shelf: Shelf = [];
  @property({ attribute: false }) search: LayoutSearch | null = null;

  protected override render() {
    const layout = this.bench.sheets;
    const sheets = layout?.sheets ?? [];
    const isWrong =
      hasWrong(this.bench, ['nest']) || (layout?.tooLarge.length ?? 0) + (layout?.odd?.unlaid.length ?? 0) > 0;
    const mark = isWrong ? 'wrong' : sheets.length > 0 ? 'so' : 'missing';
    return html`<fl-job-line heading=${WORDS.lines.sheets} mark=${mark}>
      ${
        sheets.length === 0
          ? html`<p slot="answer" class="soft">${WORDS.sheets.waiting}</p>`
          : html`<p slot="answer">${this.#answer(sheets)}</p>
              <div>${sheets.map((sheet, i) => this.#sheet(sheet, i))}</div>
              ${this.#anew()}
              <fl-layout-panel .project=${this.project} .bench=${this.bench} .search=${this.search}></fl-layout-panel>`
      }
      <fl-stock-list .project=${this.project} .bench=${this.bench} .shelf=${this.shelf}></fl-stock-list>
      ${layout === null ? nothing : html`<fl-findings .bench=${this.bench} .project=${this.project} .steps=${['nest']}></fl-findings>`}
    </fl-job-line>`;
  }

  /** So many to buy, so many in hand. */
  #answer(sheets: readonly Sheet[]): string {
    const bought = sheets.filter(({ label }) => label === undefined);
    const inHand = sheets.length - bought.length;
    const sizes = new Set(bought.map(({ widthMm, heightMm }) => sizeText(widthMm, heightMm, this.unit)));
    return PLACING_WORDS.answer(bought.length, inHand, sizes.size === 1 ? [...sizes][0] : '');
  }

  #sheet(sheet: Sheet, i: number) {
    const words = PLACING_WORDS;
    const { pieces = [], templates = [] } = this.bench.pieces ?? {};
    const { offcut } = sheet;
    const facts = [
      words.used(formatPercent(100 * sheet.usedShare, 0)),
      words.last(formatLength(sheet.filledMm, this.unit)),
      ...(offcut === undefined ? [] : [words.left(sizeText(offcut.widthMm, offcut.heightMm, this.unit))]),
    ];
    return html`<figure>
      <figcaption>
        <span
          ><b>${words.sheet(i + 1)}</b>, ${sheet.label === undefined ? words.bought : words.inHand(sheet.label)}</span
        >
        <span class="soft">${facts.join(', ')}</span>
      </figcaption>
      <fl-sheet-picture
        .sheet=${sheet}
        .pieces=${pieces}
        .beside=${besideOf(this.bench)}
        .templates=${templates}
        .choice=${this.choice}
      ></fl-sheet-picture>
      <div class="row">
        <button
          class="plain"
          aria-label=${words.openOf(words.sheet(i + 1))}
          @click=${() => this.dispatchEvent(new ChooseEvent({ kind: 'sheet', sheet: i }))}
        >
          ${words.open}
        </button>
        <fl-offcut-row .project=${this.project} .bench=${this.bench} .shelf=${this.shelf} .at=${i}></fl-offcut-row>
      </div>
    </figure>`;
  }

  /** A layout that was taken, or changed by hand, stays until it is let go. */
  #anew() {
    const kept = new Set((this.project?.stock?.kept ?? []).map(({ foam }) => foam));
    if (kept.size === 0) return nothing;
    const isInForce = this.bench.sheets?.sheets.some(({ foam }) => kept.has(foam)) ?? false;
    const names = (this.project?.foams ?? []).filter(({ id }) => kept.has(id)).map(({ name }) => name);
    return html`<div class="row">
      <span class="small soft">${isInForce ? PLACING_WORDS.isKept : PLACING_WORDS.isOfOther(names.join(', '))}</span>
      <button class="small" @click=${() => this.send(forgetLayout())}>
        ${isInForce ? PLACING_WORDS.anew : PLACING_WORDS.forgetOther}
      </button>
    </div>`;
  }
}
