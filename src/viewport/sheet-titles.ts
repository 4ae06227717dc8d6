import { Box3, Group, Vector3, type Color } from 'three';
import type { SheetLayout } from '../model/sheet.ts';
import type { PiecePlaces } from './piece-places.ts';
import type { SheetHit } from './sheets-view.ts';
import { WordsMesh, type LaidWords } from './words-mesh.ts';

/** Height of an em, and how far the baseline lies behind the sheet, mm: thick foam does not hide it, and it is clear of the next row. */
const EM = 24;
const BEHIND = 17;
/** Over the bench, mm. */
const ABOVE = 0.2;
/** How far letters reach under their line, em. */
const DESCENT = 0.25;

/** What each sheet is, written on the bench behind it, at the end from which it is filled. One draw call. */
export class SheetTitles {
  readonly object = new Group();
  readonly #words: WordsMesh;
  #titles: readonly string[] = [];
  #layout: SheetLayout | null = null;
  #places: PiecePlaces | null = null;
  #boxes: Box3[] = [];

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

  /** Round the title of a sheet; empty where there is none. */
  box(sheet: number): Box3 {
    return this.#boxes.at(sheet) ?? new Box3();
  }

  /** The sheet whose title a ray meets on the bench, and how far away; null when it passes by. */
  hit(origin: Vector3, direction: Vector3): SheetHit | null {
    const distance = (ABOVE - origin.y) / direction.y;
    if (!(distance > 0)) return null;
    const at = origin.clone().addScaledVector(direction, distance).setY(ABOVE);
    const sheet = this.#boxes.findIndex((box) => box.containsPoint(at));
    return sheet < 0 ? null : { sheet, distance };
  }

  dispose(): void {
    this.#words.dispose();
  }

  #write(): void {
    const lines: LaidWords[] = [];
    const lineOf = new Map<number, LaidWords>();
    this.#layout?.sheets.forEach(({ widthMm, heightMm }, s) => {
      const place = this.#places?.layout.sheets[s];
      const text = this.#titles.at(s);
      if (place === undefined || text === undefined) return;
      const { x, z, isTurned } = place;
      const line: LaidWords = {
        text,
        at: new Vector3(x, ABOVE, z - (isTurned ? widthMm : heightMm) - BEHIND),
        right: new Vector3(EM, 0, 0),
        up: new Vector3(0, 0, -EM),
        align: isTurned ? 'right' : 'left',
      };
      lines.push(line);
      lineOf.set(s, line);
    });
    this.#words.set(lines);
    this.#boxes = (this.#layout?.sheets ?? []).map((_, s) => {
      const line = lineOf.get(s);
      return line === undefined ? new Box3() : this.#boxOf(line);
    });
  }

  #boxOf({ text, at, align }: LaidWords): Box3 {
    const width = EM * this.#words.widthOf(text);
    const left = align === 'right' ? at.x - width : at.x;
    return new Box3(new Vector3(left, 0, at.z - EM), new Vector3(left + width, 2 * ABOVE, at.z + DESCENT * EM));
  }
}
