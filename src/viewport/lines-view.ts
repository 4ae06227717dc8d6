import { Group } from 'three';
import type { BendField } from '../model/bend-field.ts';
import type { RoomField } from '../model/room-field.ts';
import type { Colouring } from './bench-contract.ts';
import type { BenchColours } from './bench-theme.ts';
import type { SolidDisplay } from './display.ts';
import { LineBatch } from './line-batch.ts';
import { MeshEdges } from './mesh-edges.ts';
import { bendStrokes, drawStrokes, roomSigns, stretchStrokes, type StretchStrokes } from './stretch-strokes.ts';
import { drawAlong } from './surface-lines.ts';

/** What decides which lines are there. */
export interface LinesState {
  readonly isWhole: boolean;
  /** Pieces lie flat: their printed lines say where to cut. */
  readonly isFlat: boolean;
  readonly isEdgeTool: boolean;
  readonly colouring: Colouring;
  /** Ends of the scale in force, per cent. */
  readonly limitPct: number;
  readonly bends: BendField | null;
  readonly room: RoomField | null;
}

/** All lines on sculpt and foam: seams, edges of the prop, ridges, what can be parted, strokes of stretch. */
export class LinesView {
  readonly object = new Group();
  readonly #seams = new LineBatch({ widthPx: 2 });
  readonly #open = new LineBatch({ widthPx: 1.4 });
  readonly #ridges = new LineBatch({ widthPx: 1, opacity: 0.5 });
  readonly #formSeams = new LineBatch({ widthPx: 1.6 });
  /** Under dark strokes a light edge: at both ends of the scale the ground is dark too. */
  readonly #strokeEdges = new LineBatch({ widthPx: 2, opacity: 0.7 });
  readonly #formStrokeEdges = new LineBatch({ widthPx: 2, opacity: 0.7 });
  readonly #strokes = new LineBatch({ widthPx: 1, opacity: 0.8, renderOrder: 1 });
  readonly #formStrokes = new LineBatch({ widthPx: 1, opacity: 0.8, renderOrder: 1 });
  readonly #edges = new MeshEdges();
  #stroked: { readonly of: readonly unknown[]; readonly strokes: StretchStrokes } | null = null;

  constructor() {
    this.object.add(...this.#batches().map(({ object }) => object), this.#edges.object);
  }

  /** Draws the lines where things are now. @param corners packed xyz per corner of the sculpt's triangles: on the foam where there is any. */
  set(solid: SolidDisplay | null, corners: Float32Array, state: LinesState): void {
    if (solid === null) {
      for (const batch of this.#batches()) batch.set([]);
      this.#edges.set(null, null, false);
      return;
    }
    const { lines, body, form, base } = solid;
    const isFormSeen = body !== null && !state.isWhole;
    drawAlong(this.#seams, state.isFlat ? NONE : lines.seams, corners);
    drawAlong(this.#open, state.isFlat ? NONE : lines.open, corners);
    drawAlong(this.#ridges, lines.ridges, corners);
    drawAlong(this.#formSeams, isFormSeen ? lines.seams : NONE, form.positions);
    const strokes = this.#strokesOf(solid, state);
    for (const batch of [this.#strokeEdges, this.#strokes]) drawStrokes(batch, strokes, corners);
    for (const batch of [this.#formStrokeEdges, this.#formStrokes])
      drawStrokes(batch, isFormSeen ? strokes : NO_STROKES, form.positions);
    this.#edges.set(base, corners, state.isEdgeTool);
  }

  /** Lines are light on charcoal and dark on the pale sculpt and on the pale scale of stretch. */
  paint({ seam, line }: BenchColours, isDarkGround: boolean): void {
    const ink = isDarkGround ? seam : line;
    for (const part of [this.#seams, this.#open, this.#ridges, this.#edges]) part.colour = ink;
    for (const part of [this.#formSeams, this.#strokes, this.#formStrokes]) part.colour = line;
    for (const part of [this.#strokeEdges, this.#formStrokeEdges]) part.colour = seam;
  }

  /** Lines have a width on foam as a pen has, as long as that is neither lost nor clumsy on the screen. */
  scale(pxPerMm: number): void {
    this.#seams.widthPx = penWidth(1.6, pxPerMm, 1.1, 2.4);
    this.#open.widthPx = penWidth(1, pxPerMm, 0.9, 1.5);
    this.#formSeams.widthPx = penWidth(1.2, pxPerMm, 0.9, 1.8);
    this.#strokes.widthPx = this.#formStrokes.widthPx = penWidth(0.7, pxPerMm, 0.6, 1.4);
    this.#strokeEdges.widthPx = this.#formStrokeEdges.widthPx = penWidth(1.8, pxPerMm, 1.8, 3.2);
  }

  dispose(): void {
    for (const batch of this.#batches()) batch.dispose();
    this.#edges.dispose();
  }

  #batches(): LineBatch[] {
    return [
      this.#seams,
      this.#open,
      this.#ridges,
      this.#formSeams,
      this.#strokeEdges,
      this.#formStrokeEdges,
      this.#strokes,
      this.#formStrokes,
    ];
  }

  /** Kept until something they were made of is another. */
  #strokesOf(solid: SolidDisplay, { colouring, limitPct, bends, room }: LinesState): StretchStrokes {
    const of = [solid, limitPct, colouring, bends, room];
    if (this.#stroked === null || of.some((part, i) => part !== this.#stroked?.of[i])) {
      const patches = solid.pieces?.patches ?? [];
      this.#stroked = { of, strokes: strokes() };
      function strokes(): StretchStrokes {
        if (colouring === 'stretch') return stretchStrokes(patches, limitPct);
        if (colouring === 'bend' && bends !== null) return bendStrokes(patches, bends, limitPct);
        return colouring === 'room' && room !== null ? roomSigns(patches, room) : NO_STROKES;
      }
    }
    return this.#stroked.strokes;
  }
}

/** A pen of `mm` on foam in CSS px, held between two widths. */
export const penWidth = (mm: number, pxPerMm: number, least: number, most: number): number =>
  Math.max(least, Math.min(most, mm * pxPerMm));

const NONE = new Uint32Array(0);
const NO_STROKES: StretchStrokes = { triangles: NONE, weights: new Float32Array(0) };
