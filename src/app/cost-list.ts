import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatLength, formatPercent } from '../base/format-length.ts';
import type { SeamCost } from '../model/seam-cost.ts';
import { chainIndex } from './bench-state.ts';
import { costOrder } from './cost-actions.ts';
import { ChooseEvent } from './events.ts';
import { JobSection } from './job-section.ts';
import { PROPOSE_WORDS } from './propose-words.ts';
import { SEAM_ROWS_STYLE } from './list-style.ts';
import { SHARED } from './styles.ts';
import type { Costs } from './view-state.ts';

/** What it would cost to join each seam, the cheapest first; each can be chosen, and joined from there. */
@customElement('fl-cost-list')
export class CostList extends JobSection {
  static override styles = [SHARED, SEAM_ROWS_STYLE];

  @property({ attribute: false }) costs: Costs | null = null;

  protected override render() {
    const { seams } = this.bench;
    const inner = seams?.chains.filter(({ kind }) => kind !== 'open').length ?? 0;
    if (inner === 0) return nothing;
    const words = PROPOSE_WORDS.costs;
    const costs = this.costs?.seams === seams ? this.costs : null;
    return html`<div class="stack">
      <div class="row">
        ${
          costs?.isRunning === true
            ? html`<button class="next" @click=${() => this.ask('stop-costs')}>${PROPOSE_WORDS.stop}</button>
                <span class="small soft">${words.known(costs.list.length, inner)}</span>`
            : html`<button @click=${() => this.ask('ask-costs')}>${words.ask}</button>`
        }
      </div>
      ${costs === null || costs.list.length === 0 ? nothing : this.#table(costOrder(costs.list))}
    </div>`;
  }

  #table(list: readonly SeamCost[]) {
    const words = PROPOSE_WORDS.costs;
    return html`<table>
      <caption class="unseen">
        ${words.ask}
      </caption>
      <thead>
        <tr>
          <th scope="col">${words.seam}</th>
          <th scope="col">${words.joins}</th>
          <th scope="col" class="number">${words.saves}</th>
          <th scope="col" class="number">${PROPOSE_WORDS.rows.stretch}</th>
          <th scope="col" class="number">${PROPOSE_WORDS.rows.squash}</th>
        </tr>
      </thead>
      <tbody>
        ${list.map((cost) => this.#row(cost))}
      </tbody>
    </table>`;
  }

  #row(cost: SeamCost) {
    const chain = chainIndex(this.bench, cost.seam);
    const letter = this.bench.seams?.chains[chain]?.letter ?? '';
    const light = (): void => this.point({ seams: [chain] });
    const dark = (): void => this.point(null);
    const choose = (): boolean => this.dispatchEvent(new ChooseEvent({ kind: 'seam', seam: cost.seam }));
    return html`<tr @pointerenter=${light} @pointerleave=${dark} @focusin=${light} @focusout=${dark}>
      <td>
        <button class="letter" aria-label=${PROPOSE_WORDS.costs.choose(letter)} @click=${choose}>${letter}</button>
      </td>
      <td>${this.#joins(cost)}${this.#fault(cost)}</td>
      <td class="number">${formatLength(cost.lengthMm, this.unit)}</td>
      <td class="number">${cost.stretchPct === null ? nothing : formatPercent(cost.stretchPct)}</td>
      <td class="number">${cost.squashPct === null ? nothing : formatPercent(cost.squashPct)}</td>
    </tr>`;
  }

  #joins({ patches: [one, other] }: SeamCost): string {
    const numbers = [one, other].map(
      (patch) => this.bench.pieces?.pieces.find((piece) => piece.patch === patch)?.number ?? 0,
    );
    return one === other ? PROPOSE_WORDS.costs.closes(numbers[0]) : numbers.join(' – ');
  }

  /** Which limit the joined piece would break, the gravest. */
  #fault({ stretchPct, overlaps, sheetShare, isFeasible }: SeamCost) {
    if (isFeasible) return nothing;
    const { faults } = PROPOSE_WORDS.costs;
    const text =
      stretchPct === null
        ? faults.notFlat
        : overlaps > 0
          ? faults.overlaps
          : sheetShare > 1
            ? faults.sheet
            : faults.limit;
    return html`<br /><span class="wrong">${text}</span>`;
  }
}
