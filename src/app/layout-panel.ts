import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatLength, formatNumber, formatPercent } from '../base/format-length.ts';
import type { LayoutFigures } from '../worker/sheet-search-api.ts';
import { besideOf } from './bench-state.ts';
import { JobSection } from './job-section.ts';
import { hasBetter } from './layout-search.ts';
import { LAYOUT_WORDS } from './layout-words.ts';
import './sheet-picture.ts';
import { SHARED } from './styles.ts';
import type { LayoutSearch } from './view-state.ts';

type Row = keyof typeof LAYOUT_WORDS.rows;
const ROWS = ['bought', 'sheets', 'lastMm', 'densityPct'] as const satisfies readonly Row[];

/** The search for a better layout: how it stands against the one in force, a small picture, and the way to take it. */
@customElement('fl-layout-panel')
export class LayoutPanel extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      .row + p {
        margin-block-start: var(--s2);
      }
      td {
        text-align: end;
        white-space: nowrap;
      }
      thead th {
        text-align: end;
      }
      tbody th {
        font-weight: 400;
        color: var(--ink-soft);
      }
      td.better {
        font-weight: 700;
      }
      fl-sheet-picture {
        max-inline-size: 20rem;
      }
    `,
  ];

  @property({ attribute: false }) search: LayoutSearch | null = null;

  protected override render() {
    const { search } = this;
    const words = LAYOUT_WORDS;
    if (search === null || search.state === 'outdated')
      return html`<div class="row">
          <button @click=${() => this.ask('improve-layout')}>${words.begin}</button>
          ${search === null ? nothing : html`<button class="plain" @click=${() => this.ask('put-layout')}>${words.put}</button>`}
        </div>
        <p class="small soft" role="status">${search === null ? words.why : words.outdated}</p>`;
    const isBetter = hasBetter(search);
    const isLooking = search.state === 'looking';
    return html`<div class="stack">
      ${search.best === null || search.first === null ? nothing : this.#table(search.first, search.best.figures)}
      ${isBetter ? this.#picture(search) : nothing}
      ${
        search.state === 'broken'
          ? html`<p class="small wrong">${words.broken}</p>`
          : isBetter
            ? nothing
            : html`<p class="small soft">${isLooking ? words.same : words.nothing}</p>`
      }
      <div class="row">
        ${isBetter ? html`<button class="next" @click=${() => this.ask('take-layout')}>${words.take}</button>` : nothing}
        ${
          isLooking
            ? html`<button @click=${() => this.ask('stop-layout')}>${words.stop}</button>`
            : html`<button @click=${() => this.ask('improve-layout')}>${words.again}</button>
                <button class="plain" @click=${() => this.ask('put-layout')}>${words.put}</button>`
        }
        <span class="small soft">${words.time(search.seconds, search.moves)}</span>
      </div>
    </div>`;
  }

  #table(first: LayoutFigures, now: LayoutFigures) {
    const words = LAYOUT_WORDS;
    return html`<table>
      <caption class="unseen">
        ${words.caption}
      </caption>
      <thead>
        <tr>
          <td></td>
          <th scope="col">${words.now}</th>
          <th scope="col">${words.found}</th>
        </tr>
      </thead>
      <tbody>
        ${ROWS.map(
          (row) =>
            html`<tr>
              <th scope="row">${words.rows[row]}</th>
              <td>${this.#figure(row, first)}</td>
              <td class=${this.#figure(row, first) === this.#figure(row, now) ? '' : 'better'}>
                ${this.#figure(row, now)}
              </td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  #figure(row: Row, figures: LayoutFigures): string {
    if (row === 'lastMm') return formatLength(figures.lastMm, this.unit);
    return row === 'densityPct' ? formatPercent(figures.densityPct) : formatNumber(figures[row]);
  }

  /** The sheet that is filled last: there the search gains. */
  #picture({ best }: LayoutSearch) {
    const sheets = best?.sheets ?? [];
    const { pieces = [], templates = [] } = this.bench.pieces ?? {};
    return html`<fl-sheet-picture
      .sheet=${sheets.at(-1) ?? null}
      .pieces=${pieces}
      .beside=${besideOf(this.bench)}
      .templates=${templates}
    ></fl-sheet-picture>`;
  }
}
