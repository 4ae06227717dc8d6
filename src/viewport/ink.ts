import { type Color, Group, Matrix4, Vector3 } from 'three';
import { LINE_STYLES } from '../model/line-style.ts';
import type { PiecesView } from '../model/bench-view.ts';
import type { Stroke } from '../model/template.ts';
import { LineBatch } from './line-batch.ts';
import type { PiecePlaces } from './piece-places.ts';
import { CAPITAL_SHARE, WordsMesh, type LaidWords } from './words-mesh.ts';

/** Ink lies this far above the foam, mm. */
const ABOVE = 0.15;
/** Lines wider than this on paper are drawn wide here, mm; and how wide the two kinds are, px. */
const WIDE_FROM_MM = 0.3;
const WIDE_PX = 1.8;
const NARROW_PX = 1;

/** What is printed, lying on the flat pieces: the same strokes and words as on paper. */
export class Ink {
  readonly object = new Group();
  readonly #wide = new LineBatch({ widthPx: WIDE_PX, renderOrder: 2 });
  readonly #narrow = new LineBatch({ widthPx: NARROW_PX, opacity: 0.85, renderOrder: 2 });
  readonly #words: WordsMesh;

  constructor(font: string) {
    this.#words = new WordsMesh(font);
    this.object.add(this.#wide.object, this.#narrow.object, this.#words.object);
    this.object.visible = false;
  }

  /** Light on charcoal, dark on a pale scale. */
  set colour(colour: Color) {
    this.#wide.colour = colour;
    this.#narrow.colour = colour;
    this.#words.colour = colour;
  }

  set(view: PiecesView | null, places: PiecePlaces | null): void {
    const wide: number[] = [];
    const narrow: number[] = [];
    const words: LaidWords[] = [];
    view?.pieces.forEach((piece, i) => {
      const template = view.templates.find(({ piece: id }) => id === piece.id);
      if (template === undefined || places === null) return;
      const move = places.sceneFromDrawing[i].clone().multiply(new Matrix4().makeTranslation(0, 0, piece.thicknessMm + ABOVE));
      for (const stroke of template.drawing.strokes) {
        const style = LINE_STYLES[stroke.role];
        addStroke(style.widthMm > WIDE_FROM_MM ? wide : narrow, stroke, style.dashMm, move);
      }
      for (const { text, at, angleRad, heightMm, align } of template.drawing.words) {
        const em = heightMm / CAPITAL_SHARE;
        const [x, y] = [em * Math.cos(angleRad), em * Math.sin(angleRad)];
        const place = new Vector3(at.x, at.y, 0).applyMatrix4(move);
        words.push({
          text,
          at: place,
          right: new Vector3(at.x + x, at.y + y, 0).applyMatrix4(move).sub(place),
          up: new Vector3(at.x - y, at.y + x, 0).applyMatrix4(move).sub(place),
          align,
        });
      }
    });
    this.#wide.set(wide);
    this.#narrow.set(narrow);
    this.#words.set(words);
  }

  dispose(): void {
    this.#wide.dispose();
    this.#narrow.dispose();
    this.#words.dispose();
  }
}

/** Adds a stroke as segments, cut into its dashes. */
function addStroke(target: number[], { points, closed }: Stroke, dashMm: readonly number[], move: Matrix4): void {
  const count = points.length / 2;
  const from = new Vector3();
  const to = new Vector3();
  let [dash, left] = [0, dashMm[0] ?? Infinity];
  for (let i = 0; i < (closed ? count : count - 1); i += 1) {
    const j = (i + 1) % count;
    const [x, y] = [points[2 * i], points[2 * i + 1]];
    const [dx, dy] = [points[2 * j] - x, points[2 * j + 1] - y];
    const length = Math.hypot(dx, dy);
    for (let at = 0; at < length; ) {
      const next = Math.min(length, at + left);
      if (dash % 2 === 0) {
        from.set(x + (dx * at) / length, y + (dy * at) / length, 0).applyMatrix4(move);
        to.set(x + (dx * next) / length, y + (dy * next) / length, 0).applyMatrix4(move);
        target.push(from.x, from.y, from.z, to.x, to.y, to.z);
      }
      left -= next - at;
      at = next;
      if (left > 1e-9) continue;
      dash += 1;
      left = dashMm[dash % dashMm.length];
    }
  }
}
