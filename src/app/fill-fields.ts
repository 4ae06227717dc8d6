import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FoamId } from '../base/ids.ts';
import { formatFine, type LengthUnit } from '../base/format-length.ts';
import type { FillRule, TurnRule } from '../model/stock.ts';
import { FILL_LIMITS, fillOf, TURN_RULES } from '../project/fill-rule.ts';
import { setFillRule } from '../project/stock-commands.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { STOCK_WORDS } from './stock-words.ts';
import { SHARED } from './styles.ts';

/** What each way of cutting takes away, mm: a knife nothing, a laser a few tenths, a bandsaw its set teeth and a little wander. */
const CUTS = { knife: 0, laser: 0.2, saw: 1 } as const;
type Cut = keyof typeof CUTS;
const CUT_NAMES: readonly Cut[] = ['knife', 'laser', 'saw'];

/** How sheets of one foam are filled. */
@customElement('fl-fill-fields')
export class FillFields extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      .fields {
        align-items: end;
      }
      .ticks {
        margin-block-start: var(--s2);
      }
      .ticks label {
        display: inline-flex;
        align-items: center;
        gap: var(--s2);
        min-block-size: var(--target);
        font-size: var(--t-small);
        color: var(--ink);
      }
    `,
  ];

  @property() foam = '';

  protected override render() {
    const fill = fillOf(this.project?.stock, this.foam as FoamId);
    const words = STOCK_WORDS.fill;
    return html`<div class="fields">
        ${this.#length(fill, 'borderMm', words.border)}
        <label>
          ${words.cutBy}
          <select data-means="fill-cut" @change=${this.#takeCut}>
            ${CUT_NAMES.map(
              (cut) =>
                html`<option value=${cut} .selected=${fill.spacingMm === CUTS[cut]}>
                  ${cutText(cut, this.unit)}
                </option>`,
            )}
            <option value="own" .selected=${cutOf(fill) === 'own'} ?disabled=${cutOf(fill) !== 'own'}>
              ${words.cuts.own}
            </option>
          </select>
        </label>
        ${this.#length(fill, 'spacingMm', words.spacing)}
        <label>
          ${words.turns}
          <select data-means="fill-turns" @change=${this.#takeTurns}>
            ${TURN_RULES.map(
              (rule) => html`<option value=${rule} .selected=${rule === fill.turns}>${words.turn[rule]}</option>`,
            )}
          </select>
        </label>
      </div>
      <div class="row ticks">
        ${this.#tick(fill, 'turnOver', words.turnOver)} ${this.#tick(fill, 'buys', words.buys)}
      </div>`;
  }

  #length(fill: FillRule, key: 'borderMm' | 'spacingMm', label: string) {
    return html`<fl-length-field
      data-means=${`fill-${key}`}
      .label=${label}
      .mm=${fill[key]}
      .unit=${this.unit}
      .min=${0}
      .max=${FILL_LIMITS[key]}
      @fl-length=${({ mm }: LengthEvent) => this.#set({ [key]: mm })}
    ></fl-length-field>`;
  }

  #tick(fill: FillRule, key: 'turnOver' | 'buys', label: string) {
    return html`<label>
      <input
        data-means=${`fill-${key}`}
        type="checkbox"
        .checked=${fill[key]}
        @change=${(event: Event) => this.#set({ [key]: (event.target as HTMLInputElement).checked })}
      />
      ${label}
    </label>`;
  }

  #set(change: Partial<Omit<FillRule, 'foam'>>): void {
    this.send(setFillRule(this.foam as FoamId, change));
  }

  #takeCut(event: Event): void {
    const cut = CUT_NAMES.find((name) => name === (event.target as HTMLSelectElement).value);
    if (cut !== undefined) this.#set({ spacingMm: CUTS[cut] });
  }

  #takeTurns(event: Event): void {
    this.#set({ turns: (event.target as HTMLSelectElement).value as TurnRule });
  }
}

const cutOf = ({ spacingMm }: FillRule): Cut | 'own' => CUT_NAMES.find((cut) => CUTS[cut] === spacingMm) ?? 'own';

const cutText = (cut: Cut, unit: LengthUnit): string =>
  STOCK_WORDS.fill.cutOption(
    STOCK_WORDS.fill.cuts[cut],
    CUTS[cut] === 0 ? `0\u00a0${unit}` : formatFine(CUTS[cut], unit),
  );
