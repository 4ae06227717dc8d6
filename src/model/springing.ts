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
 * the foam as elastic, without creep or warming, and every border as held where the assembled shape has it, going on smoothly. Grooved
 * pieces bend in their grooves and are left out.
 */
export interface Springing {
  /** In the order of the pieces. */
  readonly pieces: readonly PieceSpring[];
  /** Joined seams of those pieces, the most pulled first. */
  readonly seams: readonly SeamPull[];
}

/** Energy stored in a piece, mJ (N mm), and how far it springs. */
export interface PieceSpring {
  readonly piece: PieceId;
  readonly bendingMj: number;
  readonly membraneMj: number;
  /** Greatest distance of a corner of the piece from its place when it is let go and laid back against it flat, mm. */
  readonly opensMm: number;
}

/** What a joint gives way to first: it opens at its face or its back, is pulled apart, slides along itself, or one side lifts off. */
export type PullWay = 'opensFace' | 'opensBack' | 'apart' | 'slides' | 'lifts';

/** What one seam carries where it carries most, averaged over a thickness of its length, from the side that pulls more. */
export interface SeamPull {
  readonly seam: SeamId;
  readonly letter: string;
  /** N per mm of seam, >= 0: the three forces together and six times the moment over the thickness, which is what it pulls at the skin. */
  readonly pullNPerMm: number;
  /** Which part of that pull is the greatest. */
  readonly way: PullWay;
  /** How far the edge stands off the prop where its piece is let go: the farthest corner of the side that stands off more, mm. */
  readonly opensMm: number;
  /** In the surface, square to the seam, N per mm: > 0 pulls the joint apart, < 0 presses it together (and is no pull). */
  readonly acrossNPerMm: number;
  /** Along the seam, N per mm, >= 0. */
  readonly shearNPerMm: number;
  /** Out of the surface, N per mm, >= 0. */
  readonly peelNPerMm: number;
  /** N mm per mm: > 0 wants to open the joint at the face of the foam, < 0 at the back. */
  readonly momentN: number;
  /** Where that is: a point on the seam's neutral line, model space, mm. */
  readonly at: readonly [number, number, number];
}
