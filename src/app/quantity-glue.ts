import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { MM_PER_INCH } from '../base/format-length.ts';
import type { Glue } from '../model/glues.ts';
import { glueNamed, GLUE_NAMES, setGlue } from '../project/shop-commands.ts';
import { dataText } from './data-words.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import './quantity-field.ts';
import type { NumberEvent } from './quantity-field.ts';
import { QUANTITY_WORDS } from './quantity-words.ts';
import { SHARED } from './styles.ts';

type Figure = 'waitMin' | 'openMin' | 'cureH' | 'coverageM2PerL' | 'brushMmPerMin' | 'joinMmPerMin' | 'alignMinPerSeam';

/** Figures that are told in the unit of the job. */
const SPEEDS: readonly Figure[] = ['brushMmPerMin', 'joinMmPerMin'];

/** Figures in the order of the label, each with its unit, and whether 0 is none. */
const FIGURES: readonly (readonly [name: Figure, unit: keyof typeof QUANTITY_WORDS.glue.units, isOver: boolean])[] = [
  ['waitMin', 'min', false],
  ['openMin', 'min', true],
  ['cureH', 'h', false],
  ['coverageM2PerL', 'm2PerL', true],
  ['brushMmPerMin', 'mmPerMin', true],
  ['joinMmPerMin', 'mmPerMin', true],
  ['alignMinPerSeam', 'min', false],
];

/** Which glue is taken, and what its label says. */
@customElement('fl-quantity-glue')
export class QuantityGlue extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      .fields {
        align-items: start;
      }
    `,
  ];

  /** The glue in force. */
  @property({ attribute: false }) glue: Glue | null = null;
  @state() private fault = '';

  protected override render() {
    const { glue } = this;
    if (glue === null) return nothing;
    const words = QUANTITY_WORDS.glue;
    return html`<details>
      <summary>${words.heading(dataText(glue.name))}</summary>
      <div class="stack">
        <label
          >${words.choose}<br />
          <select data-means="glue" @change=${this.#choose}>
            ${GLUE_NAMES.map((name) => html`<option value=${name} ?selected=${name === glue.id}>${dataText(glueNamed(name).name)}</option>`)}
          </select>
        </label>
        <p class="small soft">${words.label}</p>
        <div class="fields">
          ${FIGURES.map(([name, unit, isOver]) => {
            const isInches = this.unit === 'in' && SPEEDS.includes(name);
            const per = isInches ? MM_PER_INCH : 1;
            return html`<fl-number-field
              data-means=${`glue-${name}`}
              label=${words[name]}
              unit=${words.units[isInches ? 'inPerMin' : unit]}
              .value=${glue[name] / per}
              ?isOver=${isOver}
              .most=${isInches ? 4000 : 100_000}
              @fl-number=${({ value }: NumberEvent) => this.#take(glue, name, value === null ? null : value * per)}
            ></fl-number-field>`;
          })}
        </div>
        <p class="small wrong" role="status">${this.fault}</p>
        ${
          this.#isUsual(glue)
            ? nothing
            : html`<div>
                <button class="plain" @click=${() => this.#set(glueNamed(glue.id))}>${words.usual}</button>
              </div>`
        }
      </div>
    </details>`;
  }

  #isUsual(glue: Glue): boolean {
    const usual = GLUE_NAMES.includes(glue.id) ? glueNamed(glue.id) : glue;
    return FIGURES.every(([name]) => usual[name] === glue[name]);
  }

  #choose(event: Event): void {
    this.#set(glueNamed((event.target as HTMLSelectElement).value));
  }

  #take(glue: Glue, name: Figure, value: number | null): void {
    if (value === null) return;
    this.#set({ ...glue, [name]: value });
  }

  /** A glue that is dry before it could be joined is told, not taken. */
  #set(glue: Glue): void {
    const isSound = glue.openMin > glue.waitMin + glue.alignMinPerSeam;
    this.fault = isSound ? '' : QUANTITY_WORDS.glue.tooShort(glue);
    if (isSound) this.send(setGlue(glue));
  }
}
