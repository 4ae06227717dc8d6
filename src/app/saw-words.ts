import { formatNumber } from '../base/format-length.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { HandCut } from '../model/saw-settings.ts';

/** Ends that differ from the least and greatest bevel by less than this tell all of an edge, degrees. */
const TELLS_ALL_DEG = 1;

/** Lean as the traced side shows it, degrees: positive when the cut runs in under the piece. */
const leanOf = (piece: FoamPiece, bevelDeg: number): number => (piece.tracedSide === 'face' ? bevelDeg : -bevelDeg);

/** To a tenth of a degree, `45°`, `22.5°`. */
const angle = (deg: number): string => {
  const tenths = Math.round(10 * Math.abs(deg));
  return `${formatNumber(tenths / 10, tenths % 10 === 0 ? 0 : 1)}°`;
};

const under = (lean: number): string => (lean > 0 ? 'in under' : 'out under');

/** What the hand cuts is told in whole degrees. */
const wholeDeg = (lean: number): number => Math.sign(lean) * Math.round(Math.abs(lean));

/** `12° to 30° in under`, `5° out under to 8° in under`, with another word for `to` where order tells nothing. */
function range(from: number, to: number, word: 'to' | 'and'): string {
  if (from === 0) return `square ${word} ${angle(to)} ${under(to)}`;
  if (to === 0) return `${angle(from)} ${under(from)} ${word} square`;
  return from * to > 0
    ? `${angle(from)} ${word} ${angle(to)} ${under(from)}`
    : `${angle(from)} ${under(from)} ${word} ${angle(to)} ${under(to)}`;
}

/** Letters of edges, each once, and the open edges, which have none. */
function names(piece: FoamPiece, edges: readonly number[]): string {
  const letters = [...new Set(edges.map((i) => piece.edges[i].letter))];
  const open = edges.filter((i) => piece.edges[i].letter === '').length;
  return [
    ...letters.filter((letter) => letter !== ''),
    ...(open === 0 ? [] : [open === 1 ? 'open edge' : 'open edges']),
  ].join(', ');
}

function handText(piece: FoamPiece, cut: HandCut): string {
  const [from, to, least, most] = [cut.fromDeg, cut.toDeg, cut.leastDeg, cut.mostDeg].map((bevel) =>
    wholeDeg(leanOf(piece, bevel)),
  );
  const [flatter, steeper] = Math.abs(least) <= Math.abs(most) ? [least, most] : [most, least];
  const endsTellAll =
    Math.min(from, to) - Math.min(least, most) <= TELLS_ALL_DEG &&
    Math.max(least, most) - Math.max(from, to) <= TELLS_ALL_DEG &&
    from !== to;
  const leans =
    least === most
      ? `${angle(most)} ${under(most)}`
      : endsTellAll
        ? range(from, to, 'to')
        : `between ${range(flatter, steeper, 'and')}`;
  return `${names(piece, [cut.edge])} ${leans}${cut.why === 'steep' ? ', beyond blade and table' : ''}`;
}

/** Texts that tell how the saw is set for a piece. Part of the words of the window. */
export const SAW_WORDS = {
  label: 'Saw',
  /** One text for each setting, `45° in under: A, B`, then one for each edge cut by hand. Nothing where all edges are square. */
  settings: (piece: FoamPiece): readonly string[] => {
    const { settings, byHand } = piece.saw ?? { settings: [], byHand: [] };
    if (settings.every(({ bevelDeg }) => bevelDeg === 0) && byHand.length === 0) return [];
    return [
      ...settings.map(({ bevelDeg, edges }) => {
        const lean = leanOf(piece, bevelDeg);
        return `${bevelDeg === 0 ? 'square' : `${angle(lean)} ${under(lean)}`}: ${names(piece, edges)}`;
      }),
      ...byHand.map((cut) => `by hand: ${handText(piece, cut)}`),
    ];
  },
} as const;
