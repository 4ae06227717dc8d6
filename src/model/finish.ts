import type { PieceId } from '../base/ids.ts';
import type { Clay } from './clay.ts';
import type { Colour } from './colours.ts';

/** How the prop is finished: what is modelled in clay, sealed, primed and painted, when, and what it takes. Areas mm², volumes ml. */
export interface FinishPlan {
  /** In the order in which they are done. */
  readonly steps: readonly FinishStep[];
  /** Colours that are painted with, in the order of the list. */
  readonly colours: readonly ColourSum[];
  /** What is modelled; null where nothing is. */
  readonly clay: ClaySum | null;
  /** Outside of all pieces, each as often as it is cut. */
  readonly outsideMm2: number;
  /** Tape along the borders of colours and round edges that stay bare, mm. */
  readonly tapeMm: number;
  /** Waiting of all steps one after the other, minutes. */
  readonly waitMin: number;
}

/**
 * clay: it is modelled and dries. bare: edges that will be glued are taped. seal, prime, paint, clear: a coat all over (`Coating.use`). colour: an
 * area in its colour.
 */
export const FINISH_WORK = ['clay', 'bare', 'seal', 'prime', 'paint', 'colour', 'clear'] as const;
export type FinishWork = (typeof FINISH_WORK)[number];

export interface FinishStep {
  /** 1, 2, 3 … */
  readonly number: number;
  readonly work: FinishWork;
  /** Number of the step of gluing it comes before; null: all is glued. */
  readonly beforeStep: number | null;
  /** Number of the step of gluing it comes after, which finishes the unit; left out for a single piece, and when all is glued. */
  readonly afterStep?: number;
  /** What it is done to, lowest number first. */
  readonly pieces: readonly PieceId[];
  /** Which unit they are, where they are one. */
  readonly unit?: number;
  /**
   * Why it is done before they are glued on. apart: they have one colour of their own, so that the seam is the border. shut-in: no brush gets
   * there later.
   */
  readonly why?: LooseReason;
  /** Name of the coating, the colour or the clay; empty for `bare`. */
  readonly name: string;
  /** Id of the colour. */
  readonly colour?: string;
  readonly areaMm2: number;
  /** 0 where nothing is coated. */
  readonly coats: number;
  readonly ml: number;
  /** Tape that is laid before, mm, and the names of the colours it is laid on. */
  readonly tapeMm: number;
  readonly tapeOn: readonly string[];
  /** From one coat to the next, and of all of it until the next step may begin, minutes. */
  readonly recoatMin: number;
  readonly waitMin: number;
  /** Ids of the cautions this step needs and no other. */
  readonly cautions: readonly string[];
}

export type LooseReason = 'apart' | 'shut-in';

export interface ColourSum {
  readonly colour: Colour;
  readonly isBase: boolean;
  readonly areaMm2: number;
  readonly ml: number;
  /** What of it lies on each piece, as often as that is cut; pieces without any are left out. */
  readonly pieces: readonly { readonly piece: PieceId; readonly areaMm2: number }[];
}

export interface ClaySum {
  readonly clay: Clay;
  readonly items: readonly ClayItem[];
  /** What is bought: it shrinks when it dries. */
  readonly wetMl: number;
  /** Until the last is dry, those of one step drying side by side, days. */
  readonly days: number;
}

/** A fillet along a seam, a shape over an area, or an area in clay over a core. */
export interface ClayItem {
  readonly what: 'fillet' | 'shape' | 'core';
  /** Letter of the seam, or name of the area. */
  readonly name: string;
  /** Pieces it lies on, or that end round it. */
  readonly pieces: readonly PieceId[];
  /** Along the seam where it is filled, mm; 0 for a shape. */
  readonly lengthMm: number;
  /** Of a shape, on the foam; the modelled face over a core; 0 for a fillet. */
  readonly areaMm2: number;
  /** Radius of the hollow, height over the foam, or least depth over the core, mm. */
  readonly sizeMm: number;
  /** Dry. */
  readonly ml: number;
  /** Where it is thickest, mm, and the layers that takes. */
  readonly deepestMm: number;
  readonly layers: number;
}

/** @throws Error on a broken plan: a step out of place, a figure that is none, areas that do not add up. */
export function checkFinishPlan({ steps, colours, clay, outsideMm2, tapeMm, waitMin }: FinishPlan): void {
  const figures = [outsideMm2, tapeMm, waitMin, clay?.wetMl ?? 0, clay?.days ?? 0];
  steps.forEach((step, i) => {
    const { number, pieces, areaMm2, ml, coats, work } = step;
    figures.push(areaMm2, ml, step.tapeMm, step.waitMin);
    if (number !== i + 1) throw new Error(`finish: step ${number} stands at place ${i + 1}`);
    if (pieces.length === 0) throw new Error(`finish: step ${number} is done to nothing`);
    if (coats > 0 !== !['clay', 'bare'].includes(work)) throw new Error(`finish: step ${number} has ${coats} coats`);
  });
  if (!figures.every((figure) => figure >= 0 && figure < Infinity)) throw new Error('finish: a figure is none');
  for (const { colour, areaMm2 } of colours) {
    const painted = steps.reduce((sum, step) => sum + (step.colour === colour.id ? step.areaMm2 : 0), 0);
    if (!(Math.abs(painted - areaMm2) <= 1e-6 * (1 + areaMm2)))
      throw new Error(`finish: ${colour.id} is not all put on`);
  }
}
