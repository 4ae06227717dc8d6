import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { FoamId } from '../base/ids.ts';
import { readFigure } from '../base/read-figure.ts';
import { formatLength, formatPlain } from '../base/format-length.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import {
  forgetRules,
  RULE_LIMITS,
  RULE_NAMES,
  ruleOf,
  setRule,
  usualRule,
  type RuleName,
} from '../project/shop-rules.ts';
import { FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { RULE_WORDS } from './rule-words.ts';
import { SHARED } from './styles.ts';

/** The rules in the order and the groups they are shown in. */
const GROUPS: readonly (readonly [group: keyof typeof RULE_WORDS.groups, names: readonly RuleName[]])[] = [
  ['give', ['stretchNoticePct', 'stretchTooMuchPct', 'bendNoticePct', 'bendTooMuchPct']],
  ['grooves', ['foldLimitDeg', 'panelFlatDeg', 'hingeMm', 'leastHingeMm', 'kerfMm']],
  ['saw', ['bevelLimitDeg', 'narrowThicknesses', 'markSpacingMm', 'markLeastSeamMm']],
];

/** Rules of the shop for each foam the part is cut from. */
@customElement('fl-rule-fields')
export class RuleFields extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    css`
      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(9em, 100%), 1fr));
        align-items: end;
      }
      .fields input {
        inline-size: 7.5em;
      }
      .usual {
        font-size: var(--t-small);
        color: var(--ink-soft);
      }
    `,
  ];

  /** The foam whose rules are shown; one that is in use in any case. */
  @state() private foam: FoamId | null = null;
  /** The field that was typed into wrongly. */
  @state() private fault: RuleName | null = null;

  protected override render() {
    const foams = this.#foamsInUse();
    const foam = foams.find(({ id }) => id === this.foam) ?? foams[0];
    if (foam === undefined) return nothing;
    const words = RULE_WORDS;
    const isOwn = RULE_NAMES.some((name) => ruleOf(foam, name) !== usualRule(name));
    return html`<div class="stack">
      <p class="small soft">${words.why}</p>
      ${foams.length < 2 ? nothing : this.#choice(foams, foam)}
      ${GROUPS.map(
        ([group, names]) =>
          html`<fieldset class="stack">
            <legend>${words.groups[group]}</legend>
            <div class="fields">${names.map((name) => this.#field(foam, name))}</div>
          </fieldset>`,
      )}
      ${
        isOwn
          ? html`<div>
              <button class="plain" @click=${() => this.send(forgetRules(foam.id))}>${words.reset}</button>
            </div>`
          : nothing
      }
    </div>`;
  }

  /** The foams of the part's sheets and pieces, each once. */
  #foamsInUse(): readonly FoamSheet[] {
    const part = this.sculptPart;
    const ids = new Set(part?.layers.map(({ foam }) => foam));
    for (const { foam } of part?.pieceSettings ?? []) if (foam !== undefined) ids.add(foam);
    return this.project?.foams.filter(({ id }) => ids.has(id)) ?? [];
  }

  #choice(foams: readonly FoamSheet[], chosen: FoamSheet) {
    return html`<label>
      <span class="soft">${RULE_WORDS.foam}</span><br />
      <select
        data-means="rule-foam"
        @change=${(event: Event) => this.#chooseFoam(foams[(event.target as HTMLSelectElement).selectedIndex])}
      >
        ${foams.map((foam) => html`<option ?selected=${foam === chosen}>${foam.name}</option>`)}
      </select>
    </label>`;
  }

  #chooseFoam(foam: FoamSheet): void {
    this.foam = foam.id;
    this.fault = null;
  }

  #field(foam: FoamSheet, name: RuleName) {
    const value = ruleOf(foam, name);
    const usual = usualRule(name);
    const isLength = name.endsWith('Mm');
    const said = isLength ? formatLength(usual, this.unit) : formatPlain(usual);
    return html`<div>
      ${isLength ? this.#length(foam, name, value) : this.#number(foam, name, value)}
      ${value === usual ? nothing : html`<span class="usual">${RULE_WORDS.usual(said)}</span>`}
    </div>`;
  }

  #length(foam: FoamSheet, name: RuleName, value: number) {
    const { least, most } = RULE_LIMITS[name];
    return html`<fl-length-field
      data-means=${`rule-${name}`}
      label=${RULE_WORDS.fields[name]}
      .mm=${value}
      .unit=${this.unit}
      .min=${least}
      .max=${most}
      @fl-length=${(event: LengthEvent) => this.send(setRule(foam.id, name, event.mm))}
    ></fl-length-field>`;
  }

  #number(foam: FoamSheet, name: RuleName, value: number) {
    const isWrong = this.fault === name;
    const { least, most } = RULE_LIMITS[name];
    return html`<label>
      ${RULE_WORDS.fields[name]}
      <input
        data-means=${`rule-${name}`}
        type="text"
        inputmode="decimal"
        autocomplete="off"
        data-rule=${name}
        .value=${formatPlain(value)}
        aria-invalid=${isWrong ? 'true' : 'false'}
        aria-describedby=${`fault-${name}`}
        @change=${(event: Event) => this.#take(foam, name, event.target as HTMLInputElement)}
      />
      <span id=${`fault-${name}`} class="small wrong" role="status"
        >${isWrong ? RULE_WORDS.wrong(least, most) : ''}</span
      >
    </label>`;
  }

  #take({ id }: FoamSheet, name: RuleName, { value }: HTMLInputElement): void {
    const { least, most } = RULE_LIMITS[name];
    const number = readFigure(value);
    if (!(number >= least && number <= most)) {
      this.fault = name;
      return;
    }
    this.fault = null;
    this.send(setRule(id, name, number));
  }
}
