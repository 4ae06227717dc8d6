/**
 * Section of clay that fills a hollow fold to a round of radius r, mm²: what lies between the two faces and the arc that touches both. The faces
 * stand at `π - fold` to each other, so that it is `r² (tan(fold/2) - fold/2)`; of a right angle `r² (1 - π/4)`.
 *
 *      |
 *      |  .-
 *      | /        the corner below the arc
 *      |/______
 *
 * @param fold  turn between the outward normals without its sign, radians, 0 to under π.
 */
export const filletSectionMm2 = (fold: number, radiusMm: number): number =>
  radiusMm ** 2 * (Math.tan(fold / 2) - fold / 2);

/** From the corner to the arc, where a fillet is thickest, mm. */
export const filletDepthMm = (fold: number, radiusMm: number): number => radiusMm * (1 / Math.cos(fold / 2) - 1);

/** A fold that is sharper is no hollow a fillet of clay fills, but a slit, radians [J]: 170 degrees. */
export const SHARPEST_FILLET = (170 * Math.PI) / 180;

/** A flatter fold has no corner to fill, radians [J]: 5 degrees. */
export const FLATTEST_FILLET = (5 * Math.PI) / 180;

export interface FilletFigures {
  /** Along the seam as far as it is hollow. */
  readonly lengthMm: number;
  readonly volumeMm3: number;
  readonly deepestMm: number;
}

/**
 * A fillet along a seam: its section times the length of each stretch, exact where the seam runs straight. Where the fold is not hollow, or is a
 * slit, there is none.
 * @param folds      signed turn at each stretch, radians, convex > 0.
 * @param lengthsMm  of each on the face.
 */
export function filletAlong(folds: ArrayLike<number>, lengthsMm: ArrayLike<number>, radiusMm: number): FilletFigures {
  let [lengthMm, volumeMm3, deepestMm] = [0, 0, 0];
  for (let i = 0; i < folds.length; i += 1) {
    const fold = -folds[i];
    if (!(fold > FLATTEST_FILLET && fold < SHARPEST_FILLET)) continue;
    lengthMm += lengthsMm[i];
    volumeMm3 += filletSectionMm2(fold, radiusMm) * lengthsMm[i];
    deepestMm = Math.max(deepestMm, filletDepthMm(fold, radiusMm));
  }
  return { lengthMm, volumeMm3, deepestMm };
}

/**
 * Volume between a face and the same face moved outward, mm³: Simpson's rule over the area that each triangle has on the way, which is exact where
 * its corners move along straight lines and its plane moves evenly. Over the cap of a sphere of radius R that is `A h (1 + h/R + h²/3R²)`.
 * @param corners  three corners of each triangle, x y z, mm.
 * @param moves    for each corner where a move of 1 mm takes it, so that planes move 1 mm.
 */
export function liftedVolumeMm3(corners: Float64Array, moves: Float64Array, heightMm: number): number {
  const areaAt = (mm: number): number => {
    let sum = 0;
    for (let t = 0; t < corners.length; t += 9) {
      const at = (k: number): number => corners[t + k] + mm * moves[t + k];
      const [ux, uy, uz] = [at(3) - at(0), at(4) - at(1), at(5) - at(2)];
      const [vx, vy, vz] = [at(6) - at(0), at(7) - at(1), at(8) - at(2)];
      sum += Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2;
    }
    return sum;
  };
  return (heightMm / 6) * (areaAt(0) + 4 * areaAt(heightMm / 2) + areaAt(heightMm));
}
