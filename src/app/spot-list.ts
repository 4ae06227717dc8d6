import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { formatPercent } from '../base/format-length.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { FoamSpot } from '../model/forming.ts';
import { ChooseEvent } from './events.ts';
import { toldText } from './finding-text.ts';
import { JobSection } from './job-section.ts';
import { PLACE_LIST_STYLE } from './list-style.ts';
import { SHARED } from './styles.ts';
import { WORDS } from './words.ts';

/** Places shown before the rest is asked for. */
const FEW = 3;

/** Places that give less than this are not worth a line, per cent. */
const LEAST_PCT = 0.5;

/** What no laying flat can better is told from this on, per cent: under it foam takes it unnoticed. */
const LEAST_BOUND_PCT = 1;

/** The places of all pieces where foam must give most, and how little of that can be helped. Pointing at one shows where it is. */
@customElement('fl-spot-list')
export class SpotList extends JobSection {
  static override styles = [
    SHARED,
    PLACE_LIST_STYLE,
    css`
      .bound {
        margin-block-start: var(--s2);
      }
    `,
  ];

  @state() private isWhole = false;

  protected override render() {
    const pieces = this.bench.pieces?.pieces ?? [];
    const spots = pieces
      .flatMap((piece) => (piece.spots ?? []).map((spot) => ({ piece, spot })))
      .filter(({ spot }) => spot.percent >= LEAST_PCT)
      .toSorted((a, b) => b.spot.percent - a.spot.percent);
    if (spots.length === 0) return nothing;
    const shown = this.isWhole ? spots : spots.slice(0, FEW);
    const words = WORDS.forming.spots;
    return html`<h3>${words.heading}</h3>
      <ul>
        ${shown.map(({ piece, spot }) => html`<li>${this.#spot(piece, spot)}</li>`)}
      </ul>
      ${
        spots.length > shown.length
          ? html`<button class="plain" @click=${() => (this.isWhole = true)}>
              ${words.more(spots.length - shown.length)}
            </button>`
          : nothing
      }
      ${this.#bound(spots[0].piece)}`;
  }

  #spot(piece: FoamPiece, spot: FoamSpot) {
    // A corner has a dot wherever its piece is now; a triangle of a fine sculpt would be too small to see.
    const corner = this.bench.sculpt?.triangles[3 * spot.meshTriangle];
    const light = (): void =>
      this.point({ triangles: [spot.meshTriangle], ...(corner === undefined ? {} : { vertices: [corner] }) });
    const dark = (): void => this.point(null);
    const words = WORDS.forming.spots;
    return html`<button
      class="place"
      @pointerenter=${light}
      @pointerleave=${dark}
      @focus=${light}
      @blur=${dark}
      @click=${() => this.dispatchEvent(new ChooseEvent({ kind: 'piece', piece: piece.id }))}
    >
      <b>${words.give[spot.kind](formatPercent(spot.percent))}</b>
      ${words.rest(piece.name, toldText(spot.placeText, this.unit), toldText(spot.wayText, this.unit))}
    </button>`;
  }

  /** Of the piece that gives most: what no laying flat of it can better, beside what it is now. */
  #bound(piece: FoamPiece) {
    const patch = this.bench.pieces?.patches[piece.patch];
    const least = piece.leastRatio === undefined ? 0 : 100 * (piece.leastRatio.ratio - 1);
    if (patch?.stretchSpread == null || patch.squashSpread === null || least < LEAST_BOUND_PCT) return nothing;
    const now = 100 * ((1 + patch.stretchSpread.max / 100) / (1 - patch.squashSpread.max / 100) - 1);
    return html`<p class="small bound">
      ${WORDS.forming.bound.least(piece.name, formatPercent(least), formatPercent(now))}
    </p>`;
  }
}
