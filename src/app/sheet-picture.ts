import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { PieceId } from '../base/ids.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { FoamStrip } from '../model/foam-strip.ts';
import type { Placement, Sheet } from '../model/sheet.ts';
import type { Template } from '../model/template.ts';
import { drawnLines } from '../viewport/drawing-lines.ts';
import { ChooseEvent, PointEvent } from './events.ts';
import { SHARED } from './styles.ts';
import { NOTHING, type Choice } from './view-state.ts';
import { WORDS } from './words.ts';

/** One sheet of foam from above with what is cut from it. */
@customElement('fl-sheet-picture')
export class SheetPicture extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      svg {
        display: block;
        inline-size: 100%;
        overflow: visible;
      }
      .sheet {
        fill: var(--foam);
      }
      .piece {
        fill: color-mix(in srgb, var(--foam-cut) 70%, #ffffff);
        stroke: #111;
        cursor: pointer;
      }
      .piece.is-chosen {
        fill: var(--lamp);
      }
      text {
        fill: #111;
        font-family: var(--type);
        font-weight: 700;
        pointer-events: none;
      }
    `,
  ];

  @property({ attribute: false }) sheet: Sheet | null = null;
  @property({ attribute: false }) pieces: readonly FoamPiece[] = [];
  /** Strips that lie on sheets beside the pieces. */
  @property({ attribute: false }) strips: readonly FoamStrip[] = [];
  @property({ attribute: false }) templates: readonly Template[] = [];
  @property({ attribute: false }) choice: Choice = NOTHING;

  protected override render() {
    const { sheet } = this;
    if (sheet === null) return nothing;
    // The long side lies across: a sheet on a bench, seen by who stands before it.
    const isTall = sheet.heightMm > sheet.widthMm;
    const [width, height] = isTall ? [sheet.heightMm, sheet.widthMm] : [sheet.widthMm, sheet.heightMm];
    const turn = isTall ? `matrix(0 -1 -1 0 ${width} ${height})` : `matrix(1 0 0 -1 0 ${height})`;
    return html`<svg
      viewBox="0 0 ${width} ${height}"
      role="img"
      aria-label=${WORDS.sheets.picture(sheet.placements.length)}
    >
      <rect class="sheet" width=${width} height=${height} />
      <g transform=${turn}>${sheet.placements.map((placement) => this.#piece(placement, height, isTall))}</g>
    </svg>`;
  }

  #piece(placement: Placement, heightMm: number, isTall: boolean) {
    const index = this.pieces.findIndex((piece) => piece.id === placement.piece);
    const template = this.templates.find((candidate) => candidate.piece === placement.piece);
    const isStrip = this.strips.some(({ id }) => id === placement.piece);
    if (template === undefined || (index < 0 && !isStrip)) return nothing;
    const cut = drawnLines(template.drawing).find((lines) => lines.role === 'cut');
    const isChosen = this.choice.kind === 'piece' && this.choice.piece === placement.piece;
    const { box } = template;
    const angle = (placement.turnRad * 180) / Math.PI;
    // A strip is too narrow for its number, and is no piece of the prop to be lit.
    if (isStrip)
      return svg`<g transform="translate(${placement.x} ${placement.y}) rotate(${angle})">
        <path class="piece" d=${cut?.path ?? ''} stroke-width=${heightMm / 300} />
      </g>`;
    const middle = `translate(${(box.minX + box.maxX) / 2} ${(box.minY + box.maxY) / 2})`;
    const upright = `${middle} rotate(${-angle}) ${isTall ? 'matrix(0 -1 -1 0 0 0)' : 'scale(1 -1)'}`;
    return svg`<g transform="translate(${placement.x} ${placement.y}) rotate(${angle})"
        @click=${() => this.#choose(placement.piece)}
        @pointerenter=${() => this.dispatchEvent(new PointEvent({ pieces: [index] }))}
        @pointerleave=${() => this.dispatchEvent(new PointEvent(null))}>
        <path class="piece ${isChosen ? 'is-chosen' : ''}" d=${cut?.path ?? ''} stroke-width=${heightMm / 300} fill-rule="evenodd" />
        <text transform=${upright} font-size=${heightMm / 15} text-anchor="middle" dominant-baseline="central">${this.pieces[index].number}</text>
      </g>`;
  }

  #choose(piece: PieceId): void {
    this.dispatchEvent(new ChooseEvent({ kind: 'piece', piece }));
  }
}
