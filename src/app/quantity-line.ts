import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatLength } from '../base/format-length.ts';
import type { Quantities } from '../model/quantities.ts';
import { setCurrency, setGluePrice, setSheetPrice } from '../project/shop-commands.ts';
import type { ShopView } from '../worker/shop-api.ts';
import { allCut } from './bench-state.ts';
import './at-shop/shop-list.ts';
import './coat-list.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { isUnfinished } from './gluing-look.ts';
import './job-line.ts';
import { JobSection } from './job-section.ts';
import './quantity-field.ts';
import type { NumberEvent } from './quantity-field.ts';
import './quantity-glue.ts';
import './quantity-table.ts';
import { QUANTITY_WORDS } from './quantity-words.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** What is bought, what it costs, how heavy and how large the prop is: with prices, glue and coats as the maker says. */
@customElement('fl-quantity-line')
export class QuantityLine extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      input[type='text'] {
        inline-size: 5.5em;
      }
    `,
  ];

  @property({ attribute: false }) shop: ShopView | null = null;

  protected override render() {
    const { shop } = this;
    const hasPieces = allCut(this.bench).length > 0;
    const isOpen = isUnfinished(this.bench);
    const waiting = !hasPieces ? QUANTITY_WORDS.waiting : isOpen ? QUANTITY_WORDS.unfinished : QUANTITY_WORDS.making;
    const mark = shop !== null ? 'so' : hasPieces && !isOpen ? 'wait' : 'missing';
    return html`<fl-job-line heading=${WORDS.lines.takes} mark=${mark}>
      ${shop === null ? html`<p slot="answer" class="soft">${waiting}</p>` : this.#all(shop)}
    </fl-job-line>`;
  }

  #all({ quantities, finish }: ShopView) {
    const words = QUANTITY_WORDS;
    const { massG, longestMm, sizeMm, centreOfMass, glue, foams, coatings } = quantities;
    const length = (mm: number): string => formatLength(mm, this.unit);
    const [x, y, z] = sizeMm.map(length);
    return html`<p slot="answer">
        ${longestMm > 0 ? words.answer(words.mass(massG), length(longestMm)) : words.mass(massG)}
      </p>
      <div class="stack small">
        <p>${longestMm > 0 ? words.size(x, y, z) : nothing} ${words.event}</p>
        ${centreOfMass === null ? nothing : html`<p class="soft">${this.#centre(centreOfMass)}</p>`}
      </div>
      <fl-shop-list .project=${this.project} .bench=${this.bench} .shop=${this.shop}></fl-shop-list>
      <div class="stack small">
        ${foams.map(({ tooLarge, name }) =>
          tooLarge.length === 0 ? nothing : html`<p class="wrong">${words.tooLarge(tooLarge.length, name)}</p>`,
        )}
        ${glue.ml === 0 ? nothing : html`<p class="soft">${words.seams(glue.seamMm === 0 ? null : length(glue.seamMm))}</p>`}
      </div>
      <div>
        <details>
          <summary>${words.table.caption}</summary>
          <fl-quantity-table
            .project=${this.project}
            .quantities=${quantities}
            .finish=${finish.plan}
          ></fl-quantity-table>
        </details>
        ${this.#prices(quantities)}
        <fl-quantity-glue .project=${this.project} .glue=${glue.glue}></fl-quantity-glue>
        <fl-coat-list .project=${this.project} .quantities=${coatings}></fl-coat-list>
      </div>`;
  }

  #centre(point: readonly [number, number, number]): string {
    const [x, y, z] = point.map((mm) => {
      const size = formatLength(Math.abs(mm), this.unit);
      return mm < 0 && /[1-9]/.test(size) ? `\u2212${size}` : size;
    });
    return QUANTITY_WORDS.centre(x, y, z);
  }

  #prices({ foams }: Quantities) {
    const words = QUANTITY_WORDS.prices;
    const { currency = '', sheetPrices = [], gluePricePerL } = this.project?.shop ?? {};
    const take = (event: Event): void => this.send(setCurrency((event.target as HTMLInputElement).value));
    const names = new Set<string>();
    return html`<details>
      <summary>${words.heading}</summary>
      <div class="fields">
        <label
          >${words.currency}
          <input data-means="currency" type="text" autocomplete="off" maxlength="12" .value=${currency} @change=${take}
        /></label>
        ${foams.map(({ foam, name }) => {
          if (names.has(foam)) return nothing;
          names.add(foam);
          return html`<fl-number-field
            data-means="sheet-price"
            label=${words.sheet(name)}
            unit=${currency}
            mayBeEmpty
            .value=${sheetPrices.find((price) => price.foam === foam)?.price ?? null}
            .most=${1e6}
            @fl-number=${(event: NumberEvent) => this.send(setSheetPrice(foam, event.value))}
          ></fl-number-field>`;
        })}
        <fl-number-field
          data-means="glue-price"
          label=${words.glue}
          unit=${currency}
          mayBeEmpty
          .value=${gluePricePerL ?? null}
          .most=${1e6}
          @fl-number=${(event: NumberEvent) => this.send(setGluePrice(event.value))}
        ></fl-number-field>
      </div>
    </details>`;
  }
}
