import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatFine, formatPercent } from '../base/format-length.ts';
import type { PatchView } from '../model/bench-view.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { Colouring } from '../viewport/bench-contract.ts';
import './cautions.ts';
import { pieceIndex } from './bench-state.ts';
import { ChooseEvent } from './events.ts';
import './area-list.ts';
import './findings.ts';
import { hasWrong } from './findings.ts';
import { fitFigures } from './fit-figures.ts';
import './job-line.ts';
import type { LineMark } from './job-line.ts';
import { JobSection } from './job-section.ts';
import './laying-group.ts';
import './legend/colour-choice.ts';
import './seam-table.ts';
import { limitsOnBench } from './sheet-on-bench.ts';
import './spot-list.ts';
import './spring-list.ts';
import './wear-group.ts';
import { SHARED } from './styles.ts';
import { NOTHING, type Choice } from './view-state.ts';
import { WORDS } from './words.ts';

/** Worst pieces named before the rest is left to the cut list. */
const WORST = 3;

/** How far the foam must give, and whether both sides of each seam are of one length. */
@customElement('fl-fit-line')
export class FitLine extends JobSection {
  static override styles = [
    SHARED,
    css`
      .worst {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--s4);
        align-items: baseline;
      }
      .worst button {
        margin-inline: 0;
        padding-inline: 0;
      }
    `,
  ];

  @property({ attribute: false }) choice: Choice = NOTHING;
  @property() colouring: Colouring = 'plain';
  /** Which sheet of the wall lies on the bench, 1 the outermost. */
  @property({ type: Number }) sheet = 1;
  /** Id of the tape in hand, or empty. */
  @property() inHand = '';
  /** True while the pieces are worked out anew. */
  @property({ type: Boolean }) isStale = false;

  protected override render() {
    const pieces = this.bench.pieces?.pieces ?? [];
    return html`<fl-job-line heading=${WORDS.lines.fit} mark=${this.#mark()}>
      ${
        pieces.length === 0
          ? html`<p slot="answer" class="soft">${WORDS.fit.waiting}</p>`
          : html`${this.#answer()}
              <fl-colour-choice
                .project=${this.project}
                .bench=${this.bench}
                .colouring=${this.colouring}
                .sheet=${this.sheet}
              ></fl-colour-choice>
              ${this.#worst()}
              <fl-spot-list .bench=${this.bench} .project=${this.project}></fl-spot-list>
              <fl-seam-table .bench=${this.bench} .project=${this.project} .choice=${this.choice}></fl-seam-table>
              ${this.isStale ? nothing : html`<fl-spring-list .bench=${this.bench} .project=${this.project}></fl-spring-list>`}
              <fl-laying-group .bench=${this.bench} .project=${this.project} .isStale=${this.isStale}></fl-laying-group>
              <fl-area-list .bench=${this.bench} .project=${this.project}></fl-area-list>
              <fl-wear-group .bench=${this.bench} .project=${this.project} .inHand=${this.inHand}></fl-wear-group>`
      }
      <fl-findings
        .bench=${this.bench}
        .project=${this.project}
        .steps=${['flatten', 'foam', 'wish', 'dryfit', 'wear']}
      ></fl-findings>
      ${pieces.length === 0 ? nothing : html`<fl-cautions .work=${['heat', 'glue']} label=${WORDS.cautions.glue}></fl-cautions>`}
    </fl-job-line>`;
  }

  #limits() {
    return limitsOnBench(this.project, this.sheet);
  }

  #mark(): LineMark {
    const { pieces } = this.bench;
    if (hasWrong(this.bench, ['flatten', 'foam'])) return 'wrong';
    if (pieces === null || pieces.pieces.length === 0) return 'missing';
    const { stretch, squash } = fitFigures(this.bench) ?? { stretch: 0, squash: 0 };
    return Math.max(stretch, squash) > this.#limits().tooMuchPct ? 'wrong' : 'so';
  }

  #answer() {
    const seams = this.bench.pieces?.seams ?? [];
    const { stretch, squash, seams: difference } = fitFigures(this.bench) ?? { stretch: 0, squash: 0, seams: 0 };
    return html`<p slot="answer">${WORDS.fit.answer(formatPercent(stretch), formatPercent(squash))}</p>
      <p>
        ${seams.some((seam) => seam.kind !== 'open') ? WORDS.fit.closes(formatFine(difference, this.unit)) : WORDS.fit.noSeams}
        ${this.#dryFit()}
      </p>`;
  }

  #dryFit() {
    const { dryFit } = this.bench;
    if (dryFit === null || dryFit.perSeam.length === 0 || this.isStale) return nothing;
    const { worstGapMm, worstOverlapMm } = dryFit;
    return WORDS.fit.dryFit(formatFine(worstGapMm, this.unit), formatFine(worstOverlapMm, this.unit));
  }

  #worst() {
    const view = this.bench.pieces;
    // Once places are known by themselves, their list says it better.
    if (view === null || view.pieces.length < 2 || view.pieces.some(({ spots }) => spots !== undefined)) return nothing;
    const give = (patch: PatchView): number => Math.max(patch.stretchSpread?.max ?? 0, patch.squashSpread?.max ?? 0);
    const worst = view.pieces
      .map((piece) => ({ piece, pct: give(view.patches[piece.patch]) }))
      .toSorted((a, b) => b.pct - a.pct)
      .slice(0, WORST)
      .filter(({ pct }) => pct >= 0.05);
    if (worst.length === 0) return nothing;
    return html`<div class="worst small">
      <span class="soft">${WORDS.fit.worst}</span>${worst.map(({ piece, pct }) => this.#pieceButton(piece, pct))}
    </div>`;
  }

  #pieceButton(piece: FoamPiece, pct: number) {
    const light = (): void => this.point({ pieces: [pieceIndex(this.bench, piece.id)] });
    return html`<button
      class="plain"
      @pointerenter=${light}
      @pointerleave=${() => this.point(null)}
      @focus=${light}
      @blur=${() => this.point(null)}
      @click=${() => this.dispatchEvent(new ChooseEvent({ kind: 'piece', piece: piece.id }))}
    >
      ${piece.number} ${piece.name} ${formatPercent(pct)}
    </button>`;
  }
}
