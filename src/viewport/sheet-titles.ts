import { Group, Vector3, type Color } from 'three';
import type { SheetLayout } from '../model/sheet.ts';
import type { PiecePlaces } from './piece-places.ts';
import { WordsMesh, type LaidWords } from './words-mesh.ts';

/** Height of an em, and how far the baseline lies behind the sheet, mm: thick foam does not hide it, and it is clear of the next row. */
const EM = 24;
const BEHIND = 17;
/** Over the bench, mm. */
const ABOVE = 0.2;

/** What each sheet is, written on the bench behind it, at the end from which it is filled. One draw call. */
export class SheetTitles {
  readonly object = new Group();
  readonly #words: WordsMesh;
  #titles: readonly string[] = [];
  #layout: SheetLayout | null = null;
  #places: PiecePlaces | null = null;

  /** @param font CSS font family. */
  constructor(font: string) {
    this.#words = new WordsMesh(font);
    this.object.add(this.#words.object);
  }

  set colour(colour: Color) {
    this.#words.colour = colour;
  }

  /** One for each sheet, in their order. */
  set titles(titles: readonly string[]) {
    this.#titles = titles;
    this.#write();
  }

  set(layout: SheetLayout | null, places: PiecePlaces | null): void {
    this.#layout = layout;
    this.#places = places;
    this.#write();
  }

  dispose(): void {
    this.#words.dispose();
  }

  #write(): void {
    const lines: LaidWords[] = [];
    this.#layout?.sheets.forEach(({ widthMm, heightMm }, s) => {
      const place = this.#places?.layout.sheets[s];
      const text = this.#titles.at(s);
      if (place === undefined || text === undefined) return;
      const { x, z, isTurned } = place;
      lines.push({
        text,
        at: new Vector3(x, ABOVE, z - (isTurned ? widthMm : heightMm) - BEHIND),
        right: new Vector3(EM, 0, 0),
        up: new Vector3(0, 0, -EM),
        align: isTurned ? 'right' : 'left',
      });
    });
    this.#words.set(lines);
  }
}
