import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FinishPlan } from '../model/finish.ts';
import type { Quantities } from '../model/quantities.ts';
import { JobSection } from './job-section.ts';
import { quantityRows, type QuantityRow } from './quantity-rows.ts';
import { QUANTITY_WORDS } from './quantity-words.ts';
import { SHARED } from './styles.ts';

/** What is bought: what, how much, for what, and what it costs where prices are known. */
@customElement('fl-quantity-table')
export class QuantityTable extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      td {
        vertical-align: baseline;
      }
      tfoot td,
      tfoot th {
        font-weight: 700;
        color: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) quantities: Quantities | null = null;
  /** Colours and clay. */
  @property({ attribute: false }) finish: FinishPlan | null = null;

  protected override render() {
    const { quantities } = this;
    if (quantities === null) return nothing;
    const { table, money } = QUANTITY_WORDS;
    const { cost, currency } = quantities;
    const rows = quantityRows(quantities, this.finish, this.unit);
    const hasCost = cost !== undefined;
    const costOf = ({ cost: own }: QuantityRow) =>
      html`<td class="number">${own === undefined ? nothing : money(own, currency)}</td>`;
    return html`<table>
      <caption class="unseen">
        ${table.caption}
      </caption>
      <thead>
        <tr>
          <th scope="col">${table.what}</th>
          <th scope="col" class="number">${table.much}</th>
          <th scope="col">${table.for}</th>
          ${hasCost ? html`<th scope="col" class="number">${table.cost}</th>` : nothing}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (row) =>
            html`<tr>
              <td>${row.what}</td>
              <td class="number">${row.much}</td>
              <td>${row.for}</td>
              ${hasCost ? costOf(row) : nothing}
            </tr>`,
        )}
      </tbody>
      ${
        hasCost
          ? html`<tfoot>
              <tr>
                <th scope="row" colspan="3">${table.all}</th>
                <td class="number">${money(cost, currency)}</td>
              </tr>
            </tfoot>`
          : nothing
      }
    </table>`;
  }
}
