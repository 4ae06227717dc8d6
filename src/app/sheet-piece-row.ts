import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { PieceId } from '../base/ids.ts';
import type { Sheet } from '../model/sheet.ts';
import { fillOf } from '../project/fill-rule.ts';
import type { Command } from '../project/commands.ts';
import { placeCopy } from '../project/placing-commands.ts';
import type { Project } from '../project/project.ts';
import { groupPieces, releaseCopy } from '../project/stock-commands.ts';
import { allCut, EMPTY_BENCH, type Bench } from './bench-state.ts';
import { CommandEvent } from './events.ts';
import { PLACING_WORDS } from './placing-words.ts';
import type { PieceInHand } from './sheet-hand.ts';
import { cutPiece, fillOfPiece, nameOfCopy, turnsOf } from './sheet-names.ts';
import { SHARED } from './styles.ts';

/** Ways in which the piece in hand is moved, by the arrow keys for them. */
const WAYS = { ArrowLeft: '←', ArrowUp: '↑', ArrowDown: '↓', ArrowRight: '→' } as const;
type Way = keyof typeof WAYS;

export type PieceWish =
  'left' | 'right' | 'half' | 'flip' | 'hold' | { readonly way: Way } | { readonly sheet: number };

/** The piece in hand is to be moved, turned, or brought to another sheet. */
export class PieceWishEvent extends Event {
  constructor(readonly wish: PieceWish) {
    super('fl-piece-wish', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-piece-wish': PieceWishEvent;
  }
  interface HTMLElementTagNameMap {
    'fl-sheet-piece-row': SheetPieceRow;
  }
}

/** Keys of a piece in hand: comma and full stop turn it, U turns its other side up, H holds or releases it. */
export function wishOfPieceKey({ code, key }: KeyboardEvent): PieceWish | null {
  if (code === 'Comma') return 'left';
  if (code === 'Period') return 'right';
  const letter = key.toLowerCase();
  return letter === 'u' ? 'flip' : letter === 'h' ? 'hold' : null;
}

/** What can be done with the piece in hand on its sheet, with the keys for it. */
@customElement('fl-sheet-piece-row')
export class SheetPieceRow extends LitElement {
  static override styles = [
    SHARED,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: center;
        gap: var(--s2) var(--s3);
        min-block-size: 2.9rem;
      }
      .name {
        font-weight: 600;
      }
      .held::before {
        content: '⊙ ';
      }
      label {
        display: inline-flex;
        align-items: center;
        gap: var(--s2);
        color: var(--ink-soft);
      }
      select {
        max-inline-size: 12em;
      }
      /* Arrows point where the piece goes, whichever way one reads. */
      .ways {
        display: flex;
        gap: var(--s1);
        direction: ltr;
      }
      .ways button {
        min-inline-size: var(--target);
        padding-inline: 0;
      }
    `,
  ];

  @property({ attribute: false }) project: Project | null = null;
  @property({ attribute: false }) bench: Bench = EMPTY_BENCH;
  @property({ attribute: false }) hand: PieceInHand | null = null;

  /** Holds the piece in hand where it lies, or releases it. */
  hold(): void {
    const { hand } = this;
    const sheet = this.#sheets.at(hand?.sheet ?? -1);
    if (hand === null || sheet === undefined) return;
    const { piece, copy, x, y, turnRad, isFlipped } = hand;
    if (this.#isHeld(hand)) return this.#send(releaseCopy(piece, copy));
    const held = { copy, sheet: sheet.name, x, y, turnRad, ...(isFlipped ? { isFlipped } : {}) };
    this.#send(placeCopy(this.#sheets, piece, held));
  }

  get #sheets(): readonly Sheet[] {
    return this.bench.sheets?.sheets ?? [];
  }

  #isHeld({ piece, copy }: PieceInHand): boolean {
    return fillOfPiece(this.project, piece)?.held?.some((one) => one.copy === copy) ?? false;
  }

  protected override render() {
    const { hand } = this;
    const piece = hand === null ? undefined : cutPiece(this.bench, hand.piece);
    if (hand === null || piece === undefined) return nothing;
    const words = PLACING_WORDS;
    const isHeld = this.#isHeld(hand);
    const turns = turnsOf(this.project, this.bench, hand.piece);
    const wish = (one: PieceWish) => () => this.dispatchEvent(new PieceWishEvent(one));
    return html`<span class="name ${isHeld ? 'held' : ''}" title=${isHeld ? words.heldHere : words.loose}>
        ${words.label(nameOfCopy(this.bench, hand.piece, hand.copy), isHeld)}
      </span>
      <span class="ways" role="group" aria-label=${words.move}>
        ${(Object.keys(WAYS) as Way[]).map(
          (way) => html`<button aria-label=${words.ways[way]} @click=${wish({ way })}>${WAYS[way]}</button>`,
        )}
      </span>
      ${
        turns === 'any'
          ? html`<button @click=${wish('left')}>${words.turnLeft}<kbd>,</kbd></button>
              <button @click=${wish('right')}>${words.turnRight}<kbd>.</kbd></button>`
          : nothing
      }
      ${turns === 'half' ? html`<button @click=${wish('half')}>${words.turnHalf}<kbd>.</kbd></button>` : nothing}
      ${
        fillOf(this.project?.stock, piece.foam).turnOver
          ? html`<button @click=${wish('flip')}>${words.flip}<kbd>U</kbd></button>`
          : nothing
      }
      <button ?disabled=${hand.lies !== 'well'} @click=${wish('hold')}>
        ${isHeld ? words.release : words.hold}<kbd>H</kbd>
      </button>
      ${this.#toSheet(hand)} ${this.#together(hand.piece)}`;
  }

