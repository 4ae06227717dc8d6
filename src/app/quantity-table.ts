import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatArea } from '../base/format-length.ts';
import type { FinishPlan } from '../model/finish.ts';
import type { Quantities } from '../model/quantities.ts';
import { JobSection } from './job-section.ts';
import { QUANTITY_WORDS } from './quantity-words.ts';
import { SHARED } from './styles.ts';

interface Row {
  readonly what: string;
  readonly much: string;
  readonly for: string;
  readonly cost?: number | undefined;
}

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
    const rows = this.#rows(quantities);
    const hasCost = cost !== undefined;
    const costOf = ({ cost: own }: Row) =>
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

  #rows({ foams, glue, coatings, outsideMm2 }: Quantities): readonly Row[] {
    const { table, volume } = QUANTITY_WORDS;
    const area = (mm2: number): string => formatArea(mm2, this.unit);
    return [
      ...foams.map(({ name, sheets, bought, cutMm2, cost }) => ({
        what: name,
        much: table.sheets(bought, sheets - bought),
        for: table.pieces(area(cutMm2)),
        cost,
      })),
      ...(glue.ml === 0
        ? []
        : [
            {
              what: glue.glue.name,
              much: volume(glue.ml),
              for: table.faces(area(glue.edgesMm2 + glue.laidMm2)),
              cost: glue.cost,
            },
          ]),
      ...coatings.map(({ coating, ml }) => ({
        what: coating.name,
        much: volume(ml),
        for: table.coats(area(outsideMm2), coating.coats),
      })),
      ...(this.finish?.colours ?? []).map(({ colour, ml, areaMm2 }) => ({
        what: colour.name,
        much: volume(ml),
        for: table.coats(area(areaMm2), colour.coats),
      })),
      ...(this.finish?.clay == null
        ? []
        : [{ what: this.finish.clay.clay.name, much: volume(this.finish.clay.wetMl), for: table.clay }]),
    ];
  }
}
