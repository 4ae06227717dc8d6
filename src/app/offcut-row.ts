import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Sheet } from '../model/sheet.ts';
import type { StockSheet } from '../model/stock.ts';
import { standingOf, type PieceStanding } from '../project/piece-standing.ts';
import { keepOffcut, removeStockSheet } from '../project/stock-commands.ts';
import { newStockId } from '../project/stock-sheet.ts';
import { WishEvent } from './events.ts';
import { JobSection } from './job-section.ts';
import { OFFCUT_WORDS } from './offcut-words.ts';
import { cutPiece } from './sheet-names.ts';
import { shelfAfterCut, shelfBeforeCut, type Shelf } from './shelf.ts';
import { sizeText } from './stock-words.ts';
import { SHARED } from './styles.ts';

/** What a sheet leaves, to be put on the shelf once pieces are cut from it. */
@customElement('fl-offcut-row')
export class OffcutRow extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: contents;
      }
    `,
  ];

  /** Foam that earlier jobs left. */
  @property({ attribute: false }) shelf: Shelf = [];
  /** Index of the sheet in the layout. */
  @property({ type: Number }) at = 0;

  protected override render() {
    const sheet = this.bench.sheets?.sheets.at(this.at);
    if (sheet?.offcut === undefined) return nothing;
    const words = OFFCUT_WORDS;
    const { offcut } = sheet;
    const size = sizeText(offcut.widthMm, offcut.heightMm, this.unit);
    const kept = this.#kept(sheet);
    if (kept !== undefined)
      return html`<span class="small soft">${words.kept(kept.name)}</span>
        <button class="plain" @click=${() => this.#takeBack(sheet, kept)}>${words.takeBack}</button>`;
    const standings = this.#standings(sheet);
    const uncut = standings.filter(({ foam }) => foam === 'none').length;
    if (uncut === standings.length) return nothing;
    return html`<button class="plain" title=${words.why} @click=${() => this.#keep(sheet)}>${words.keep(size)}</button>
      ${uncut === 0 ? nothing : html`<span class="small soft">${words.uncut(uncut)}</span>`}`;
  }

  /** The sheet on the shelf that is what is left of this one. */
  #kept({ foam, name }: Sheet): StockSheet | undefined {
    return this.project?.stock?.sheets?.find(
      ({ foam: other, leftBy }) => other === foam && leftBy?.stock === name.stock && leftBy.nth === name.nth,
    );
  }

  /** How far each piece on it is: the rest is on the bench once the first is cut. */
  #standings({ placements }: Sheet): readonly PieceStanding[] {
    const pieces = [...new Set(placements.map(({ piece }) => piece))].flatMap((id) => cutPiece(this.bench, id) ?? []);
    return standingOf(this.project?.done, pieces);
  }

  #keep({ foam, name, offcut }: Sheet): void {
    if (offcut === undefined || this.project === null) return;
    const { widthMm, heightMm } = offcut;
    const sheet: StockSheet = {
      id: newStockId(this.project.stock),
      name: OFFCUT_WORDS.name(this.project.name, this.at + 1),
      foam,
      shape: { kind: 'rectangle', widthMm: whole(widthMm), heightMm: whole(heightMm) },
      count: 1,
      leftBy: { stock: name.stock, nth: name.nth },
    };
    this.send(keepOffcut(sheet));
    this.dispatchEvent(new WishEvent({ shelf: shelfAfterCut(this.shelf, this.#inHand(name.stock), sheet) }));
  }

  #takeBack({ name }: Sheet, kept: StockSheet): void {
    this.send(removeStockSheet(kept.id));
    this.dispatchEvent(new WishEvent({ shelf: shelfBeforeCut(this.shelf, this.#inHand(name.stock), kept) }));
  }

  /** The sheet it was cut from, as it is in hand; null where it was bought. */
  #inHand(stock: string): StockSheet | null {
    return this.project?.stock?.sheets?.find(({ id }) => id === stock) ?? null;
  }
}

/** Rounded down: what is said to be there is there. */
const whole = (mm: number): number => Math.floor(mm);
