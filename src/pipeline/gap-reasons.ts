import { deg, dot3 } from '../geom/vec.ts';
import { triangleNormal } from '../mesh/measure.ts';
import type { SeamFit } from '../model/dry-fit.ts';
import type { PartBends } from '../steps/foam/part-bends.ts';
import { triangleBeside } from '../steps/foam/piece-surface.ts';
import type { CutSculpt } from './outcome.ts';

/** Why a seam does not close, where the sculpt is at fault and no edge could be cut better. */
export type GapReason =
  /** The piece is smaller than the bevels beside it: so much of the seam has no edge left on one skin, mm. */
  | { readonly why: 'gone'; readonly lengthMm: number }
  /** A facet beside the seam turns on its way from the sculpt to the surface the foam keeps its length on, degrees. */
  | { readonly why: 'turned'; readonly turnDeg: number };

/** A reason must make up this share of what a seam lacks. */
const ENOUGH = 0.5;

/** @returns null where the seam's own facts do not tell. */
export function gapReason(fit: SeamFit, cut: CutSculpt, bends: PartBends): GapReason | null {
  const lackMm = Math.max(fit.worstGapMm, fit.worstOverlapMm);
  if (fit.goneMm > 0) return { why: 'gone', lengthMm: fit.goneMm };
  // What lies farther off than the whole seam is long is the cut of another edge.
  const lengthMm = fit.samples.stationMm.at(-1) ?? 0;
  if (lackMm > lengthMm) return { why: 'gone', lengthMm };
  const chain = cut.chains.find(({ id }) => id === fit.seam);
  if (chain === undefined) return null;
  const { positions, triangles } = cut.mesh;
  let [turnRad, opensMm] = [0, 0];
  chain.sides.forEach((side, which) => {
    const [{ surface }, shell, patch] = [bends.patches[side.patch], cut.shells[side.patch], cut.patches[side.patch]];
    for (let i = 0; i + 1 < side.localVertices.length; i += 1) {
      const local = triangleBeside(surface, side, which === 0 ? 0 : 1, i);
      if (local < 0) continue;
      const t = patch.meshTriangles[local];
      const [before, after] = [positions, shell.neutralPositions].map((points) => triangleNormal(points, triangles, t));
      const turn = Math.acos(Math.max(-1, Math.min(1, dot3(before, after))));
      if (turn > turnRad)
        [turnRad, opensMm] = [
          turn,
          turn * Math.max(1 - shell.neutralFraction, shell.neutralFraction) * shell.thicknessMm,
        ];
    }
  });
  return opensMm > ENOUGH * lackMm ? { why: 'turned', turnDeg: deg(turnRad) } : null;
}
