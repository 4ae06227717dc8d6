import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { LengthUnit } from '../../base/format-length.ts';
import { VerbEvent } from '../events.ts';
import { SHARED } from '../styles.ts';
import { HELP_DRAWING_STYLE, helpDrawing } from './drawings.ts';
import { GLOSSARY_WORDS, type TermName } from './glossary-words.ts';
import { LINK_STYLE } from './help-style.ts';
import { HELP_WORDS } from './help-words.ts';
import { linkedText, plainText } from './linked-text.ts';
import { boxOf, fieldAt, lineOf, meaningOf, type Field } from './meant-field.ts';
import { MEANS_WORDS } from './means-words.ts';
import { SMALL_MARK } from './small-mark-style.ts';

/** How long the mark waits for the pointer on its way from the field, and before it goes to another field, ms. */
const STAYS_MS = 900;
const SWITCHES_MS = 250;
/** Size of the mark, and what is kept between it, the note and the field, px. */
const MARK_PX = 36;
const GAP_PX = 8;

/**
 * What a field means, in the margin beside it: a mark stands there while the field is pointed at or has the keyboard, and opens a note under
 * it. F1 does the same by key, once more goes into the note, Esc closes it. Whoever hears the window hears the sentence with the field. One
 * element serves all fields: they say what they are by `data-means`.
 */
@customElement('fl-field-help')
export class FieldHelp extends LitElement {
  static override styles = [
    SHARED,
    HELP_DRAWING_STYLE,
    LINK_STYLE,
    css`
      .mark,
      .note,
      .frame {
        position: fixed;
        z-index: 4;
      }
      .mark {
        ${SMALL_MARK}
      }
      .mark span {
        display: grid;
        place-items: center;
        inline-size: 22px;
        block-size: 22px;
        border: 1.5px solid var(--ink);
        background: var(--paper-high);
        font-weight: 700;
      }
      .mark:hover:not(:disabled) {
        background: none;
      }
      .mark:hover span,
      .mark[aria-expanded='true'] span {
        border-color: var(--lamp);
        background: var(--lamp);
        color: var(--on-lamp);
      }
      .frame {
        pointer-events: none;
        border: var(--wide) dashed var(--lamp-ink);
      }
      .note {
        display: grid;
        gap: var(--s2);
        padding: var(--s3) var(--s4);
        border: var(--wide) solid var(--ink);
        border-inline-start-width: var(--s2);
        border-inline-start-color: var(--lamp);
        background: var(--paper-high);
        max-block-size: 60vh;
        overflow-y: auto;
      }
      .says {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s3) var(--s4);
        align-items: center;
      }
      .says p {
        flex: 1 1 14em;
      }
      .unplaced {
        visibility: hidden;
      }
    `,
  ];

