import type { PieceId, SeamId } from '../base/ids.ts';

/** What of a foam decides how hard it springs back: isotropic and linear elastic. */
export interface Elasticity {
  /** Young's modulus, N/mm². */
  readonly youngNPerMm2: number;
  /** 0 to 0.5. */
  readonly poisson: number;
}

/**
 * A common EVA sheet of about 100 kg/m³ pulled a little [J]: makes differ by half either way, and warm foam is far softer. All pulls are in
 * proportion to the modulus, so that their order does not depend on it.
 */
export const FOAM_ELASTICITY: Elasticity = { youngNPerMm2: 1.5, poisson: 0.2 };

/**
 * What joints carry when flat pieces are bent cold and held in the assembled shape: a guide to which to warm, form or tape first. It takes
 * the foam as elastic, without creep, and as held all along its borders.
 */
export interface Springing {
  /** mJ (N mm) stored in each piece, in the order of the pieces. */
  readonly pieces: readonly PieceSpring[];
  /** The most pulled first. */
  readonly seams: readonly SeamPull[];
}

export interface PieceSpring {
  readonly piece: PieceId;
  readonly bendingMj: number;
  readonly membraneMj: number;
}

/** N per mm of seam; the greatest of its sides, each averaged over a thickness of seam. All >= 0 but `moment`, which may be either way. */
export interface SeamPull {
  readonly seam: SeamId;
  readonly letter: string;
  /** {@link acrossNPerMm} and the rest together with what the moment pulls at the skin: the figure seams are sorted by. */
  readonly pullNPerMm: number;
  /** In the surface, square to the seam: pulls the joint apart. */
  readonly acrossNPerMm: number;
  /** Along the seam. */
  readonly shearNPerMm: number;
  /** Out of the surface. */
  readonly peelNPerMm: number;
  /** N mm per mm: > 0 wants to open the joint at the back of the foam, < 0 at the face. */
  readonly momentN: number;
  /** Where the pull is greatest: a point on the seam's neutral line, model space, mm. */
  readonly at: readonly [number, number, number];
}
