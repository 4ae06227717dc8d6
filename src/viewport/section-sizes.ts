import { type Color, Group, Vector3 } from 'three';
import { formatLength, type LengthUnit } from '../base/format-length.ts';
import { dimensionsOf } from './dimension.ts';
import { LineBatch } from './line-batch.ts';
import type { PlaneFrame } from './plane-frame.ts';
import { CAPITAL_SHARE, WordsMesh, type LaidWords } from './words-mesh.ts';

/** Height of the figures, as a share of the greater side of what is cut, and at least so many mm. */
const FIGURE_SHARE = 0.036;
const LEAST_FIGURE_MM = 3;

/** Breadth and height of what a plane cuts, drawn on the plane as dimension lines. */
export class SectionSizes {
  readonly object = new Group();
  readonly #lines = new LineBatch({ widthPx: 1.2, isOnTop: true, opacity: 0.95, renderOrder: 14 });
  readonly #figures: WordsMesh;
  #unit: LengthUnit = 'mm';
  #shown: { readonly frame: PlaneFrame; readonly box: readonly [number, number, number, number] } | null = null;

  /** @param font CSS font family. */
  constructor(font: string) {
    this.#figures = new WordsMesh(font);
    this.#figures.object.renderOrder = 15;
    this.#figures.object.material.depthTest = false;
    this.object.add(this.#lines.object, this.#figures.object);
  }

  set unit(unit: LengthUnit) {
    if (unit === this.#unit) return;
    this.#unit = unit;
    this.#draw();
  }

  set colour(colour: Color) {
    this.#lines.colour = colour;
    this.#figures.colour = colour;
  }

  /** @param box  least x, least y, greatest x, greatest y of the cut in the frame, mm; null where nothing is cut. */
  set(frame: PlaneFrame | null, box: readonly [number, number, number, number] | null): void {
    this.#shown = frame === null || box === null ? null : { frame, box };
    this.#draw();
  }

  dispose(): void {
    this.#lines.dispose();
    this.#figures.dispose();
  }

  #draw(): void {
    if (this.#shown === null) {
      this.#lines.set([]);
      this.#figures.set([]);
      return;
    }
    const { frame, box } = this.#shown;
    const { centre, u, v } = frame;
    const figureMm = Math.max(LEAST_FIGURE_MM, FIGURE_SHARE * Math.max(box[2] - box[0], box[3] - box[1]));
    const inScene = (x: number, y: number): Vector3 => centre.clone().addScaledVector(u, x).addScaledVector(v, y);
    const way = (x: number, y: number): Vector3 =>
      new Vector3()
        .addScaledVector(u, x)
        .addScaledVector(v, y)
        .multiplyScalar(figureMm / CAPITAL_SHARE);
    const strokes: number[] = [];
    const words: LaidWords[] = [];
    for (const { strokes: flat, at, along, mm } of dimensionsOf(box, figureMm)) {
      for (let i = 0; i < flat.length; i += 2) inScene(flat[i], flat[i + 1]).toArray(strokes, strokes.length);
      const [x, y] = along;
      const text = formatLength(mm, this.#unit);
      words.push({ text, at: inScene(...at), right: way(x, y), up: way(-y, x), align: 'centre' });
    }
    this.#lines.set(strokes);
    this.#figures.set(words);
  }
}
