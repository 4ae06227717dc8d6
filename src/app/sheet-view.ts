import { LitElement, html, nothing, svg, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { PieceId } from '../base/ids.ts';
import { formatLength, formatPercent } from '../base/format-length.ts';
import type { FreeAsk, FreePlaces } from '../model/free-places.ts';
import type { Placement, Sheet } from '../model/sheet.ts';
import type { Template } from '../model/template.ts';
import { EMPTY_BENCH, type Bench } from './bench-state.ts';
import { fillOf } from '../project/fill-rule.ts';
import type { Project } from '../project/project.ts';
import { ChooseEvent, CommandEvent } from './events.ts';
import { ARROWS, handSteps } from './hand-steps.ts';
import { InSight } from './in-sight.ts';
import { isBare } from './keys.ts';
import { PLACING_WORDS } from './placing-words.ts';
import { middleOf, onSheet } from './place-on-sheet.ts';
import {
  breakOf,
  frameOf,
  placeOnSheet,
  ringPath,
  sheetFromScreen,
  sheetPath,
  type SheetFrame,
} from './sheet-drawing.ts';
import { SheetHand, type PieceInHand, type Refusal } from './sheet-hand.ts';
import { wishOfPieceKey, type PieceWish, type PieceWishEvent } from './sheet-piece-row.ts';
import { cutPiece, nameOfCopy, nameOfWay, turnsOf } from './sheet-names.ts';
import { pieceBody, stateOf, turnHandle, type ShownPiece } from './sheet-view-parts.ts';
import { SHEET_VIEW_STYLE } from './sheet-view-style.ts';
import { sizeText } from './stock-words.ts';
import { SHARED } from './styles.ts';
import { NOTHING } from './view-state.ts';

/** Steps of a turn key, degrees; with Shift. */
const TURN_DEG = 15;
const FINE_DEG = 1;
/** A dragged piece that comes so near touches, px. */
const SNAP_PX = 8;

/** One sheet laid over the bench: its pieces are moved and turned by hand, and stay where they are put. */
@customElement('fl-sheet-view')
export class SheetView extends LitElement {
  static override styles = [SHARED, SHEET_VIEW_STYLE];

  @property({ attribute: false }) project: Project | null = null;
  @property({ attribute: false }) bench: Bench = EMPTY_BENCH;
  /** Which sheet is laid out. */
  @property({ type: Number }) at = 0;
  /** Asks where a piece may be. */
  @property({ attribute: false }) places: (ask: FreeAsk) => Promise<FreePlaces | null> = () => Promise.resolve(null);
  /** True: only the part that is filled is shown. */
  @state() private isClose = true;
  /** What was done last, or could not be. */
  @state() private told = '';
  #hand = new SheetHand({
    sheets: () => this.#sheets,
    rules: () => [this.project?.stock?.fills, this.project?.stock?.sheets],
    places: (ask) => this.places(ask),
    middleOf: (piece) => middleOf(this.#templateOf(piece)),
    send: (command) => this.dispatchEvent(new CommandEvent(command)),
    changed: () => this.#onHand(),
    refused: (why) => this.#onRefused(why),
  });
  #filledMm = 0;
  readonly #sight = new InSight(this);
  #before: HTMLElement | null = null;
  /** Where the turning handle was taken, and the turn it began with, radians. */
  #turning: { readonly pointer: number; readonly fromRad: number; byRad: number } | null = null;

  get #sheets(): readonly Sheet[] {
    return this.bench.sheets?.sheets ?? [];
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#before = inFocus();
  }

  /** The keyboard goes back to where it was when the sheet was laid over the bench. */
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#sight.leave();
    this.#before?.focus({ preventScroll: true });
  }

  protected override firstUpdated(): void {
    this.renderRoot.querySelector<SVGGElement>('g.piece')?.focus({ preventScroll: true });
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('at')) this.#sight.bring();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('at')) this.#filledMm = 0;
    if (changed.has('at') && this.#hand.piece?.sheet !== this.at) this.#hand.letGo();
    if (changed.has('bench')) this.#hand.follow();
  }

  protected override render() {
    const sheet = this.#sheets.at(this.at);
    if (sheet === undefined) return nothing;
    const words = PLACING_WORDS;
    const name = words.sheet(this.at + 1);
    const hand = this.#hand.piece;
    const frame = this.#frameOf(sheet);
    const unit = this.project?.lengthUnit ?? 'mm';
    const length = (mm: number): string => formatLength(mm, unit);
    const facts = [
      words.kind(sizeText(sheet.widthMm, sheet.heightMm, unit), length(sheet.thicknessMm)),
      sheet.label === undefined ? words.bought : words.inHand(sheet.label),
      words.used(formatPercent(100 * sheet.usedShare, 0)),
      words.last(length(sheet.filledMm)),
    ];
    return html`<p class="head"><b>${name}</b> <span>${facts.join(', ')}</span></p>
      <div class="table">
        <svg
          viewBox="0 0 ${frame.width} ${frame.height}"
          role="group"
          aria-label=${words.view(name)}
          @pointermove=${this.#onMove}
          @pointerup=${this.#onUp}
          @pointercancel=${this.#onCancel}
          @keydown=${this.#onKey}
        >
          <defs>
            <pattern id="hatch" width="14" height="14" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <rect width="14" height="14" class="hatch-ground" />
              <rect width="5" height="14" class="hatch-line" />
            </pattern>
          </defs>
          <g id="sheet" transform=${frame.matrix}>
            <path class="sheet" d=${sheetPath(sheet)} />
            ${this.#border(sheet)}
            ${(sheet.keepOut ?? []).map((zone) => svg`<path class="clear" d=${ringPath(zone)} />`)}
            ${this.#break(sheet, frame)} ${sheet.placements.map((one) => this.#piece(one, frame, hand))}
            ${hand !== null && hand.sheet === this.at ? this.#handle(hand, frame) : nothing}
          </g>
        </svg>
      </div>
      <p class="said" role="status">${this.#said(hand)}</p>
      <fl-sheet-piece-row
        .project=${this.project}
        .bench=${this.bench}
        .hand=${hand}
        @fl-piece-wish=${this.#onWish}
      ></fl-sheet-piece-row>
      <div class="turn">
        <button ?disabled=${this.at === 0} @click=${() => this.#goTo(this.at - 1)}>${words.before}</button>
        <span>${words.place(this.at + 1, this.#sheets.length)}</span>
        <button ?disabled=${this.at >= this.#sheets.length - 1} @click=${() => this.#goTo(this.at + 1)}>
          ${words.next}
        </button>
        <button @click=${() => (this.isClose = !this.isClose)}>${words.closer[`${this.isClose}`]}</button>
        <button @click=${() => this.dispatchEvent(new ChooseEvent(NOTHING))}>${words.close}<kbd>Esc</kbd></button>
      </div>`;
  }

  /** How far in pieces may lie; a traced outline has its border too, which is not drawn. */
  #border({ foam, widthMm, heightMm, outline }: Sheet) {
    const { borderMm } = fillOf(this.project?.stock, foam);
    if (borderMm === 0 || outline !== undefined) return nothing;
    const [width, height] = [widthMm - 2 * borderMm, heightMm - 2 * borderMm];
    if (width <= 0 || height <= 0) return nothing;
    return svg`<rect class="border" x=${borderMm} y=${borderMm} width=${width} height=${height} />`;
  }

  /** Where the picture ends before the sheet does. */
  #break(sheet: Sheet, frame: SheetFrame) {
    const cut = breakOf(sheet, frame);
    return cut === null ? nothing : svg`<path class="beyond" d=${cut.beyond} /><path class="break" d=${cut.line} />`;
  }

  /** What is shown grows with what is filled and does not shrink: under a hand the picture stays. */
  #frameOf(sheet: Sheet): SheetFrame {
    this.#filledMm = Math.max(this.#filledMm, sheet.filledMm);
    return frameOf({ ...sheet, filledMm: this.#filledMm }, this.isClose);
  }

  #piece(lying: Placement, frame: SheetFrame, hand: PieceInHand | null) {
    const template = this.#templateOf(lying.piece);
    if (template === undefined) return nothing;
    const isInHand = hand?.piece === lying.piece && hand.copy === lying.copy;
    const piece: ShownPiece = {
      template,
      place: isInHand && hand.sheet === this.at ? { ...lying, ...hand } : lying,
      name: nameOfCopy(this.bench, lying.piece, lying.copy),
      number: cutPiece(this.bench, lying.piece)?.number ?? '',
      isHeld: lying.isHeld === true,
      lies: isInHand ? hand.lies : null,
      mmPerPx: this.#mmPerPx(),
    };
    return svg`<g
      class="piece ${stateOf(piece)}"
      data-copy="${lying.piece} ${lying.copy}"
      tabindex="0"
      role="button"
      aria-pressed=${isInHand}
      aria-label=${PLACING_WORDS.label(piece.name, piece.isHeld)}
      transform=${placeOnSheet(piece.place)}
      @focus=${() => this.#take(lying)}
      @pointerdown=${(event: PointerEvent) => this.#onDown(event, lying)}
    >${pieceBody(piece, frame)}</g>`;
  }

  /** Where it may be turned any way. */
  #handle(hand: PieceInHand, frame: SheetFrame) {
    const template = this.#templateOf(hand.piece);
    if (template === undefined || turnsOf(this.project, this.bench, hand.piece) !== 'any') return nothing;
    return turnHandle(template, hand, frame, this.#turning?.byRad ?? null, (event) => this.#onTurnDown(event));
  }

  #said(hand: PieceInHand | null): string {
    const words = PLACING_WORDS;
    if (this.#turning !== null) return words.tool(Math.round((this.#turning.byRad * 180) / Math.PI));
    if (hand === null) return this.told === '' ? words.choose : this.told;
    if (hand.lies === 'wait') return words.inAir.wait;
    if (hand.lies !== 'well') return nameOfWay(this.bench, hand.lies, words.inAir);
    if (this.told !== '') return this.told;
    const [x, y] = onSheet(middleOf(this.#templateOf(hand.piece)), hand);
    const [across, up] = [x, y].map((mm) => formatLength(mm, this.project?.lengthUnit ?? 'mm'));
    return words.at(nameOfCopy(this.bench, hand.piece, hand.copy), across, up);
  }

  #onHand(): void {
    this.requestUpdate();
  }

  #onRefused(why: Refusal): void {
    const words = PLACING_WORDS.spoken;
    this.told =
      why.why === 'full'
        ? words.full(why.sheet)
        : this.#hand.piece?.lies === 'well'
          ? nameOfWay(this.bench, why.way, words.blocked)
          : words.back(nameOfWay(this.bench, why.way, PLACING_WORDS.inAir));
  }

  #take({ piece, copy }: Placement): void {
    const now = this.#hand.piece;
    if (now?.piece === piece && now.copy === copy) return;
    this.told = '';
    this.#hand.take(this.at, piece, copy);
  }

  #onDown(event: PointerEvent, lying: Placement): void {
    if (event.button !== 0) return;
    const at = this.#placeOf(event);
    if (at === null) return;
    this.#take(lying);
    (event.currentTarget as SVGGElement).focus();
    event.preventDefault();
    this.#hand.grab(at);
    this.renderRoot.querySelector('svg')?.setPointerCapture(event.pointerId);
  }

  #onTurnDown(event: PointerEvent): void {
    const from = this.#angleOf(event);
    if (event.button !== 0 || from === null) return;
    event.preventDefault();
    event.stopPropagation();
    this.#turning = { pointer: event.pointerId, fromRad: from, byRad: 0 };
    this.renderRoot.querySelector('svg')?.setPointerCapture(event.pointerId);
    this.requestUpdate();
  }

  #onMove(event: PointerEvent): void {
    if (this.#turning !== null) {
      const angle = this.#angleOf(event);
      if (angle === null) return;
      const step = ((event.shiftKey ? FINE_DEG : TURN_DEG) * Math.PI) / 180;
      this.#turning.byRad = Math.round((angle - this.#turning.fromRad) / step) * step;
      return this.requestUpdate();
    }
    if (!this.#hand.isDragged) return;
    const at = this.#placeOf(event);
    this.told = '';
    if (at !== null) void this.#hand.drag(at, SNAP_PX * this.#mmPerPx());
  }

  #onUp(): void {
    if (this.#turning !== null) {
      const { byRad } = this.#turning;
      this.#turning = null;
      if (byRad === 0) this.requestUpdate();
      else void this.#hand.turn(byRad);
      return;
    }
    void this.#hand.drop();
  }

  #onCancel(): void {
    this.#turning = null;
    this.#hand.cancel();
    this.requestUpdate();
  }

  #onKey(event: KeyboardEvent): void {
    const hand = this.#hand.piece;
    if (hand === null || !isBare(event)) return;
    if (event.key === 'Escape' && (this.#hand.cancel() || this.#turning !== null)) {
      this.#onCancel();
      return event.preventDefault();
    }
    if (event.key in ARROWS) {
      this.#step(event.key, event.shiftKey);
      return event.preventDefault();
    }
    const wish = wishOfPieceKey(event);
    if (wish === null) return;
    event.preventDefault();
    this.#do(wish, event.shiftKey);
  }

  /** Moves the piece in hand the way an arrow points on the screen. */
  #step(arrow: string, isFine: boolean): void {
    const sheet = this.#sheets.at(this.at);
    if (sheet === undefined) return;
    const { coarseMm, fineMm } = handSteps(this.project?.lengthUnit ?? 'mm');
    const step = isFine ? fineMm : coarseMm;
    const [across, up] = ARROWS[arrow];
    const [dx, dy] = sheetFromScreen(this.#frameOf(sheet), step * across, step * up);
    this.told = '';
    void this.#hand.step(dx, dy, !isFine);
  }

  #onWish(event: PieceWishEvent): void {
    this.#do(event.wish, false);
  }

  #do(wish: PieceWish, isFine: boolean): void {
    const hand = this.#hand.piece;
    if (hand === null) return;
    this.told = '';
    const turns = turnsOf(this.project, this.bench, hand.piece);
    const step = ((isFine ? FINE_DEG : TURN_DEG) * Math.PI) / 180;
    if (typeof wish === 'object') return 'way' in wish ? this.#step(wish.way, isFine) : void this.#toSheet(wish.sheet);
    if (wish === 'flip') return this.#flip(hand);
    if (wish === 'hold') return this.renderRoot.querySelector('fl-sheet-piece-row')?.hold();
    if (turns === 'none') return;
    const by = turns === 'half' || wish === 'half' ? Math.PI : wish === 'left' ? step : -step;
    void this.#hand.turn(by);
  }

  #flip({ piece }: PieceInHand): void {
    const foam = cutPiece(this.bench, piece)?.foam;
    if (foam !== undefined && fillOf(this.project?.stock, foam).turnOver) void this.#hand.flip();
    else this.told = PLACING_WORDS.noFlip;
  }

  async #toSheet(sheet: number): Promise<void> {
    const hand = this.#hand.piece;
    await this.#hand.toSheet(sheet);
    if (hand === null || this.#hand.piece?.sheet !== sheet) return;
    this.#goTo(sheet);
    this.told = PLACING_WORDS.spoken.onSheet(nameOfCopy(this.bench, hand.piece, hand.copy), sheet);
  }

  #goTo(sheet: number): void {
    this.dispatchEvent(new ChooseEvent({ kind: 'sheet', sheet }));
  }

  #templateOf(piece: PieceId): Template | undefined {
    return this.bench.pieces?.templates.find((template) => template.piece === piece);
  }

  /** Where the pointer is on the sheet, mm. */
  #placeOf({ clientX, clientY }: PointerEvent): DOMPoint | null {
    const toScreen = this.renderRoot.querySelector<SVGGElement>('#sheet')?.getScreenCTM();
    return toScreen == null ? null : new DOMPoint(clientX, clientY).matrixTransform(toScreen.inverse());
  }

  /** Which way the pointer lies from the middle of the piece in hand, radians on the sheet. */
  #angleOf(event: PointerEvent): number | null {
    const [at, hand] = [this.#placeOf(event), this.#hand.piece];
    if (at === null || hand === null) return null;
    const [x, y] = onSheet(middleOf(this.#templateOf(hand.piece)), hand);
    return Math.atan2(at.y - y, at.x - x);
  }

  /** How much of the sheet a pixel shows; before it is drawn as if it were 2 m across 1000. */
  #mmPerPx(): number {
    const toScreen = this.renderRoot.querySelector<SVGGElement>('#sheet')?.getScreenCTM();
    return toScreen == null ? 2 : 1 / Math.hypot(toScreen.a, toScreen.b);
  }
}

/** What has the keyboard, through all shadow roots. */
function inFocus(): HTMLElement | null {
  let here = document.activeElement;
  while (here?.shadowRoot?.activeElement != null) here = here.shadowRoot.activeElement;
  return here instanceof HTMLElement ? here : null;
}
