import { describe, expect, it } from 'vitest';
import { FOAM_RULES } from '../../../src/model/foam-settings.ts';
import { IS_LONG } from '../../support/long.ts';
import { runChain, type ChainOutput } from '../run-chain.ts';
import { objOf } from './polygon-solids.ts';

const DEPTH_MM = 60;

const tanOfHalf = (deg: number): number => Math.tan((deg * Math.PI) / 360);

/** A strip of flat panels one after the other, seen from the side: lengths of the panels, and how far it turns between them, convex > 0. */
interface Strip {
  readonly lengthsMm: readonly number[];
  readonly foldsDeg: readonly number[];
}

function stripObj({ lengthsMm, foldsDeg }: Strip): Uint8Array {
  let [x, z, heading] = [0, 0, 0];
  const line = [[x, z]];
  lengthsMm.forEach((length, i) => {
    [x, z] = [x + length * Math.cos(heading), z + length * Math.sin(heading)];
    line.push([x, z]);
    heading -= ((foldsDeg[i] ?? 0) * Math.PI) / 180;
  });
  const count = line.length;
  return objOf({
    corners: [0, DEPTH_MM].flatMap((y) => line.map(([px, pz]) => [px, y, pz] as const)),
    faces: lengthsMm.map((_, i) => [i, i + 1, count + i + 1, count + i]),
    seams: [],
  });
}

const runStrip = (strip: Strip, thicknessMm: number): Promise<ChainOutput> =>
  runChain({
    fileName: 'strip.obj',
    bytes: stripObj(strip),
    seams: [],
    scale: { by: 'unit', unit: 'mm' },
    thicknessMm,
    modelIs: 'face',
    neutralFraction: 0.5,
  });

/**
 * The panels of the face, shortened or lengthened to the hinges: a fold turns in the middle of what its groove leaves, `h / 2` under the face
 * where it is convex and `h / 2` over the back where it is concave, and a line `d` under the face lies `d tan(fold / 2)` inward in both panels.
 * Foam no thicker than a hinge is folded on its neutral surface. Bend allowance with the radius of a sharp fold, by the geometry of the
 * outside setback: tan(fold / 2) (radius + thickness), any sheet metal handbook.
 */
function flatLength({ lengthsMm, foldsDeg }: Strip, thicknessMm: number): number {
  const { hingeMm } = FOAM_RULES;
  const depthOf = (fold: number): number => {
    if (thicknessMm <= hingeMm) return thicknessMm / 2;
    return fold > 0 ? hingeMm / 2 : thicknessMm - hingeMm / 2;
  };
  const setback = foldsDeg.reduce((sum, fold) => sum + 2 * depthOf(fold) * tanOfHalf(fold), 0);
  return lengthsMm.reduce((sum, length) => sum + length, 0) - setback;
}

const THICKNESSES_MM = [2, 6, 10, 15];
const L_FOLDS_DEG = [30, 60, 90, 120, -30, -60, -90, -120];
/** Every day each thickness with every other fold. */
const CASES = THICKNESSES_MM.flatMap((t, i) =>
  L_FOLDS_DEG.filter((_, k) => IS_LONG || (i + k) % 2 === 0).map((fold) => [t, fold] as const),
);

describe('panels on hinges', () => {
  it.each(CASES)('%d mm foam folded by %d degrees is as long as its hinge is deep', async (thicknessMm, fold) => {
    const strip = { lengthsMm: [80, 110], foldsDeg: [fold] };
    const { report } = await runStrip(strip, thicknessMm);
    const [piece] = report.pieces;
    expect(piece.bendStyle).toBe('grooved');
    expect(piece.flatAreaMm2).toBeCloseTo(flatLength(strip, thicknessMm) * DEPTH_MM, 6);
    expect(piece.stretchPct.max).toBeLessThan(1e-9);
    expect(piece.squashPct.max).toBeLessThan(1e-9);
  });

  it.each([
    ['a step down', [90, -90]],
    ['a ridge in a valley', [-45, 90, -45]],
    ['a gutter', [-60, -60]],
    ['a bay window', [40, 40, -80, 30]],
  ] as const)('%s has every hinge at its own depth', async (_, foldsDeg) => {
    const strip = { lengthsMm: [80, 50, 70, 60, 90].slice(0, foldsDeg.length + 1), foldsDeg };
    for (const thicknessMm of THICKNESSES_MM) {
      const { report } = await runStrip(strip, thicknessMm);
      const [piece] = report.pieces;
      expect(piece.flatAreaMm2).toBeCloseTo(flatLength(strip, thicknessMm) * DEPTH_MM, 6);
      expect(piece.stretchPct.max).toBeLessThan(1e-9);
    }
  });
});
