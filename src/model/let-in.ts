import type { LineRole } from './template.ts';

/**
 * A line that another part leaves on a flat piece: where it goes through or sits, where something is let in, or where the prop parts to travel. In the
 * frame of the piece, as its neutral surface lies flat, mm.
 */
export interface LetIn {
  /** The part, insert or joint it is there for: `Handle`. */
  readonly of: string;
  /** hole: cut right through. seat: something is laid there. pocket: let in part of the way. joint: the piece is parted there. */
  readonly what: 'hole' | 'seat' | 'pocket' | 'joint';
  /** The surface of the foam the line lies on; of a hole both, so that its wall leans as it should. */
  readonly side: 'face' | 'back';
  /** x y per point. */
  readonly points: Float64Array;
  readonly closed: boolean;
  /** One sentence for the paper of the piece; the same for all lines of one thing. */
  readonly text: string;
}

/**
 * The line to draw for it on a piece that is traced on a side: of a hole the edge on that side is cut along, the other stands beside it as the lean of
 * its wall.
 */
export function letInRole({ what, side }: Pick<LetIn, 'what' | 'side'>, tracedSide: LetIn['side']): LineRole {
  const isTraced = side === tracedSide;
  if (what === 'seat') return 'placement';
  if (what === 'pocket') return isTraced ? 'groove' : 'groove-behind';
  return isTraced ? 'cut' : 'bevel';
}
