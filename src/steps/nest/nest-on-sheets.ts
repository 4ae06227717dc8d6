import { seededRandom } from '../../base/random.ts';
import type { Ring } from '../../geom/ring.ts';
import { fitsRoom, isInRoom, Layout } from './layout.ts';
import { latticeRing, stepsPerUnit } from './lattice.ts';
import { simplifiedOutward } from './outward.ts';
import { PoseTable } from './pose-table.ts';
import { shapeOf, type Stance } from './shape.ts';
import { SheetSearch } from './sheet-search.ts';

/** A piece to be cut so many times. */
export interface NestPiece {
  /** Round all that is cut, counter-clockwise, mm. */
  readonly outline: Ring;
  readonly quantity: number;
  /** How it may lie, at least one. */
  readonly stances: readonly Stance[];
}

/** A sheet of foam, mm. */
export interface NestSheet {
  /** The direction in which the last sheet is filled. */
  readonly lengthMm: number;
  readonly breadthMm: number;
  /** Kept free along its edges. */
  readonly borderMm: number;
  /** Kept free between two pieces. */
  readonly gapMm: number;
}

/** Where a copy lies: in its stance, then moved, mm from the lower left of its sheet. */
export interface NestPlace {
  readonly piece: number;
  readonly copy: number;
  readonly sheet: number;
  readonly stance: Stance;
  readonly x: number;
  readonly y: number;
}

export interface Nested {
  readonly sheets: number;
  /** How far the last sheet is used, its border included, mm. */
  readonly lastMm: number;
  readonly places: readonly NestPlace[];
  /** Numbers of pieces that fit no empty sheet. */
  readonly tooLarge: readonly number[];
}

/** Outlines are followed so closely, mm: a knife is no truer. */
const TOLERANCE_MM = 0.25;

/**
 * Lays pieces on as few sheets as it finds, the last filled as short as it finds. The same pieces, moves and seed give the same layout.
 * @param moves how long it looks; 0 gives the first layout.
 */
export function nestOnSheets(pieces: readonly NestPiece[], sheet: NestSheet, moves: number, seed: number): Nested {
  const perMm = stepsPerUnit(2 * Math.max(sheet.lengthMm, sheet.breadthMm));
  // Outlines carry half the gap, so their room reaches so much into the border.
  const grow = sheet.gapMm / 2;
  const free = (size: number): number => Math.floor((size - 2 * sheet.borderMm + 2 * grow) * perMm);
  const [width, height] = [free(sheet.lengthMm), free(sheet.breadthMm)];
  const all = pieces.map(({ outline, stances }) =>
    shapeOf([latticeRing(simplifiedOutward(outline, grow, TOLERANCE_MM), perMm, false)], stances),
  );
  const room = Float64Array.of(0, 0, width, height);
  const fits = all.map((shape) => {
    const alone = new PoseTable([shape]);
    return shape.stances.some((_, pose) => fitsRoom(alone, pose, room, 0));
  });
  const fitting = pieces.map((_, i) => i).filter((i) => fits[i] && pieces[i].quantity > 0);
  const tooLarge = pieces.map((_, i) => i).filter((i) => !fits[i]);
  if (fitting.length === 0) return { sheets: 0, lastMm: 0, places: [], tooLarge };
  const table = new PoseTable(fitting.map((i) => all[i]));
  const kinds = fitting.flatMap((i, kind) => new Array<number>(pieces[i].quantity).fill(kind));
  const start = new Layout(kinds.length, kinds.length);
  for (const [i, kind] of kinds.entries()) start.pose[i] = table.firstOf[kind];
  const search = new SheetSearch(table, start, width, height, seededRandom(seed));
  const steps = search.moves();
  for (let move = 0; move < moves; move += 1) steps.next();
  const { best, rooms, sheets } = search;
  const edge = sheet.borderMm - grow;
  const places = kinds.map((kind, i): NestPlace => {
    const on = Array.from({ length: sheets }, (_, r) => r).find((r) => isInRoom(table, best, i, rooms, r)) ?? 0;
    return {
      piece: fitting[kind],
      copy: i - kinds.indexOf(kind),
      sheet: on,
      stance: all[fitting[kind]].stances[best.pose[i] - table.firstOf[kind]],
      x: (best.x[i] - rooms[4 * on]) / perMm + edge,
      y: best.y[i] / perMm + edge,
    };
  });
  return { sheets, lastMm: search.length / perMm - 2 * grow + 2 * sheet.borderMm, places, tooLarge };
}