  /** What lengths in sentences are said in. */
  @property() unit: LengthUnit = 'mm';
  @state() private field: Field | null = null;
  @state() private isOpen = false;
  /** A word of the sentence that was asked for. */
  @state() private term: TermName | null = null;
  @state() private isMarked = false;
  @query('.mark') private mark?: HTMLElement;
  @query('.note') private note?: HTMLElement;
  @query('.frame') private frame?: HTMLElement;
  #focused: Field | null = null;
  #timer = 0;
  /** What was pointed at last. */
  #over: EventTarget | null = null;
  /** Where the keyboard is heard to move. */
  readonly #heard = new Set<EventTarget>();

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('pointermove', this.#onPoint, { passive: true });
    window.addEventListener('pointerdown', this.#onPoint, { passive: true });
    this.#listenAt(window);
    window.addEventListener('keydown', this.#onKey, { capture: true });
    window.addEventListener('scroll', this.#place, { capture: true, passive: true });
    window.addEventListener('resize', this.#place);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#timer);
    window.removeEventListener('pointermove', this.#onPoint);
    window.removeEventListener('pointerdown', this.#onPoint);
    for (const root of this.#heard) root.removeEventListener('focusin', this.#onFocus);
    this.#heard.clear();
    window.removeEventListener('keydown', this.#onKey, { capture: true });
    window.removeEventListener('scroll', this.#place, { capture: true });
    window.removeEventListener('resize', this.#place);
  }

  protected override render() {
    const of = this.field === null ? null : meaningOf(this.field);
    if (of === null) return nothing;
    const { isOpen } = this;
    return html`${isOpen || this.isMarked ? html`<div class="frame"></div>` : nothing}
      <button
        class="mark"
        tabindex="-1"
        aria-label=${HELP_WORDS.ask}
        aria-expanded=${isOpen}
        aria-keyshortcuts="F1"
        @pointerdown=${this.#keepFocus}
        @pointerenter=${() => (this.isMarked = true)}
        @pointerleave=${() => (this.isMarked = false)}
        @click=${() => this.#turn()}
      >
        <span>${HELP_WORDS.mark}</span>
      </button>
      ${isOpen ? this.#note(of) : nothing}`;
  }

  #note(of: keyof typeof MEANS_WORDS & string) {
    const { term } = this;
    const open = (next: TermName): void => void (this.term = next);
    const words = term === null ? null : GLOSSARY_WORDS[term];
    return html`<section class="note" role="note" aria-label=${HELP_WORDS.note}>
      <div class="says" aria-live="polite">
        ${helpDrawing(term ?? of)}
        <p>
          ${words === null ? nothing : html`<b>${words.word}</b><br />`}${linkedText(words?.says ?? MEANS_WORDS[of], this.unit, open)}
        </p>
      </div>
      <div class="row">
        ${
          term === null
            ? nothing
            : html`<button class="plain" @click=${() => (this.term = null)}>${HELP_WORDS.back}</button>`
        }
        <button class="plain" @click=${() => this.#close()}>${HELP_WORDS.close}</button>
      </div>
    </section>`;
  }

  protected override updated(_changed: PropertyValues): void {
    this.#place();
  }

  /** The keyboard stays in the field while its note is read. */
  #keepFocus(event: Event): void {
    event.preventDefault();
  }

  #turn(): void {
    this.isOpen = !this.isOpen;
    this.term = null;
  }

  #close(): void {
    const isInside = this.shadowRoot?.activeElement != null;
    this.isOpen = false;
    this.term = null;
    if (isInside) this.field?.focus();
  }

  #show(field: Field | null): void {
    clearTimeout(this.#timer);
    if (field === this.field) return;
    this.field = field;
    this.term = null;
    if (field === null) this.isOpen = false;
  }

  /** A move of the keyboard from one field to another in one shadow root is heard in that root alone: all that it came through are heard. */
  #listenAt(root: EventTarget): void {
    if (this.#heard.has(root)) return;
    this.#heard.add(root);
    root.addEventListener('focusin', this.#onFocus);
  }

  #onPoint = (event: PointerEvent): void => {
    const [over] = event.composedPath();
    if (over === this.#over) return;
    this.#over = over;
    if (event.composedPath().includes(this)) return clearTimeout(this.#timer);
    const field = fieldAt(event);
    if (field === this.field) return clearTimeout(this.#timer);
    // An open note stays with its field until another one is entered or the note is closed.
    if (this.isOpen) return;
    clearTimeout(this.#timer);
    if (field !== null && (this.field === null || event.pointerType === 'touch')) return this.#show(field);
    // A finger has left before the mark can be touched: there it stays.
    if (field === null && event.pointerType === 'touch') return;
    this.#timer = window.setTimeout(() => this.#show(field ?? this.#focused), field === null ? STAYS_MS : SWITCHES_MS);
  };

  #onFocus = (event: Event): void => {
    for (const part of event.composedPath()) if (part instanceof ShadowRoot) this.#listenAt(part);
    if (event.composedPath().includes(this)) return;
    const field = fieldAt(event);
    this.#focused = field;
    const of = field === null ? null : meaningOf(field);
    if (field !== null && of !== null) field.ariaDescription = plainText(MEANS_WORDS[of], this.unit);
    this.#show(field);
  };

  #onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && this.isOpen) {
      event.preventDefault();
      event.stopPropagation();
      return this.#close();
    }
    if (event.key !== 'F1') return;
    event.preventDefault();
    if (this.field === null) this.dispatchEvent(new VerbEvent('help-keys'));
    else if (!this.isOpen) this.isOpen = true;
    else if (this.shadowRoot?.activeElement == null) this.note?.querySelector('button')?.focus();
    else this.#close();
  };

  /** Puts the mark into the margin at the height of the field, and the note under it, or over it where there is no room. */
  #place = (): void => {
    const { field, mark, note, frame } = this;
    if (field === null || mark === undefined) return;
    if (!field.isConnected || field.getClientRects().length === 0) return this.#show(null);
    const box = boxOf(field);
    const own = field.getBoundingClientRect();
    const line = lineOf(field)?.getBoundingClientRect();
    const isLeftward = getComputedStyle(this).direction === 'rtl';
    if (line === undefined) put(mark, box.x, box.y - MARK_PX - 2);
    else {
      // The box that is ticked stands in the same margin, 20 px wide.
      const start = line.width > 0 ? (isLeftward ? line.right - 28 : line.x - GAP_PX) : box.x;
      put(mark, start, own.y + own.height / 2 - MARK_PX / 2);
    }
    if (frame !== undefined && frame !== null) {
      put(frame, box.x - 4, box.y - 4);
      frame.style.width = `${box.width + 8}px`;
      frame.style.height = `${box.height + 8}px`;
    }
    if (note === undefined || note === null) return;
    const width = Math.min(line?.width ?? 420, 560, window.innerWidth - 2 * GAP_PX);
    note.style.width = `${width}px`;
    const { height } = note.getBoundingClientRect();
    const isRoom = box.bottom + GAP_PX + height <= window.innerHeight || box.y - GAP_PX - height < 0;
    put(note, line?.x ?? box.x, isRoom ? box.bottom + GAP_PX : box.y - GAP_PX - height);
  };
}

/** Puts something where it can be seen, px from the upper left corner of the window. */
function put(element: HTMLElement, x: number, y: number): void {
  const { offsetWidth, offsetHeight } = element;
  element.style.left = `${Math.max(0, Math.min(x, window.innerWidth - offsetWidth))}px`;
  element.style.top = `${Math.max(0, Math.min(y, window.innerHeight - offsetHeight))}px`;
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-field-help': FieldHelp;
  }
}
