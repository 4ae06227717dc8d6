import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatFine, formatMeasured, formatNumber } from '../base/format-length.ts';
import { DRY_FIT_MM } from '../base/tolerance.ts';
import type { BevelRange, FoamSeam } from '../model/foam-piece.ts';
import { chainIndex, pieceIndex } from './bench-state.ts';
import { ChooseEvent } from './events.ts';
import { JobSection } from './job-section.ts';
import { joinFacts } from './seam-joins.ts';
import { SEAM_ROWS_STYLE } from './list-style.ts';
import { SHARED } from './styles.ts';
import { NOTHING, type Choice } from './view-state.ts';
import { WORDS } from './words.ts';

/** What is shown as neither gap nor overlap, mm. */
const NOTHING_MM = 0.05;

/** Rows shown before the table is opened. */
const FEW = 5;

/** Both sides of every seam, walked against each other. */
@customElement('fl-seam-table')
export class SeamTable extends JobSection {
  static override styles = [
    SHARED,
    SEAM_ROWS_STYLE,
    css`
      :host {
        container-type: inline-size;
      }
      /* How far both sides are apart says it too. */
      @container (width < 520px) {
        .other {
          display: none;
        }
      }
      @container (width < 380px) {
        th,
        td {
          padding-inline: var(--s1);
        }
        .bevel {
          display: none;
        }
      }
      /* Narrower than its figures are it is scrolled by itself, and the window is not. */
      @container (width < 300px) {
        table {
          display: block;
          overflow-x: auto;
        }
      }
      td:first-child {
        inline-size: 2.6em;
      }
      .wrong {
        font-weight: 700;
      }
    `,
  ];

  @property({ attribute: false }) choice: Choice = NOTHING;
  /** Difference of both sides from which a seam is marked, mm. */
  @property({ type: Number }) noticeMm = 1;
  @state() private isWhole = false;

  protected override render() {
    const seams = this.bench.pieces?.seams.filter((seam) => seam.kind !== 'open') ?? [];
    if (seams.length === 0) return nothing;
    const words = WORDS.seamTable;
    const isLong = seams.length > FEW + 1;
    const shown = isLong && !this.isWhole ? this.#worst(seams) : seams;
    return html`<table>
        <caption class="unseen">
          ${words.caption}
        </caption>
        <thead>
          <tr>
            <th scope="col">${words.seam}</th>
            <th scope="col">${words.pieces}</th>
            <th scope="col" class="number">${words.oneSide}</th>
            <th scope="col" class="number other">${words.otherSide}</th>
            <th scope="col" class="number">${words.difference}</th>
            <th scope="col" class="number">${words.dryFit}</th>
            <th scope="col" class="number bevel">${words.bevel}</th>
          </tr>
        </thead>
        <tbody>
          ${shown.map((seam) => this.#row(seam))}
        </tbody>
      </table>
      ${
        isLong
          ? html`<button class="plain" aria-expanded=${this.isWhole} @click=${() => (this.isWhole = !this.isWhole)}>
              ${this.isWhole ? words.fewer(FEW) : words.all(seams.length)}
            </button>`
          : nothing
      }`;
  }

  /** The few that differ most, and the chosen one in any case. */
  #worst(seams: readonly FoamSeam[]): readonly FoamSeam[] {
    const order = seams.toSorted((a, b) => Math.abs(b.differenceMm) - Math.abs(a.differenceMm));
    const few = order.slice(0, FEW);
    const chosen = seams.find((seam) => this.choice.kind === 'seam' && this.choice.seam === seam.id);
    return chosen === undefined || few.includes(chosen) ? few : [...few, chosen];
  }

  #row(seam: FoamSeam) {
    const chain = chainIndex(this.bench, seam.id);
    const light = (): void => this.point({ seams: [chain] });
    const isChosen = this.choice.kind === 'seam' && this.choice.seam === seam.id;
    const [one, other] = seam.lengthMm;
    const difference = Math.abs(seam.differenceMm);
    const choose = (): boolean =>
      this.dispatchEvent(new ChooseEvent(isChosen ? NOTHING : { kind: 'seam', seam: seam.id }));
    return html`<tr
      class=${isChosen ? 'is-chosen' : ''}
      @pointerenter=${light}
      @pointerleave=${() => this.point(null)}
      @focusin=${light}
      @focusout=${() => this.point(null)}
    >
      <td>
        <button
          class="letter"
          aria-pressed=${isChosen}
          aria-label=${WORDS.seamTable.choose(seam.letter)}
          @click=${choose}
        >
          ${seam.letter}
        </button>
      </td>
      <td>${this.#pieceNumbers(seam)} ${this.#kind(seam)}</td>
      <td class="number">${formatMeasured(one, this.unit)}</td>
      <td class="number other">${other === undefined ? '' : formatMeasured(other, this.unit)}</td>
      <td class="number ${difference >= this.noticeMm ? 'wrong' : ''}">${formatFine(difference, this.unit)}</td>
      <td class="number">${this.#fitOf(seam)}</td>
      <td class="number bevel">${this.#bevel(seam)}</td>
    </tr>`;
  }

  /** The worse of gap (+) and overlap (\u2212) when the finished pieces are put together; both in the tip. */
  #fitOf({ id }: FoamSeam) {
    const fit = this.bench.dryFit?.perSeam.find(({ seam }) => seam === id);
    if (fit === undefined) return nothing;
    const { worstGapMm: gap, worstOverlapMm: overlap } = fit;
    const said = WORDS.seamTable.fits(formatFine(gap, this.unit), formatFine(overlap, this.unit));
    const worse = Math.max(gap, overlap);
    const sign = worse < NOTHING_MM ? '' : overlap > gap ? '\u2212' : '+';
    return html`<span class=${worse > DRY_FIT_MM ? 'wrong' : ''} title=${said}
      >${sign}${formatFine(worse, this.unit)}</span
    >`;
  }

  /** How it is joined where that is not edge to edge, and what stands proud; all of it in the tip. */
  #kind(seam: FoamSeam) {
    const { kind, step } = seam;
    const words = WORDS.joins.kind;
    const said = kind === 'lap' || kind === 'rebate' ? words[kind] : step === undefined ? null : words.step;
    if (said === null) return nothing;
    const facts = joinFacts(this.bench, seam, this.unit).join(', ');
    return html`<span class="soft" title=${facts}>${said}</span>`;
  }

  #pieceNumbers(seam: FoamSeam): string {
    const numbers = seam.pieces.map((id) => this.bench.pieces?.pieces[pieceIndex(this.bench, id)]?.number ?? 0);
    return numbers[0] === numbers[1] ? WORDS.seamTable.itself(numbers[0]) : numbers.join(' – ');
  }

  /** Both sides where one leans otherwise than the other. */
  #bevel({ bevelDeg, sideBevelDeg }: FoamSeam): string {
    return (sideBevelDeg ?? [bevelDeg]).map(rangeText).join(' · ');
  }
}

function rangeText({ min, max }: BevelRange): string {
  const [low, high] = [formatNumber(min), formatNumber(max)];
  return low === high ? `${low}°` : `${low}…${high}°`;
}
