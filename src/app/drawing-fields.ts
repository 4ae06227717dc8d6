import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatFine, formatLength, type LengthUnit } from '../base/format-length.ts';
import { ViewEvent } from './events.ts';
import { countByArrows, figureShown, figureTyped } from './figure-input.ts';
import { MARK_WORDS } from './mark-words.ts';
import { SHARED } from './styles.ts';
import type { DrawingInHand, ViewState } from './view-state.ts';

/** The drawing in hand: its name and size, what is wrong where it lies, and what can be done. */
export function drawingWords({ drawing, laid }: ViewState, unit: LengthUnit): string {
  if (drawing === null) return '';
  const words = MARK_WORDS.drawing;
  const size = drawing.sizePct / 100;
  const facts = words.facts(
    drawing.name,
    formatLength(drawing.widthMm * size, unit),
    formatLength(drawing.heightMm * size, unit),
  );
  return [facts, drawing.notes, ...placeWords(drawing, laid, unit)].filter((part) => part !== '').join(' ');
}

function placeWords(drawing: DrawingInHand, laid: ViewState['laid'], unit: LengthUnit): string[] {
  const words = MARK_WORDS.drawing;
  if (drawing.place === null) return [words.place];
  if (laid === null) return [];
  if ('problem' in laid) return [laid.problem];
  return [
    ...(laid.missedShare > 0 ? [words.missed(sharePct(laid.missedShare))] : []),
    ...(laid.closedByMm > 0 ? [words.closed(formatFine(laid.closedByMm, unit))] : []),
    words.how[drawing.way],
  ];
}

const sharePct = (share: number): string => `${share < 0.01 ? 'Under 1' : Math.round(100 * share)} %`;

/** How large the drawing in hand is laid, per cent, and how far it is turned, degrees. */
@customElement('fl-drawing-fields')
export class DrawingFields extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: inline-flex;
        flex-wrap: wrap;
        gap: var(--s2) var(--s3);
      }
      label {
        display: inline-flex;
        align-items: center;
        gap: var(--s2);
        color: var(--ink-soft);
        font-size: var(--t-small);
      }
      input {
        inline-size: 4.6em;
      }
    `,
  ];

  @property({ attribute: false }) drawing: DrawingInHand | null = null;

  protected override render() {
    const { drawing } = this;
    if (drawing === null) return nothing;
    const words = MARK_WORDS.drawing;
    return html`<label>
        ${words.size}
        <input
          data-means="drawing-size"
          class="size"
          type="text"
          inputmode="decimal"
          autocomplete="off"
          aria-label=${words.sizeLabel}
          .value=${figureShown(drawing.sizePct)}
          @keydown=${countByArrows(1, 10_000)}
          @change=${(event: Event) => this.#take(event, (sizePct) => (sizePct >= 1 && sizePct <= 10_000 ? { sizePct } : null))}
        />
        %
      </label>
      <label>
        ${words.turn}
        <input
          data-means="drawing-turn"
          class="turn"
          type="text"
          inputmode="decimal"
          autocomplete="off"
          aria-label=${words.turnLabel}
          .value=${figureShown(drawing.turnDeg)}
          @keydown=${countByArrows(-360, 360)}
          @change=${(event: Event) => this.#take(event, (turnDeg) => (Math.abs(turnDeg) <= 360 ? { turnDeg } : null))}
        />
        °
      </label>`;
  }

  #take(event: Event, patchOf: (value: number) => Partial<DrawingInHand> | null): void {
    const input = event.target as HTMLInputElement;
    const patch = patchOf(figureTyped(event));
    if (this.drawing === null) return;
    if (patch === null)
      input.value = figureShown(input.className === 'size' ? this.drawing.sizePct : this.drawing.turnDeg);
    else this.dispatchEvent(new ViewEvent({ drawing: { ...this.drawing, ...patch } }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-drawing-fields': DrawingFields;
  }
}
