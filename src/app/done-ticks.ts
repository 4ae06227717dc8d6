import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { releaseCut, tickCut, tickPrinted, type RevisedPiece } from '../project/done-commands.ts';
import { standingOf } from '../project/piece-standing.ts';
import { JobSection } from './job-section.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** Ticks of one piece: its paper is printed, it is cut from foam. */
@customElement('fl-done-ticks')
export class DoneTicks extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--s1) var(--s4);
        padding-block: var(--s1);
      }
      label {
        display: inline-flex;
        align-items: center;
        gap: var(--s2);
      }
      .wrong {
        color: var(--wrong);
      }
    `,
  ];

  @property({ attribute: false }) piece: RevisedPiece | null = null;
  /** The twin that is on the same paper: what is printed of one is printed of both. */
  @property({ attribute: false }) onItsPaper: RevisedPiece | null = null;
  /** Number and name, for those who hear the ticks read. */
  @property() name = '';

  protected override render() {
    const { piece, project, name, onItsPaper } = this;
    if (piece === null || project === null) return nothing;
    const words = WORDS.done;
    const [{ paper, foam }] = standingOf(project.done, [piece]);
    return html`<label class="small">
        <input
          data-means="done-printed"
          type="checkbox"
          aria-label=${words.tickPrinted(name)}
          .checked=${paper === 'printed'}
          ?disabled=${paper === 'printed'}
          @change=${() => this.send(tickPrinted(onItsPaper === null ? [piece] : [piece, onItsPaper]))}
        />
        ${paper === 'stale' ? html`<span class="wrong">${words.stale}</span>` : words.printed}
      </label>
      <label class="small">
        <input
          data-means="done-cut"
          type="checkbox"
          aria-label=${words.tickCut(name)}
          .checked=${foam !== 'none'}
          ?disabled=${foam !== 'none'}
          @change=${() => this.send(tickCut(piece))}
        />
        ${foam === 'changed' ? html`<span class="wrong">${words.changed}</span>` : words.cut}
      </label>
      ${
        foam === 'none'
          ? nothing
          : html`<button
              class="small"
              aria-label=${words.releasePiece(name)}
              @click=${() => this.send(releaseCut(piece.id))}
            >
              ${words.release}
            </button>`
      }`;
  }
}
