import type { FoamId, PieceId } from '../base/ids.ts';
import type { Coating } from './coatings.ts';
import type { Glue } from './glues.ts';

/** What a job takes and comes to. Areas mm², masses g, volumes ml. */
export interface Quantities {
  readonly foams: readonly FoamQuantity[];
  /** What prices are in; left out where the maker named none. */
  readonly currency?: string;
  /** Of all sheets and of the glue that have a price; left out where none has. */
  readonly cost?: number;
  readonly glue: GlueQuantity;
  readonly coatings: readonly CoatingQuantity[];
  /** Outside of the prop, and all round its other parts. */
  readonly outsideMm2: number;
  /** Of this, what parts have that no sculpt was parted for: all round their forms, faces that another part covers too. Left out where there are none. */
  readonly partsMm2?: number;
  /** Of the bare prop: foam alone. */
  readonly massG: number;
  /** Where the prop has its zero, mm; null without foam that has a place. */
  readonly centreOfMass: readonly [number, number, number] | null;
  /** Foam that the middle and the size do not count, for its place is not known: further copies of parts, and parts without a form, g. Left out where there is none. */
  readonly elsewhereG?: number;
  /** Along x, y and z of the sculpt, mm. */
  readonly sizeMm: readonly [number, number, number];
  /** Between the two places of it that lie farthest apart, mm. */
  readonly longestMm: number;
}

export interface FoamQuantity {
  readonly foam: FoamId;
  readonly name: string;
  readonly thicknessMm: number;
  /** Sheets and offcuts that anything is cut from. */
  readonly sheets: number;
  /** Of these, how many are bought; the others are in hand. */
  readonly bought: number;
  /** Of one sheet that is bought. */
  readonly sheetMm2: number;
  /** What is cut from them. */
  readonly cutMm2: number;
  readonly massG: number;
  /** Of the sheets that are bought; left out where no price was named. */
  readonly cost?: number;
  /** Pieces too large for a sheet: not counted among the sheets. */
  readonly tooLarge: readonly PieceId[];
}

export interface GlueQuantity {
  readonly glue: Glue;
  /** Of all seams that are glued. */
  readonly seamMm: number;
  /** Both faces of all seams. */
  readonly edgesMm2: number;
  /** Both faces of what is laid on another sheet. */
  readonly laidMm2: number;
  readonly ml: number;
  readonly cost?: number;
}

export interface CoatingQuantity {
  readonly coating: Coating;
  /** Of all its coats. */
  readonly ml: number;
  /** From the first coat until the last is dry enough for the next, minutes. */
  readonly dryMin: number;
}

/** @throws Error where a figure is none. */
export function checkQuantities({ foams, glue, coatings, massG, longestMm }: Quantities): void {
  const figures = [
    massG,
    longestMm,
    glue.seamMm,
    glue.edgesMm2,
    glue.laidMm2,
    glue.ml,
    ...coatings.map(({ ml }) => ml),
  ];
  for (const { sheets, cutMm2, massG: own } of foams) figures.push(sheets, cutMm2, own);
  if (!figures.every((figure) => figure >= 0 && figure < Infinity)) throw new Error('quantities: a figure is none');
}
