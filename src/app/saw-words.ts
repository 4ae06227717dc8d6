import { edgeNames, handCutText, leanSeenFrom, settingText } from '../base/lean-words.ts';
import type { FoamPiece } from '../model/foam-piece.ts';

const names = (piece: FoamPiece, edges: readonly number[]): string =>
  edgeNames(edges.map((i) => piece.edges[i].letter));

/** Texts that tell how the saw is set for a piece. Part of the words of the window. */
export const SAW_WORDS = {
  label: 'Saw',
  /** One text for each setting, `45° in under: A, B`, then one for each edge cut by hand. Nothing where all edges are square. */
  settings: (piece: FoamPiece): readonly string[] => {
    const { settings, byHand } = piece.saw ?? { settings: [], byHand: [] };
    if (settings.every(({ bevelDeg }) => bevelDeg === 0) && byHand.length === 0) return [];
    return [
      ...settings.map(
        ({ bevelDeg, edges }) => `${settingText(leanSeenFrom(piece.tracedSide, bevelDeg))}: ${names(piece, edges)}`,
      ),
      ...byHand.map((cut) => `by hand: ${handCutText(piece.edges[cut.edge].letter, piece.tracedSide, cut)}`),
    ];
  },
} as const;
