import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { ChooseEvent } from '../events.ts';
import { JobSection } from '../job-section.ts';
import { SHARED } from '../styles.ts';
import type { FigureKind } from './figures.ts';
import { LEGEND_WORDS } from './legend-words.ts';
import { COLUMNS, FIRST_SORTING, nextSorting, sortedRows, type Column, type Sorting } from './sort-rows.ts';
import { tableRows, type FigureRow } from './table-rows.ts';

/** Lines shown before the rest is asked for. */
const FEW = 8;

/** The figures that colours show, as a table that is sorted by its headings; pointing at a line shows where it is. */
@customElement('fl-figure-table')
export class FigureTable extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        container-type: inline-size;
      }
      th {
        padding: 0;
      }
      th button {
        inline-size: 100%;
        padding-inline: var(--s2);
        border-color: transparent;
        background: none;
        text-align: inherit;
        font-size: var(--t-small);
        white-space: nowrap;
      }
      th:first-child button {
        padding-inline-start: 0;
      }
      .way {
        display: inline-block;
        inline-size: 1ch;
      }
      td {
        font-size: var(--t-small);
        vertical-align: baseline;
      }
      td.over {
        font-weight: 700;
        color: var(--wrong);
      }
      tbody tr:hover {
        background: var(--paper-low);
      }
      @container (width < 340px) {
        .limit {
          display: none;
        }
      }
    `,
  ];

  @property() kind: FigureKind = 'stretch';
  /** Which sheet of the wall lies on the bench, 1 the outermost. */
  @property({ type: Number }) sheet = 1;
  @state() private isOpen = false;
  @state() private isWhole = false;
  @state() private sorting: Sorting = FIRST_SORTING;

  protected override render() {
    const { table } = LEGEND_WORDS;
    const toggle = (event: Event): void => {
      this.isOpen = (event.currentTarget as HTMLDetailsElement).open;
    };
    return html`<details ?open=${this.isOpen} @toggle=${toggle}>
      <summary>${table.open}</summary>
      ${this.isOpen ? this.#table() : nothing}
    </details>`;
  }

  #table() {
    const { project, bench, sheet, unit, kind } = this;
    const { table } = LEGEND_WORDS;
    const all = sortedRows(tableRows(kind, { project, bench, sheet, unit }), this.sorting);
    if (all.length === 0) return html`<p class="small soft">${table.none}</p>`;
    const shown = this.isWhole ? all : all.slice(0, FEW);
    return html`<table>
        <caption class="unseen">
          ${table.caption(LEGEND_WORDS.kinds[kind])}
        </caption>
        <thead>
          <tr>
            ${COLUMNS.map((column) => this.#heading(column))}
          </tr>
        </thead>
        <tbody>
          ${shown.map((row) => this.#row(row))}
        </tbody>
      </table>
      ${
        all.length > shown.length
          ? html`<button class="plain" @click=${() => (this.isWhole = true)}>${table.more(all.length)}</button>`
          : nothing
      }`;
  }

  #heading(column: Column) {
    const { by, isRising } = this.sorting;
    const { table } = LEGEND_WORDS;
    const named = { stretch: table.piece, bend: table.piece, room: table.core, pull: table.seam, fit: table.seam };
    const name = column === 'name' ? named[this.kind] : table[column];
    const isBy = by === column;
    return html`<th scope="col" class=${column} aria-sort=${isBy ? (isRising ? 'ascending' : 'descending') : 'none'}>
      <button aria-label=${table.sort(name)} @click=${() => (this.sorting = nextSorting(this.sorting, column))}>
        ${name} <span class="way" aria-hidden="true">${isBy ? (isRising ? '↑' : '↓') : ''}</span>
      </button>
    </th>`;
  }

  #row(row: FigureRow) {
    const light = (): void => this.point(row.pointed);
    const dark = (): void => this.point(null);
    const over = row.isOver ? html`<span class="unseen">, ${LEGEND_WORDS.table.isOver}</span>` : nothing;
    return html`<tr @pointerenter=${light} @pointerleave=${dark} @focusin=${light} @focusout=${dark}>
      <td>
        <button class="place" @click=${() => this.dispatchEvent(new ChooseEvent(row.choice))}>${row.name}</button>
      </td>
      <td class=${row.isOver ? 'over' : ''}>${row.figureText}${over}</td>
      <td class="limit">${row.limitText}</td>
      <td>${row.where}</td>
    </tr>`;
  }
}
