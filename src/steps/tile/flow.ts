import { inEnglish, type Say } from '../../base/paper-language.ts';
import type { Box2 } from '../../geom/ring.ts';
import { LEADING, Pen, TYPE_MM, type Setting } from './pen.ts';
import { wrapText } from './text-fit.ts';

/** Something that is put under what came before it and is never parted. */
export interface FlowItem {
  readonly heightMm: number;
  /** White above it, mm; none at the head of a column. */
  readonly gapMm: number;
  /** Draws with its upper left corner at `left`, `top`. */
  draw(pen: Pen, left: number, top: number): void;
}

/** A page that was filled, and how far down, mm. */
export interface FilledPage {
  readonly pen: Pen;
  readonly lowestMm: number;
}

/** White above a heading, and above what begins beside it in another column, mm. */
const BLOCK_GAP_MM = 5;

/** Fills pages from the top in columns, as many pages as it takes. */
export class Flow {
  /** The language of the paper: headings and paragraphs are said in it, what comes as an item was. */
  readonly say: Say;
  readonly #area: Box2;
  readonly #pages: { pen: Pen; lowest: number }[] = [];
  #columns: readonly { left: number; width: number }[] = [];
  #column = 0;
  #columnTop = 0;
  #y = 0;

  /** @param area the part of each page to fill, page space. */
  constructor(area: Box2, say = inEnglish) {
    this.say = say;
    this.#area = area;
    this.#newPage();
    this.columns([area.maxX - area.minX], 0);
  }

  /** From here on fills columns of these widths, `gap` apart, beginning under everything on the page. */
  columns(widths: readonly number[], gap: number): void {
    let left = this.#area.minX;
    this.#columns = widths.map((width) => {
      const column = { left, width };
      left += width + gap;
      return column;
    });
    this.#column = 0;
    this.#y = this.#page().lowest;
    this.#columnTop = this.#y === this.#area.maxY ? this.#y : this.#y - BLOCK_GAP_MM;
  }

  /** Height left under everything on the page, mm. */
  get restMm(): number {
    return this.#page().lowest - this.#area.minY;
  }

  /** Width of the column that is being filled, mm. */
  get width(): number {
    return this.#columns[this.#column].width;
  }

  /**
   * Puts an item at the end.
   * @param heading put again at the head of each column that the list goes on in.
   */
  put(item: FlowItem, heading?: FlowItem): void {
    const top = this.#y === this.#area.maxY ? this.#y : this.#y - item.gapMm;
    if (!this.#makeRoom(this.#y - top + item.heightMm)) {
      this.#draw(item, top);
      return;
    }
    if (heading !== undefined) this.#draw(heading, this.#y);
    this.#draw(item, heading === undefined ? this.#y : this.#y - item.gapMm);
  }

  /** Goes on in the next column if there is one beside this. */
  breakColumn(): void {
    if (this.#column + 1 < this.#columns.length) this.#nextColumn();
  }

  /** A heading of one line, never left alone at the foot of a column. @param underMm  room that what comes under it needs, mm. */
  heading(text: string, underMm = 3 * LEADING * TYPE_MM.body): void {
    const item = lineItem(this.say(text), { heightMm: TYPE_MM.heading, bold: true }, BLOCK_GAP_MM);
    this.#makeRoom(item.gapMm + item.heightMm + underMm);
    this.put(item);
  }

  /** A paragraph, wrapped to the column, one item a line. */
  paragraph(text: string, setting: Setting = {}, gapMm = 1.6): void {
    const height = setting.heightMm ?? TYPE_MM.body;
    for (const [i, line] of wrapText(this.say(text), height, this.width).entries())
      this.put(lineItem(line, setting, i === 0 ? gapMm : 0));
  }

  pages(): readonly FilledPage[] {
    return this.#pages.map(({ pen, lowest }) => ({ pen, lowestMm: lowest }));
  }

  #draw(item: FlowItem, top: number): void {
    item.draw(this.#page().pen, this.#columns[this.#column].left, top);
    this.#y = top - item.heightMm;
    this.#page().lowest = Math.min(this.#page().lowest, this.#y);
  }

  /** Goes on to the first column that has so much room, mm, or to the head of a page; true when that is another column. */
  #makeRoom(heightMm: number): boolean {
    let hasMoved = false;
    while (this.#y - heightMm < this.#area.minY && this.#y < this.#area.maxY) {
      this.#nextColumn();
      hasMoved = true;
    }
    return hasMoved;
  }

  #nextColumn(): void {
    if (this.#column + 1 < this.#columns.length) {
      this.#column += 1;
    } else {
      this.#newPage();
      this.#column = 0;
      this.#columnTop = this.#area.maxY;
    }
    this.#y = this.#columnTop;
  }

  #newPage(): void {
    this.#pages.push({ pen: new Pen(), lowest: this.#area.maxY });
    this.#columnTop = this.#area.maxY;
    this.#y = this.#area.maxY;
  }

  #page(): { pen: Pen; lowest: number } {
    return this.#pages[this.#pages.length - 1];
  }
}

/** One line of words as an item. */
export function lineItem(text: string, setting: Setting = {}, gapMm = 0): FlowItem {
  const height = setting.heightMm ?? TYPE_MM.body;
  return {
    heightMm: height * LEADING,
    gapMm,
    draw: (pen, left, top) => pen.write(text, { x: left, y: top - height * CAPITAL_DROP }, setting),
  };
}

/** From the top of a line's room to its baseline, as a share of the capital height: accents above, descenders below. */
const CAPITAL_DROP = 1.3;
