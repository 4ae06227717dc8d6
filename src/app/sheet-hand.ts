import type { PieceId } from '../base/ids.ts';
import type { FreeAsk, FreePlaces } from '../model/free-places.ts';
import type { Command } from '../project/commands.ts';
import { placeCopy, type LaidSheet } from '../project/placing-commands.ts';
import { placeAbout } from './place-on-sheet.ts';
import { inTheWay, nearestTouch, stepTo, type InTheWay } from '../viewport/free-place.ts';

/** A piece in hand, as it is shown: template turned over first, then turned, then moved, mm. */
export interface PieceInHand extends FreeAsk {
  readonly x: number;
  readonly y: number;
  /** `wait`: it is not known yet whether it can lie there. */
  readonly lies: 'well' | 'wait' | InTheWay;
}

/** What the hand needs of the window. */
export interface SheetHandHost {
  /** The layout on the bench. */
  sheets(): readonly LaidSheet[];
  /** The sheets in hand and the rules they are filled by: where these are others, what is free may be elsewhere. */
  rules(): readonly unknown[];
  /** Where the piece may be; null where that is not known. */
  places(ask: FreeAsk): Promise<FreePlaces | null>;
  /** Middle of a piece in its template, mm: it is turned about it. */
  middleOf(piece: PieceId): readonly [number, number];
  send(command: Command): void;
  /** The piece in hand is another, or lies elsewhere. */
  changed(): void;
  /** Something could not be done: what, for the maker. */
  refused(why: Refusal): void;
}

/** `full`: there is no place for it on that sheet. */
export type Refusal =
  { readonly why: 'full'; readonly sheet: number } | { readonly why: 'way'; readonly way: InTheWay };

/** A piece that is turned and would lie over something moves aside by so much at most, mm; farther is for the maker to say. */
const ASIDE_MM = 60;
/** A piece let go where it cannot lie goes so much farther than it snaps to the nearest place where it can. */
const PUSH_SHARE = 6;

