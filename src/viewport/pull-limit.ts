import { FOAM_ELASTICITY } from '../model/springing.ts';

/**
 * What a joint carries where the foam beside it is bent so far that its skins are strained by so much: σ t with σ = E ε / (1 - ν²), the stress of the
 * skin of a plate that is bent one way (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 1959, chapter 1). So the limits of bending are limits of pull.
 * @param strainPct of the skins, per cent.
 * @returns N per mm of seam, as `SeamPull.pullNPerMm`.
 */
export function pullAtStrain(strainPct: number, thicknessMm: number): number {
  const { youngNPerMm2, poisson } = FOAM_ELASTICITY;
  return ((youngNPerMm2 * strainPct) / 100 / (1 - poisson * poisson)) * thicknessMm;
}
