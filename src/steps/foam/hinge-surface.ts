import { length3, pointAt3, sub3 } from '../../geom/vec.ts';
import { nextHalfedge } from '../../mesh/topology.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import type { PatchBend } from './part-bends.ts';

/** Whether a piece is folded on hinges: one with grooves, in foam thicker than what they leave of it. */
export const isGrooved = ({ choice }: PatchBend, { thicknessMm }: ShellLayer, hingeMm: number): boolean =>
  choice.style === 'grooved' && thicknessMm > hingeMm;

/** Whether a piece turns on what grooves or kerfs leave of it. */
export const isHinged = ({ choice }: PatchBend, { thicknessMm }: ShellLayer, hingeMm: number): boolean =>
  choice.style !== 'rolled' && thicknessMm > hingeMm;

/**
 * Depth under the face at which a fold turns, mm: in the middle of what its groove leaves. A convex fold is grooved from the back and turns
 * under the face, a concave one is grooved from the face.
 * @param fold  signed turn, convex > 0.
 */
export const hingeDepth = (fold: number, thicknessMm: number, hingeMm: number): number =>
  fold > 0 ? hingeMm / 2 : thicknessMm - hingeMm / 2;

/** Tells of a half-edge of the patch whether it is a fold between two panels. */
export function panelFolds({ surface: { across }, panels: { panelOf } }: PatchBend): (h: number) => boolean {
  return (h) => across[h] >= 0 && panelOf[across[h]] !== panelOf[Math.floor(h / 3)];
}

/** The surfaces of a sheet as pieces see them that turn on hinges under its face, or over its back. */
const SURFACES = new WeakMap<ShellLayer, Map<number, ShellLayer>>();

/**
 * The sheet as a piece is cut from it: what the piece keeps its length on is the sheet's neutral surface where it is rolled, and the surface
 * its hinges lie on where it is grooved (foam model 2, and 4 for `k` there), the one that more of its folds turn on, by length and turn. Kerfs are
 * all cut from the inside of the one bend there is.
 * Both surfaces are parallel to the face, so seams between pieces of either kind run over the same places of the sculpt.
 * @returns the same object for the same sheet and surface.
 */
export function hingeSurface(bend: PatchBend, shell: ShellLayer, hingeMm: number): ShellLayer {
  if (!isHinged(bend, shell, hingeMm)) return shell;
  const turn = bend.kerf === undefined ? meanTurn(bend, shell) : bend.kerf.isConvex ? 1 : -1;
  if (turn === 0) return shell;
  const { thicknessMm: t, facePositions, backPositions } = shell;
  const k = 1 - hingeDepth(turn, t, hingeMm) / t;
  const known = SURFACES.get(shell) ?? new Map<number, ShellLayer>();
  SURFACES.set(shell, known);
  const before = known.get(k);
  if (before !== undefined) return before;
  // Surfaces of a sheet move evenly with their depth.
  const neutralPositions = backPositions.map((x, i) => x + k * (facePositions[i] - x));
  const surface = { ...shell, neutralFraction: k, neutralPositions };
  known.set(k, surface);
  return surface;
}

/** Folds between panels, each by its length and how far it pushes its panels apart: > 0 where convex ones weigh more. */
function meanTurn(bend: PatchBend, { facePositions }: ShellLayer): number {
  const { patch, across, foldRad } = bend.surface;
  const isFold = panelFolds(bend);
  let sum = 0;
  for (let h = 0; h < across.length; h += 1) {
    if (!isFold(h)) continue;
    const [from, to] = [h, nextHalfedge(h)].map((c) => pointAt3(facePositions, patch.meshVertices[patch.triangles[c]]));
    sum += length3(sub3(to, from)) * Math.tan(foldRad[h] / 2);
  }
  return sum;
}