/** One piece in hand on one sheet: dragged, stepped, turned, brought to another sheet. It is put down only where it can lie. */
export class SheetHand {
  readonly #host: SheetHandHost;
  #piece: PieceInHand | null = null;
  /** As it lay when it was grabbed, and from where on it to its nought. */
  #grabbed: { readonly from: PieceInHand; readonly dx: number; readonly dy: number } | null = null;
  /** Where the pointer was last. */
  #dragged: { readonly at: { readonly x: number; readonly y: number }; readonly snapMm: number } | null = null;
  #known: {
    readonly key: string;
    readonly rules: readonly unknown[];
    readonly places: Promise<FreePlaces | null>;
    isHere: boolean;
  } | null = null;
  #gesture = 0;
  /** Counts what was asked for: an answer to an older wish is passed over. */
  #turn = 0;

  constructor(host: SheetHandHost) {
    this.#host = host;
  }

  get piece(): PieceInHand | null {
    return this.#piece;
  }

  get isDragged(): boolean {
    return this.#grabbed !== null;
  }

  /** Takes a copy in hand where it lies. */
  take(sheet: number, piece: PieceId, copy: number): void {
    const now = this.#piece;
    if (now?.piece === piece && now.copy === copy && now.sheet === sheet) return;
    const place = this.#host
      .sheets()
      .at(sheet)
      ?.placements.find((one) => one.piece === piece && one.copy === copy);
    if (place === undefined) return;
    const { x, y, turnRad, isFlipped = false } = place;
    this.#gesture += 1;
    this.#show({ sheet, piece, copy, x, y, turnRad, isFlipped, lies: 'well' });
    void this.#placesOf(this.#piece as PieceInHand);
  }

  letGo(): void {
    this.#grabbed = null;
    if (this.#piece !== null) this.#show(null);
  }

  /** The layout is another: the piece lies as that says, unless it is in the air. */
  follow(): void {
    const now = this.#piece;
    if (now === null || this.#grabbed !== null || now.lies !== 'well') return;
    const sheets = this.#host.sheets();
    const isOwn = (one: LaidSheet['placements'][number]): boolean => one.piece === now.piece && one.copy === now.copy;
    const sheet = sheets.findIndex(({ placements }) => placements.some(isOwn));
    const place = sheets[sheet]?.placements.find(isOwn);
    if (place === undefined) return this.letGo();
    const { x, y, turnRad, isFlipped = false } = place;
    this.#piece = { ...now, sheet, x, y, turnRad, isFlipped };
  }

  /** @param at  place of the pointer on the sheet, mm. */
  grab(at: { readonly x: number; readonly y: number }): void {
    if (this.#piece === null) return;
    this.#gesture += 1;
    this.#grabbed = { from: this.#piece, dx: this.#piece.x - at.x, dy: this.#piece.y - at.y };
  }

  /** @param snapMm  nearer than this to where it touches, it does. */
  async drag(at: { readonly x: number; readonly y: number }, snapMm: number): Promise<void> {
    const [grabbed, now] = [this.#grabbed, this.#piece];
    if (grabbed === null || now === null) return;
    this.#dragged = { at, snapMm };
    const wish = { x: at.x + grabbed.dx, y: at.y + grabbed.dy };
    const turn = ++this.#turn;
    const asked = this.#placesOf(now);
    // It follows the hand before it is known where it may be.
    if (this.#known?.isHere !== true) this.#show({ ...now, ...wish, lies: 'wait' });
    const places = await asked;
    if (turn !== this.#turn || this.#piece === null || places === null) return;
    const way = inTheWay(places, wish);
    const touch = nearestTouch(places, wish);
    const isNear = touch !== null && touch.awayMm <= (way === null ? snapMm : PUSH_SHARE * snapMm);
    if (isNear) this.#show({ ...this.#piece, x: touch.x, y: touch.y, lies: 'well' });
    else this.#show({ ...this.#piece, ...wish, lies: way ?? 'well' });
  }

  /** Puts it down; where it cannot lie it goes back. */
  async drop(): Promise<void> {
    if (this.#piece?.lies === 'wait' && this.#dragged !== null) await this.drag(this.#dragged.at, this.#dragged.snapMm);
    const [grabbed, now] = [this.#grabbed, this.#piece];
    this.#turn += 1;
    this.#grabbed = null;
    this.#dragged = null;
    if (grabbed === null || now === null) return;
    const { from } = grabbed;
    if (now.lies !== 'well') {
      if (now.lies !== 'wait') this.#host.refused({ why: 'way', way: now.lies });
      return this.#show(from);
    }
    if (now.x !== from.x || now.y !== from.y) this.#put(now);
    else this.#show(now);
  }

  /** Puts a piece that is dragged, or in the air, back where it lay. @returns false where it lies. */
  cancel(): boolean {
    const now = this.#piece;
    if (now === null || (this.#grabbed === null && now.lies === 'well')) return false;
    this.#turn += 1;
    this.#grabbed = null;
    this.#piece = null;
    this.take(now.sheet, now.piece, now.copy);
    return true;
  }

  /** One step of an arrow key, mm on the sheet. @param isCoarse  it may go past what is in the way. */
  async step(dx: number, dy: number, isCoarse: boolean): Promise<void> {
    await this.#move((now, places) => {
      const to = stepTo(places, now, { x: dx, y: dy }, isCoarse);
      const wish = { x: now.x + dx, y: now.y + dy };
      const way = inTheWay(places, wish);
      // In the air it goes on until it is clear.
      if (to === null && now.lies !== 'well') return { ...now, ...wish, lies: way ?? 'well' };
      if (to === null) this.#host.refused({ why: 'way', way: way ?? 'edge' });
      return to === null ? null : { ...now, x: to.x, y: to.y, lies: 'well' };
    });
  }

  /** Turns it about its middle, counter-clockwise, radians. */
  async turn(byRad: number): Promise<void> {
    await this.#change((now) => ({ turnRad: now.turnRad + byRad, isFlipped: now.isFlipped }));
  }

  /** Turns its other side up, about a line along the sheet's y. */
  async flip(): Promise<void> {
    await this.#change((now) => ({ turnRad: -now.turnRad, isFlipped: !now.isFlipped }));
  }

  /** Brings it to another sheet, to the left end of what is free there. */
  async toSheet(sheet: number): Promise<void> {
    const now = this.#piece;
    if (now === null || now.sheet === sheet) return;
    this.#gesture += 1;
    const turn = ++this.#turn;
    const places = await this.#placesOf({ ...now, sheet });
    if (turn !== this.#turn || places === null) return;
    const corner = leftmost(places);
    if (corner === null) return this.#host.refused({ why: 'full', sheet });
    this.#put({ ...now, sheet, ...corner, lies: 'well' });
  }

  async #change(to: (now: PieceInHand) => Pick<PieceInHand, 'turnRad' | 'isFlipped'>): Promise<void> {
    const now = this.#piece;
    if (now === null) return;
    this.#gesture += 1;
    this.#show({ ...placeAbout(this.#host.middleOf(now.piece), now, to(now)), lies: 'wait' });
    await this.#move((wish, places) => {
      const way = inTheWay(places, wish);
      if (way === null) return { ...wish, lies: 'well' };
      const touch = nearestTouch(places, wish);
      if (touch !== null && touch.awayMm <= ASIDE_MM) return { ...wish, x: touch.x, y: touch.y, lies: 'well' };
      // In the air: what is in the way is said for as long as it is.
      return { ...wish, lies: way };
    }, now);
  }

  /** Moves the piece once it is known where it may be; what came in between is not overtaken. @param before  where it goes back where nothing is known. */
  async #move(
    to: (now: PieceInHand, places: FreePlaces) => PieceInHand | null,
    before: PieceInHand | null = this.#piece,
  ): Promise<void> {
    const now = this.#piece;
    if (now === null) return;
    const turn = ++this.#turn;
    const places = await this.#placesOf(now);
    if (turn !== this.#turn || this.#piece !== now) return;
    if (places === null) return this.#show(before);
    const next = to(now, places);
    if (next === null) return;
    if (next.lies === 'well') this.#put(next);
    else this.#show(next);
  }

  /** Asked for anew only where another piece moved: what is free for a piece does not depend on where it lies. */
  #placesOf({ piece, copy, sheet, turnRad, isFlipped }: PieceInHand): Promise<FreePlaces | null> {
    const ask = { piece, copy, sheet, turnRad, isFlipped };
    const others = this.#host
      .sheets()
      .at(sheet)
      ?.placements.filter((one) => one.piece !== piece || one.copy !== copy);
    const rules = this.#host.rules();
    const key = JSON.stringify([ask, others]);
    const known = this.#known;
    if (known?.key === key && known.rules.every((rule, i) => rule === rules[i])) return known.places;
    const places = this.#host.places(ask).catch(() => null);
    const asked = { key, rules, places, isHere: false };
    this.#known = asked;
    void places.then(() => (asked.isHere = true));
    return places;
  }

  #put(now: PieceInHand): void {
    const sheet = this.#host.sheets().at(now.sheet);
    this.#show(now);
    if (sheet === undefined) return;
    const { piece, copy, x, y, turnRad, isFlipped } = now;
    const held = { copy, sheet: sheet.name, x, y, turnRad, ...(isFlipped ? { isFlipped } : {}) };
    this.#host.send(placeCopy(this.#host.sheets(), piece, held, `place ${this.#gesture}`));
  }

  #show(piece: PieceInHand | null): void {
    this.#piece = piece;
    this.#host.changed();
  }
}

/** Of the corners of what is free, the one farthest to the left, of equals the lowest. */
function leftmost({ free }: FreePlaces): { readonly x: number; readonly y: number } | null {
  let best: { readonly x: number; readonly y: number } | null = null;
  for (const ring of free)
    for (let i = 0; i < ring.length; i += 2)
      if (best === null || ring[i] < best.x || (ring[i] === best.x && ring[i + 1] < best.y))
        best = { x: ring[i], y: ring[i + 1] };
  return best;
}