  /** Sheets of the same foam it may go to. */
  #toSheet(hand: PieceInHand) {
    const sheets = this.#sheets;
    const own = sheets.at(hand.sheet);
    const others = sheets.filter(({ foam }) => foam === own?.foam);
    if (others.length < 2) return nothing;
    const go = (event: Event): void => {
      this.dispatchEvent(new PieceWishEvent({ sheet: Number((event.target as HTMLSelectElement).value) }));
    };
    return html`<label>
      ${PLACING_WORDS.toSheet}
      <select data-means="to-sheet" @change=${go}>
        ${others.map((sheet) => {
          const i = sheets.indexOf(sheet);
          return html`<option value=${i} .selected=${i === hand.sheet}>${PLACING_WORDS.sheet(i + 1)}</option>`;
        })}
      </select>
    </label>`;
  }

  /** Which other pieces it stays with on one sheet. */
  #together(id: PieceId) {
    const own = cutPiece(this.bench, id);
    const pieces = allCut(this.bench).filter(({ foam }) => foam === own?.foam);
    if (pieces.length < 2) return nothing;
    const group = fillOfPiece(this.project, id)?.group;
    const words = PLACING_WORDS;
    const groupOf = (piece: PieceId): string | undefined => fillOfPiece(this.project, piece)?.group;
    const groups = [...new Set(pieces.map((piece) => groupOf(piece.id)).filter((one) => one !== undefined))];
    const others = pieces.filter((piece) => piece.id !== id && groupOf(piece.id) === undefined);
    const membersOf = (one: string): string =>
      pieces
        .filter((piece) => piece.id !== id && groupOf(piece.id) === one)
        .map(({ number }) => number)
        .join(', ');
    return html`<label>
      ${words.together}
      <select
        data-means="together"
        @change=${(event: Event) => this.#keepWith(id, (event.target as HTMLSelectElement).value)}
      >
        <option value="" .selected=${group === undefined}>${words.alone}</option>
        ${groups
          .filter((one) => membersOf(one) !== '')
          .map((one) => html`<option value="group ${one}" .selected=${one === group}>${membersOf(one)}</option>`)}
        ${others.map((piece) => html`<option value="piece ${piece.id}">${piece.number} ${piece.name}</option>`)}
      </select>
    </label>`;
  }

  #keepWith(id: PieceId, value: string): void {
    const [kind, ...rest] = value.split(' ');
    const named = rest.join(' ');
    if (kind === '') return this.#send(this.#leaving(id));
    if (kind === 'group') return this.#send(groupPieces([id], named));
    const other = this.bench.pieces?.pieces.find((piece) => piece.id === named)?.id ?? named;
    const own = fillOfPiece(this.project, id)?.group ?? this.#freeGroup();
    this.#send(groupPieces([id, other], own));
  }

  /** One piece that is left alone in its group has none any more. */
  #leaving(id: PieceId): Command {
    const group = fillOfPiece(this.project, id)?.group;
    const others = (this.project?.stock?.pieces ?? []).filter((one) => one.group === group && one.piece !== id);
    return groupPieces([id, ...(others.length === 1 ? [others[0].piece] : [])], null);
  }

  #freeGroup(): string {
    const taken = new Set((this.project?.stock?.pieces ?? []).map(({ group }) => group));
    for (let n = 1; ; n += 1) if (!taken.has(`together ${n}`)) return `together ${n}`;
  }

  #send(command: Command): void {
    this.dispatchEvent(new CommandEvent(command));
  }
}
