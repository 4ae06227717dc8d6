import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Coating } from '../model/coatings.ts';
import type { CoatingQuantity } from '../model/quantities.ts';
import { property } from 'lit/decorators.js';
import { coatsOf, coverageOf, KNOWN_COATS, withCoverage } from '../project/coats.ts';
import { setCoatings } from '../project/shop-commands.ts';
import { dataText } from './data-words.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import './quantity-field.ts';
import type { NumberEvent } from './quantity-field.ts';
import { QUANTITY_WORDS } from './quantity-words.ts';
import { SHARED } from './styles.ts';
import { means } from './help/means.ts';

/** What the finished prop is coated with all over, coat by coat, with the figures of the labels. */
@customElement('fl-coat-list')
export class CoatList extends JobSection {
  static override styles = [SHARED, FIELDS_STYLE];

  /** What each takes, as far as it is worked out. */
  @property({ attribute: false }) quantities: readonly CoatingQuantity[] = [];

  protected override render() {
    if (this.project === null) return nothing;
    const words = QUANTITY_WORDS.coats;
    const coats = coatsOf(this.project);
    const others = KNOWN_COATS.filter(({ id }) => !coats.some((coat) => coat.id === id));
    return html`<details>
      <summary>${words.heading(coats.map(({ name }) => dataText(name)))}</summary>
      <div class="stack">
        ${
          coats.length === 0
            ? html`<p class="small soft">${words.bare}</p>`
            : html`<p class="small soft">${QUANTITY_WORDS.glue.label}</p>
                <ol class="stack" aria-label=${words.list}>
                  ${coats.map((coat, i) => this.#coat(coats, coat, i))}
                </ol>`
        }
        ${
          others.length === 0
            ? nothing
            : html`<label
                >${words.add}<br />
                <select
                  data-means="coat"
                  @change=${(event: Event) => this.#add(coats, event.target as HTMLSelectElement)}
                >
                  <option value="" selected>${words.choose}</option>
                  ${others.map(({ id, name }) => html`<option value=${id}>${dataText(name)}</option>`)}
                </select>
              </label>`
        }
      </div>
    </details>`;
  }

  #coat(coats: readonly Coating[], coat: Coating, i: number) {
    const words = QUANTITY_WORDS.coats;
    const { units } = QUANTITY_WORDS.glue;
    const name = dataText(coat.name);
    const { cureH } = coat;
    const change = (next: Coating): void => this.#set(coats.map((other) => (other === coat ? next : other)));
    const field = (
      label: string,
      unit: string,
      value: number,
      least: number,
      isOver: boolean,
      put: (value: number) => Coating,
    ) =>
      html`<fl-number-field
        label=${label}
        unit=${unit}
        .value=${value}
        .least=${least}
        .most=${label === words.coats ? 50 : 100_000}
        ?isOver=${isOver}
        ?isWhole=${label === words.coats}
        @fl-number=${(event: NumberEvent) => event.value !== null && change(put(event.value))}
      ></fl-number-field>`;
    const own = this.quantities.find(({ coating }) => coating.id === coat.id);
    return html`<li>
      <fieldset>
        <legend>${i + 1}. ${name}</legend>
        <div class="fields">
          ${means(
            'coats',
            field(words.coats, '', coat.coats, 1, false, (value) => ({ ...coat, coats: value })),
          )}
          ${means(
            'coverage',
            field(words.coverage, units.m2PerL, coverageOf(coat), 0, true, (value) => withCoverage(coat, value)),
          )}
          ${means(
            'recoat',
            field(words.recoat, units.min, coat.recoatMin, 0, false, (value) => ({ ...coat, recoatMin: value })),
          )}
          ${means(
            'cure',
            field(words.cure, units.h, coat.cureH, 0, false, (value) => ({ ...coat, cureH: value })),
          )}
        </div>
        ${own === undefined ? nothing : html`<p class="small soft">${words.dries(own.dryMin, cureH)}</p>`}
        <div class="row">
          ${
            i === 0
              ? nothing
              : html`<button class="plain" aria-label=${words.earlier(name)} @click=${() => this.#earlier(coats, i)}>
                  ${words.earlierShort}
                </button>`
          }
          <button
            class="plain"
            aria-label=${words.remove(name)}
            @click=${() => this.#set(coats.filter((other) => other !== coat))}
          >
            ${words.removeShort}
          </button>
        </div>
      </fieldset>
    </li>`;
  }

  #add(coats: readonly Coating[], select: HTMLSelectElement): void {
    const coat = KNOWN_COATS.find(({ id }) => id === select.value);
    select.value = '';
    if (coat !== undefined) this.#set([...coats, coat]);
  }

  #earlier(coats: readonly Coating[], i: number): void {
    this.#set([...coats.slice(0, i - 1), coats[i], coats[i - 1], ...coats.slice(i + 1)]);
  }

  #set(coats: readonly Coating[]): void {
    this.send(setCoatings(coats));
  }
}
