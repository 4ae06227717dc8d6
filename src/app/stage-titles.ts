import { LitElement, css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { LOOK_WORDS as WORDS } from './look-words.ts';
import { SHARED } from './styles.ts';

/** Least side of a ring, px: a title far away is small. */
const LEAST_PX = 36;
/** The ring stays so far inside the picture, px. */
const INSET_PX = 6;

/** Where the title of a sheet is seen, px from the stage's upper left. */
export type TitlePlace = Pick<DOMRectReadOnly, 'left' | 'top' | 'width' | 'height'>;

/** The titles that are written on the bench, as buttons for keys: nothing of them is seen but the ring of the one in focus, about its title. */
@customElement('fl-stage-titles')
export class StageTitles extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        position: absolute;
        inset: 0;
        overflow: hidden;
        pointer-events: none;
      }
      button {
        position: absolute;
        inset-block-start: 0;
        left: 0; /* Moved from there by px of the picture, whichever way words run. */
        min-inline-size: 0;
        padding: 0;
        border: 0;
        background: none;
        opacity: 0;
      }
      button:focus-visible {
        opacity: 1;
      }
    `,
  ];

  /** One for each sheet. */
  @property({ attribute: false }) titles: readonly string[] = [];

  protected override render() {
    return this.titles.map(
      (title, sheet) =>
        html`<button
          aria-label=${WORDS.toSheet(title)}
          @click=${() => this.dispatchEvent(new SheetTitleEvent(sheet))}
        ></button>`,
    );
  }

  /** After each picture. @param placeOf  null where the title is not seen. */
  follow(placeOf: (sheet: number) => TitlePlace | null): void {
    const { clientWidth, clientHeight } = this;
    this.renderRoot.querySelectorAll('button').forEach((button, sheet) => {
      const place = placeOf(sheet) ?? { left: 0, top: 0, width: 0, height: 0 };
      const [left, width] = within(place.left, place.width, clientWidth);
      const [top, height] = within(place.top, place.height, clientHeight);
      button.style.transform = `translate(${left}px, ${top}px)`;
      button.style.inlineSize = `${width}px`;
      button.style.blockSize = `${height}px`;
    });
  }
}

/** Where a stretch begins, and how long it is, kept in the picture and not too short. */
function within(from: number, length: number, most: number): readonly [number, number] {
  const wide = Math.max(LEAST_PX, Math.min(length, most - 2 * INSET_PX));
  const begin = from + Math.min(0, (length - wide) / 2);
  return [Math.max(INSET_PX, Math.min(most - wide - INSET_PX, begin)), wide];
}

/** The title of a sheet was pressed. */
export class SheetTitleEvent extends Event {
  constructor(readonly sheet: number) {
    super('fl-sheet-title');
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-stage-titles': StageTitles;
  }
  interface HTMLElementEventMap {
    'fl-sheet-title': SheetTitleEvent;
  }
}
