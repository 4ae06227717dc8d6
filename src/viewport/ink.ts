import { type Color, Group, Matrix4, Vector3 } from 'three';
import type { PiecesView } from '../model/bench-view.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import { LINE_STYLES } from '../model/line-style.ts';
import type { Stroke, Words } from '../model/template.ts';
import { LineBatch } from './line-batch.ts';
import type { PiecePlaces } from './piece-places.ts';
import { CAPITAL_SHARE, WordsMesh, type LaidWords } from './words-mesh.ts';

/** Ink lies this far above the foam, mm. */
const ABOVE = 0.15;
/** Lines wider than this on paper are drawn wide here, mm. */
const WIDE_FROM_MM = 0.3;
/**
 * What is printed, lying on the flat pieces: the same strokes and words as on paper. Marks outside the cut appear once it is down; words beside a
 * piece have no place on the bench, where its neighbours lie.
 */
export class Ink {
  readonly object = new Group();
  readonly #wide = new LineBatch({ widthPx: 1.8, renderOrder: 2 });
  readonly #narrow = new LineBatch({ widthPx: 1, opacity: 0.85, renderOrder: 2 });
  readonly #outside = new LineBatch({ widthPx: 1, opacity: 0.85, renderOrder: 2 });
  readonly #words: WordsMesh;

  constructor(font: string) {
    this.#words = new WordsMesh(font);
    this.object.add(this.#wide.object, this.#narrow.object, this.#outside.object, this.#words.object);
    this.object.visible = false;
  }

  /** Light on charcoal, dark on a pale scale. */
  set colour(colour: Color) {
    for (const part of [this.#wide, this.#narrow, this.#words]) part.colour = colour;
  }

  /** On the sheets round the pieces. */
  set outsideColour(colour: Color) {
    this.#outside.colour = colour;
  }

  /**
   * @param isDown  the pieces lie in their sheets.
   * @param isPlain no measure is shown that words would cover.
   */
  show(isDown: boolean, isPlain: boolean): void {
    this.#outside.object.visible = isDown && this.#outside.count > 0;
    this.#words.isShown = isPlain;
  }

  /** Widths of wide and narrow lines, CSS px. */
  scale(widePx: number, narrowPx: number): void {
    this.#wide.widthPx = widePx;
    this.#narrow.widthPx = this.#outside.widthPx = narrowPx;
  }

  set(view: PiecesView | null, places: PiecePlaces | null): void {
    const wide: number[] = [];
    const narrow: number[] = [];
    const outside: number[] = [];
    const words: LaidWords[] = [];
    view?.pieces.forEach((piece, i) => {
      const template = view.templates.find(({ piece: id }) => id === piece.id);
      if (template === undefined || places === null) return;
      const move = places.sceneFromDrawing[i]
        .clone()
        .multiply(new Matrix4().makeTranslation(0, 0, piece.thicknessMm + ABOVE));
      const outline = drawnOutline(piece, places.drawingFromFlat[i]);
      for (const stroke of template.drawing.strokes) {
        const { widthMm, dashMm } = LINE_STYLES[stroke.role];
        if (stroke.role === 'leader') continue;
        const isInside = stroke.role !== 'mark' || depthIn(outline, middleOf(stroke)) > 0;
        addStroke(!isInside ? outside : widthMm > WIDE_FROM_MM ? wide : narrow, stroke, dashMm, move);
      }
      for (const line of template.drawing.words) {
        if (depthIn(outline, line.at) > 0) words.push(laid(line, move));
      }
    });
    this.#wide.set(wide);
    this.#narrow.set(narrow);
    this.#outside.set(outside);
    this.#words.set(words);
  }

  dispose(): void {
    for (const part of [this.#wide, this.#narrow, this.#outside, this.#words]) part.dispose();
  }
}

function laid({ text, at, angleRad, heightMm, align }: Words, move: Matrix4): LaidWords {
  const em = heightMm / CAPITAL_SHARE;
  const [x, y] = [em * Math.cos(angleRad), em * Math.sin(angleRad)];
  const place = new Vector3(at.x, at.y, 0).applyMatrix4(move);
  return {
    text,
    at: place,
    right: new Vector3(at.x + x, at.y + y, 0).applyMatrix4(move).sub(place),
    up: new Vector3(at.x - y, at.y + x, 0).applyMatrix4(move).sub(place),
    align,
  };
}

/** The cut line as drawn, packed xy. */
function drawnOutline({ outline }: FoamPiece, drawingFromFlat: Matrix4): number[] {
  const points: number[] = [];
  const point = new Vector3();
  for (let i = 0; i < outline.length; i += 2) {
    point.set(outline[i], outline[i + 1], 0).applyMatrix4(drawingFromFlat);
    points.push(point.x, point.y);
  }
  return points;
}

const middleOf = ({ points }: Stroke): { x: number; y: number } => ({
  x: (points[0] + points[points.length - 2]) / 2,
  y: (points[1] + points[points.length - 1]) / 2,
});

/** Distance from the ring, mm; negative outside. */
function depthIn(ring: readonly number[], { x, y }: { readonly x: number; readonly y: number }): number {
  let isInside = false;
  let square = Infinity;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    const [ax, ay, bx, by] = [ring[i], ring[i + 1], ring[j], ring[j + 1]];
    if (ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay)) isInside = !isInside;
    const [dx, dy] = [bx - ax, by - ay];
    const share = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    square = Math.min(square, (x - ax - share * dx) ** 2 + (y - ay - share * dy) ** 2);
  }
  return isInside ? Math.sqrt(square) : -Math.sqrt(square);
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
    for (let at = 0; at < length;) {
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
