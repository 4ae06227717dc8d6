import { LitElement, css, html, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { Placement, Sheet } from '../model/sheet.ts';
import type { Template } from '../model/template.ts';
import { numberSpot } from '../viewport/number-spot.ts';
import type { besideOf } from './bench-state.ts';
import { ChooseEvent, PointEvent } from './events.ts';
import { sizeInside } from './number-size.ts';
import { cutPaths, frameOf, placeOnSheet, ringPath, sheetPath, uprightOn, type SheetFrame } from './sheet-drawing.ts';
import { SHARED } from './styles.ts';
import { isSameChoice, NOTHING, type Choice } from './view-state.ts';
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
      .clear {
        fill: var(--paper);
        fill-opacity: 0.75;
      }
      .offcut {
        fill: none;
        stroke: var(--on-foam);
        stroke-width: 1.5px;
        stroke-dasharray: 5 4;
        vector-effect: non-scaling-stroke;
      }
      .piece {
        fill: color-mix(in srgb, var(--foam-cut) 70%, #ffffff);
        stroke: #111;
        stroke-width: 1px;
        vector-effect: non-scaling-stroke;
        cursor: pointer;
      }
      .piece.is-chosen {
        fill: var(--lamp);
      }
      text {
        fill: #111;
        font-family: var(--type);
        font-weight: 700;
        paint-order: stroke;
        stroke: color-mix(in srgb, var(--foam-cut) 70%, #ffffff);
        stroke-width: 0.18em;
        pointer-events: none;
      }
    `,
  ];

  @property({ attribute: false }) sheet: Sheet | null = null;
  @property({ attribute: false }) pieces: readonly FoamPiece[] = [];
  /** What lies on sheets beside the pieces of the sculpt on the bench. */
  @property({ attribute: false }) beside: ReturnType<typeof besideOf> = [];
  @property({ attribute: false }) templates: readonly Template[] = [];
  @property({ attribute: false }) choice: Choice = NOTHING;

  protected override render() {
    const { sheet } = this;
    if (sheet === null) return nothing;
    const frame = frameOf(sheet);
    const { offcut } = sheet;
    return html`<svg
      viewBox="0 0 ${frame.width} ${frame.height}"
      role="img"
      aria-label=${WORDS.sheets.picture(sheet.placements.length)}
    >
      <g transform=${frame.matrix}>
        <path class="sheet" d=${sheetPath(sheet)} />
        ${(sheet.keepOut ?? []).map((zone) => svg`<path class="clear" d=${ringPath(zone)} />`)}
        ${
          offcut === undefined
            ? nothing
            : svg`<rect class="offcut" x=${offcut.x} y=${offcut.y} width=${offcut.widthMm} height=${offcut.heightMm} />`
        }
        ${sheet.placements.map((placement) => this.#piece(placement, frame))}
      </g>
    </svg>`;
  }

  #piece(placement: Placement, frame: SheetFrame) {
    const index = this.pieces.findIndex((piece) => piece.id === placement.piece);
    const template = this.templates.find((candidate) => candidate.piece === placement.piece);
    const beside = this.beside.find(({ id }) => id === placement.piece);
    if (template === undefined || (index < 0 && beside === undefined)) return nothing;
    const { cut } = cutPaths(template);
    // A strip is too narrow for its number, and is no piece of the prop to be lit.
    if (beside !== undefined && !('part' in beside))
      return svg`<g transform=${placeOnSheet(placement)}><path class="piece" d=${cut} /></g>`;
    const choice: Choice =
      beside === undefined ? { kind: 'piece', piece: placement.piece } : { kind: 'part', part: beside.part };
    const isChosen = isSameChoice(this.choice, choice);
    const { x, y, radiusMm } = numberSpot(template);
    const number = beside?.number ?? this.pieces[index].number;
    const text = `${number}${placement.isHeld === true ? ' ⊙' : ''}`;
    const size = Math.min(frame.height / 15, 1.3 * radiusMm, sizeInside(text, radiusMm));
    return svg`<g transform=${placeOnSheet(placement)}
        @click=${() => this.dispatchEvent(new ChooseEvent(choice))}
        @pointerenter=${() => this.dispatchEvent(new PointEvent(beside === undefined ? { pieces: [index] } : { parts: [beside.part] }))}
        @pointerleave=${() => this.dispatchEvent(new PointEvent(null))}>
        <path class="piece ${isChosen ? 'is-chosen' : ''}" d=${cut} fill-rule="evenodd" />
        <text transform="translate(${x} ${y}) ${uprightOn(frame, placement)}" font-size=${size} text-anchor="middle" dominant-baseline="central"
          >${text}</text>
      </g>`;
  }
}
