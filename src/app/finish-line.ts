import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatArea } from '../base/format-length.ts';
import type { FinishView } from '../worker/finish-api.ts';
import type { ShopView } from '../worker/shop-api.ts';
import { allCut } from './bench-state.ts';
import './finish-clay.ts';
import './finish-steps.ts';
import './job-line.ts';
import { JobSection } from './job-section.ts';
import './paint-areas.ts';
import './paint-list.ts';
import { swatch } from './paint-swatch.ts';
import { PAINT_WORDS } from './paint-words.ts';
import { QUANTITY_WORDS } from './quantity-words.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** In which colours it is painted, what is modelled in clay, what that takes, and in which order it is done. */
@customElement('fl-finish-line')
export class FinishLine extends JobSection {
  static override styles = [
    SHARED,
    css`
      td,
      th {
        vertical-align: baseline;
      }
      .wrong {
        color: var(--wrong);
      }
      .sample svg {
        vertical-align: middle;
        margin-inline-end: var(--s1);
      }
    `,
  ];

  @property({ attribute: false }) shop: ShopView | null = null;
  /** True while the bench shows the colours. */
  @property({ type: Boolean }) isShown = false;

  protected override render() {
    const { shop } = this;
    const hasPieces = allCut(this.bench).length > 0;
    const isWorn = shop !== null && isAsked(shop.finish);
    const isWrong = shop?.finish.findings.some(({ severity }) => severity !== 'note') === true;
    const mark = isWrong ? 'wrong' : isWorn ? 'so' : shop === null && hasPieces ? 'wait' : 'missing';
    return html`<fl-job-line asks heading=${WORDS.lines.finish} mark=${mark}>
      <p slot="answer" class=${isWorn ? '' : 'soft'}>${this.#answer(hasPieces)}</p>
      ${shop === null ? nothing : this.#findings(shop.finish)} ${hasPieces ? this.#fields() : nothing}
      ${shop !== null && isWorn ? this.#all(shop.finish) : nothing}
    </fl-job-line>`;
  }

  #findings({ findings }: FinishView) {
    return findings.length === 0
      ? nothing
      : html`<div class="stack small">
          ${findings.map(
            ({ severity, text }) =>
              html`<p>
                ${severity === 'note' ? nothing : html`<b class="wrong">${WORDS.findings.severity.warning}:</b>`}
                ${text}
              </p>`,
          )}
        </div>`;
  }

  #answer(hasPieces: boolean): string {
    if (!hasPieces) return PAINT_WORDS.waiting;
    if (this.shop === null) return PAINT_WORDS.making;
    const { finish } = this.shop;
    return isAsked(finish)
      ? PAINT_WORDS.answer(finish.plan.colours.length, finish.plan.steps.length)
      : PAINT_WORDS.none;
  }

  #fields() {
    const { project, bench } = this;
    const hasColours = (project?.shop?.colours ?? []).length > 0;
    return html`${
        hasColours
          ? html`<div class="row">
              <button aria-pressed=${this.isShown} @click=${() => this.ask('paint-colours')}>
                ${PAINT_WORDS.show}
              </button>
            </div>`
          : nothing
      }
      <div>
        <fl-paint-list .project=${project} .hatchings=${this.shop?.finish.hatchings ?? {}}></fl-paint-list>
        <fl-finish-clay .project=${project} .finish=${this.shop?.finish ?? null}></fl-finish-clay>
      </div>
      ${hasColours || this.#hasAreas ? html`<fl-paint-areas .project=${project} .bench=${bench}></fl-paint-areas>` : nothing}`;
  }

  get #hasAreas(): boolean {
    return (this.sculptPart?.regions ?? []).length > 0;
  }

  #all(finish: FinishView) {
    return html`${this.#table(finish)}
      <div class="stack small soft">${finish.rules.map((text) => html`<p>${text}</p>`)}</div>
      <fl-finish-steps .project=${this.project} .bench=${this.bench} .finish=${finish}></fl-finish-steps>`;
  }

  #table({ plan, hatchings }: FinishView) {
    const { table } = PAINT_WORDS;
    if (plan.colours.length === 0) return nothing;
    return html`<table>
      <caption class="unseen">
        ${table.caption}
      </caption>
      <thead>
        <tr>
          <th scope="col">${table.colour}</th>
          <th scope="col" class="number">${table.area}</th>
          <th scope="col" class="number">${table.coats}</th>
          <th scope="col" class="number">${table.volume}</th>
        </tr>
      </thead>
      <tbody>
        ${plan.colours.map(
          ({ colour, isBase, areaMm2, ml }) =>
            html`<tr>
              <td>
                <span class="sample">${swatch(colour.rgb, hatchings[colour.id] ?? null)}</span>
                ${isBase ? table.base(colour.name) : colour.name}
              </td>
              <td class="number">${formatArea(areaMm2, this.unit)}</td>
              <td class="number">${colour.coats}</td>
              <td class="number">${QUANTITY_WORDS.volume(ml)}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }
}

/** Whether something is painted in a colour or modelled. */
const isAsked = ({ plan }: FinishView): boolean => plan.colours.length > 0 || plan.clay !== null;
