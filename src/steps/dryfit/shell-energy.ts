import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import type { Elasticity } from '../../model/springing.ts';
import { borderLeanSteps } from './border-leans.ts';
import { HingeBending } from './hinge-bending.ts';
import { addMembrane } from './membrane-energy.ts';
import { shellSheetSteps, type ShellSheet } from './shell-sheet.ts';

/** A flat piece held in a bent shape. */
export interface HeldShell {
  readonly sheet: ShellSheet;
  readonly bendingMj: number;
  readonly membraneMj: number;
  /** Force of the sheet on what holds each vertex, N, x y z. */
  readonly forces: Float64Array;
  /** Per edge at the border the moment that holds the sheet bent there, N mm per mm of flat edge, > 0 for a convex bend; 0 inside. */
  readonly momentsN: Float64Array;
}

/**
 * Elastic energy of a piece that was cut flat and is held in `positions`, and what it takes to hold it. Its border is held to go on smoothly
 * ({@link borderLeanSteps}), so that the moment of the bend arrives there whole.
 * @param uv         the piece at rest, x y per vertex, mm.
 * @param positions  the piece held, x y z per vertex, mm.
 */
export const heldShell = (...held: Parameters<typeof heldShellSteps>): HeldShell => runAtOnce(heldShellSteps(...held));

/** The same in stretches. */
export function* heldShellSteps(
  triangles: Uint32Array,
  uv: Float64Array,
  positions: Float64Array,
  elasticity: Elasticity,
  thicknessMm: number,
): Stepwise<HeldShell> {
  const sheet = yield* shellSheetSteps(triangles, uv);
  yield;
  const bending = new HingeBending(sheet, elasticity, thicknessMm);
  const given = yield* borderLeanSteps(sheet, uv, positions);
  for (let e = 0; e < given.length; e += 1) {
    if (Number.isNaN(given[e])) continue;
    bending.leans[e] = given[e];
    bending.isFree[e] = 0;
  }
  yield* bending.moveSteps(positions);
  yield* bending.settleSteps();
  const bendingMj = bending.measure();
  yield;
  const gradient = new Float64Array(positions.length);
  bending.addGradient(gradient);
  yield;
  const membraneMj = addMembrane(sheet, elasticity, thicknessMm, positions, gradient);
  const momentsN = new Float64Array(given.length);
  for (let h = 0; h < triangles.length; h += 1) {
    const e = sheet.triangleEdges[h];
    if (sheet.edgeTriangles[2 * e + 1] >= 0) continue;
    momentsN[e] = bending.momentOf(Math.floor(h / 3), h % 3) / sheet.lengths[h];
  }
  return { sheet, bendingMj, membraneMj, forces: gradient.map((g) => -g), momentsN };
}
