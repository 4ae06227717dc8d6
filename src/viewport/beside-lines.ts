import { Group, Matrix4, Vector3, type Color } from 'three';
import type { PiecesView } from '../model/bench-view.ts';
import type { SheetLayout } from '../model/sheet.ts';
import type { Template } from '../model/template.ts';
import { LineBatch } from './line-batch.ts';
import { sheetFromDrawing, type PiecePlaces } from './piece-places.ts';

/** Lines lie this far above the foam, mm. */
const ABOVE = 0.15;

/** Cut lines of what lies on the sheets and has no way of its own from the sculpt: strips, and pieces of other parts. */
export class BesideLines {
  readonly object = new Group();
  readonly #all = new LineBatch({ widthPx: 1.4, opacity: 0.9, renderOrder: 2 });
  readonly #chosen = new LineBatch({ widthPx: 3, renderOrder: 3 });
  #ofPart = new Map<string, number[]>();

  constructor() {
    this.object.add(this.#all.object, this.#chosen.object);
  }

  set colours({ seam, accent }: { readonly seam: Color; readonly accent: Color }) {
    this.#all.colour = seam;
    this.#chosen.colour = accent;
  }

  set(layout: SheetLayout | null, pieces: PiecesView | null, places: PiecePlaces | null): void {
    this.#ofPart = new Map();
    const all: number[] = [];
    const beside = [...(pieces?.others ?? []), ...(pieces?.strips ?? []), ...(pieces?.plain ?? [])];
    layout?.sheets.forEach(({ placements, thicknessMm }, s) => {
      const onScene = places?.sceneFromSheet[s];
      if (onScene === undefined) return;
      for (const placement of placements) {
        const thing = beside.find(({ id }) => id === placement.piece);
        const template = pieces?.templates.find(({ piece }) => piece === placement.piece);
        if (thing === undefined || template === undefined) continue;
        const move = onScene
          .clone()
          .multiply(new Matrix4().makeTranslation(0, 0, thicknessMm + ABOVE))
          .multiply(sheetFromDrawing(placement, 0));
        const points = cutLines(template, move);
        all.push(...points);
        if (!('part' in thing)) continue;
        const own = this.#ofPart.get(thing.part);
        if (own === undefined) this.#ofPart.set(thing.part, points);
        else own.push(...points);
      }
    });
    this.#all.set(all);
  }

  /** Parts whose pieces stand out. */
  mark(parts: readonly string[]): void {
    this.#chosen.set(parts.flatMap((part) => this.#ofPart.get(part) ?? []));
  }

  dispose(): void {
    this.#all.dispose();
    this.#chosen.dispose();
  }
}

/** Segments of the lines that are cut, in the scene. */
function cutLines({ drawing }: Template, move: Matrix4): number[] {
  const segments: number[] = [];
  const point = new Vector3();
  for (const { role, points, closed } of drawing.strokes) {
    if (role !== 'cut') continue;
    const count = points.length / 2;
    for (let i = 0; i < (closed ? count : count - 1); i += 1)
      for (const j of [i, (i + 1) % count])
        point
          .set(points[2 * j], points[2 * j + 1], 0)
          .applyMatrix4(move)
          .toArray(segments, segments.length);
  }
  return segments;
}
