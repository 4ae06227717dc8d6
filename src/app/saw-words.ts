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

/** `12° to 30° in under`, `5° out under to 8° in under`. */
const range = (from: number, to: number): string => {
  if (angle(from) === angle(0)) return `square to ${angle(to)} ${under(to)}`;
  if (angle(to) === angle(0)) return `${angle(from)} ${under(from)} to square`;
  return from * to > 0
    ? `${angle(from)} to ${angle(to)} ${under(from)}`
    : `${angle(from)} ${under(from)} to ${angle(to)} ${under(to)}`;
};

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
  const [from, to, least, most] = [cut.fromDeg, cut.toDeg, cut.leastDeg, cut.mostDeg].map((x) => leanOf(piece, x));
  const [low, high] = [Math.min(least, most), Math.max(least, most)];
  const endsTellAll =
    Math.min(from, to) - low < TELLS_ALL_DEG && high - Math.max(from, to) < TELLS_ALL_DEG && angle(from) !== angle(to);
  const leans =
    angle(low) === angle(high) && low * high > 0
      ? `${angle(high)} ${under(high)}`
      : endsTellAll
        ? range(from, to)
        : `between ${range(low, high).replace(' to ', ' and ')}`;
  return `${names(piece, [cut.edge])} ${leans}${cut.why === 'steep' ? ', beyond blade and table' : ''}`;
}

/** Texts that tell how the saw is set for a piece. Part of the words of the window. */
export const SAW_WORDS = {
  label: 'Saw',
  /** One text for each setting, `45° in under: A, B`, then the edges cut by hand. Nothing where all edges are square. */
  settings: (piece: FoamPiece): readonly string[] => {
    const { settings, byHand } = piece.saw ?? { settings: [], byHand: [] };
    if (settings.every(({ bevelDeg }) => bevelDeg === 0) && byHand.length === 0) return [];
    return [
      ...settings.map(({ bevelDeg, edges }) => {
        const lean = leanOf(piece, bevelDeg);
        return `${bevelDeg === 0 ? 'square' : `${angle(lean)} ${under(lean)}`}: ${names(piece, edges)}`;
      }),
      ...(byHand.length === 0 ? [] : [`by hand: ${byHand.map((cut) => handText(piece, cut)).join('; ')}`]),
    ];
  },
} as const;
