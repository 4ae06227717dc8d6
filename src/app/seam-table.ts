import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatFine, formatLength, formatNumber } from '../base/format-length.ts';
import type { FoamSeam } from '../model/foam-piece.ts';
import { chainIndex, pieceIndex } from './bench-state.ts';
import { ChooseEvent } from './events.ts';
import { JobSection } from './job-section.ts';
import { SHARED } from './styles.ts';
import { NOTHING, type Choice } from './view-state.ts';
import { WORDS } from './words.ts';

/** Both sides of every seam, walked against each other. */
@customElement('fl-seam-table')
export class SeamTable extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        overflow-x: auto;
      }
      td:first-child {
        inline-size: 2.6em;
      }
      button.letter {
        min-inline-size: 2.2em;
        min-block-size: 28px;
        padding: 0 var(--s1);
        text-align: center;
        border-radius: 50%;
      }
      tbody tr:hover {
        background: var(--paper-low);
      }
      .wrong {
        font-weight: 700;
        color: var(--wrong);
      }
    `,
  ];

  @property({ attribute: false }) choice: Choice = NOTHING;
  /** Difference of both sides from which a seam is marked, mm. */
  @property({ type: Number }) noticeMm = 1;

  protected override render() {
    const seams = this.bench.pieces?.seams.filter((seam) => seam.kind !== 'open') ?? [];
    if (seams.length === 0) return nothing;
    const words = WORDS.seamTable;
    return html`<table>
      <caption class="unseen">${words.caption}</caption>
      <thead>
        <tr>
          <th scope="col">${words.seam}</th>
          <th scope="col">${words.pieces}</th>
          <th scope="col" class="number">${words.oneSide}</th>
          <th scope="col" class="number">${words.otherSide}</th>
          <th scope="col" class="number">${words.difference}</th>
          <th scope="col" class="number">${words.bevel}</th>
        </tr>
      </thead>
      <tbody>
        ${seams.map((seam) => this.#row(seam))}
      </tbody>
    </table>`;
  }

  #row(seam: FoamSeam) {
    const chain = chainIndex(this.bench, seam.id);
    const light = (): void => this.point({ seams: [chain] });
    const isChosen = this.choice.kind === 'seam' && this.choice.seam === seam.id;
    const [one, other] = seam.lengthMm;
    const difference = Math.abs(seam.differenceMm);
    const choose = (): boolean => this.dispatchEvent(new ChooseEvent(isChosen ? NOTHING : { kind: 'seam', seam: seam.id }));
    return html`<tr
      class=${isChosen ? 'is-chosen' : ''}
      @pointerenter=${light}
      @pointerleave=${() => this.point(null)}
      @focusin=${light}
      @focusout=${() => this.point(null)}
    >
      <td>
        <button class="letter" aria-pressed=${isChosen} aria-label=${WORDS.seamTable.choose(seam.letter)} @click=${choose}>
          ${seam.letter}
        </button>
      </td>
      <td>${this.#pieceNumbers(seam)}${seam.kind === 'lap' ? html` <span class="soft">${WORDS.seamTable.lap}</span>` : nothing}</td>
      <td class="number">${formatLength(one, this.unit)}</td>
      <td class="number">${other === undefined ? '' : formatLength(other, this.unit)}</td>
      <td class="number ${difference >= this.noticeMm ? 'wrong' : ''}">${formatFine(difference, this.unit)}</td>
      <td class="number">${this.#bevel(seam)}</td>
    </tr>`;
  }

  #pieceNumbers(seam: FoamSeam): string {
    const numbers = seam.pieces.map((id) => this.bench.pieces?.pieces[pieceIndex(this.bench, id)]?.number ?? 0);
    return numbers[0] === numbers[1] ? WORDS.seamTable.itself(numbers[0]) : numbers.join(' – ');
  }

  #bevel({ bevelDeg: { min, max } }: FoamSeam): string {
    const [low, high] = [formatNumber(min), formatNumber(max)];
    return low === high ? `${low}°` : `${low}…${high}°`;
  }
}
