import { formatNumber } from './format-length.ts';

/**
 * How a leaning cut is told to the one who makes it. A lean is in degrees from square as the printed side shows it: positive when the cut runs
 * in under the piece.
 */

/** Edges that lean less than this are cut square and not mentioned, degrees: nobody sets a blade to it. */
export const SQUARE_DEG = 0.5;

/** The words of these texts, to be said in another language. */
export interface LeanWords {
  readonly square: string;
  /** Behind a lean that runs in under the piece, and one that runs out under it. */
  readonly under: string;
  readonly outUnder: string;
  readonly to: string;
  readonly between: string;
  readonly and: string;
  readonly beyond: string;
  readonly byHand: string;
  readonly openEdge: string;
  readonly openEdges: string;
}

const ENGLISH: LeanWords = {
  square: 'square',
  under: 'in under',
  outUnder: 'out under',
  to: 'to',
  between: 'between',
  and: 'and',
  beyond: 'beyond blade and table',
  byHand: 'by hand',
  openEdge: 'open edge',
  openEdges: 'open edges',
};

/** A bevel, positive where the back edge stands inside the face edge, as a lean seen from the side that is traced. */
export const leanSeenFrom = (tracedSide: 'face' | 'back', bevelDeg: number): number =>
  tracedSide === 'face' ? bevelDeg : -bevelDeg;

/** To a tenth of a degree, `45°`, `22.5°`. */
export function formatAngle(angleDeg: number): string {
  const tenths = Math.round(10 * Math.abs(angleDeg));
  return `${formatNumber(tenths / 10, tenths % 10 === 0 ? 0 : 1)}°`;
}

/** One setting of the saw: `22.5° in under`, `square`. */
export const settingText = (lean: number, words = ENGLISH): string =>
  lean === 0 ? words.square : `${formatAngle(lean)} ${lean > 0 ? words.under : words.outUnder}`;

/** Bevels of an edge that no single setting cuts, degrees: at its beginning and its end, and the least and greatest on the way. */
export interface UnsteadyBevel {
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly leastDeg: number;
  readonly mostDeg: number;
  /** changes: no setting serves all of it. steep: it leans more than blade or table do. */
  readonly why: 'changes' | 'steep';
}

/** Ends that differ from the least and greatest lean by less than this tell all of an edge, degrees. */
const TELLS_ALL_DEG = 1;

/** What the hand cuts, in whole degrees: `A 12° to 30° in under`, `B between 5° and 40° in under`, `C 60° in under, beyond blade and table`. */
export function handCutText(letter: string, tracedSide: 'face' | 'back', cut: UnsteadyBevel, words = ENGLISH): string {
  const leans = [cut.fromDeg, cut.toDeg, cut.leastDeg, cut.mostDeg].map((bevel) =>
    wholeDeg(leanSeenFrom(tracedSide, bevel)),
  );
  return `${edgeNames([letter], words)} ${leansText(leans, words)}${cut.why === 'steep' ? `, ${words.beyond}` : ''}`;
}

/** How an edge leans whose lean changes. @param leans at the beginning and the end, and the two that all others lie between, whole degrees. */
export function leansText([from, to, a, b]: readonly number[], words = ENGLISH): string {
  if (a === b) return settingText(b, words);
  const [flatter, steeper] = Math.abs(a) <= Math.abs(b) ? [a, b] : [b, a];
  const endsTellAll =
    Math.min(from, to) - Math.min(a, b) <= TELLS_ALL_DEG &&
    Math.max(a, b) - Math.max(from, to) <= TELLS_ALL_DEG &&
    from !== to;
  return endsTellAll
    ? range(from, to, words.to, words)
    : `${words.between} ${range(flatter, steeper, words.and, words)}`;
}

export const wholeDeg = (lean: number): number => Math.sign(lean) * Math.round(Math.abs(lean));

function range(from: number, to: number, word: string, words: LeanWords): string {
  const first = from * to > 0 ? formatAngle(from) : settingText(from, words);
  return `${first} ${word} ${settingText(to, words)}`;
}

/** Letters of edges, each once, and the open edges, which have none: `B, A, open edges`. */
export function edgeNames(letters: readonly string[], words = ENGLISH): string {
  const named = [...new Set(letters)].filter((letter) => letter !== '');
  const open = letters.filter((letter) => letter === '').length;
  return [...named, ...(open === 0 ? [] : [open === 1 ? words.openEdge : words.openEdges])].join(', ');
}

/** A piece as far as its saw settings name it. */
export interface SawnPiece {
  readonly tracedSide: 'face' | 'back';
  readonly edges: readonly { readonly letter: string }[];
  readonly saw?: {
    readonly settings: readonly { readonly bevelDeg: number; readonly edges: readonly number[] }[];
    readonly byHand: readonly (UnsteadyBevel & { readonly edge: number })[];
  };
}

/**
 * How the saw is set for a piece: one text for each setting, `45° in under: A, B`, then one for each edge cut by hand. Nothing where all edges are
 * square.
 */
export function sawTexts({ tracedSide, edges, saw }: SawnPiece, words = ENGLISH): readonly string[] {
  const { settings, byHand } = saw ?? { settings: [], byHand: [] };
  if (settings.every(({ bevelDeg }) => bevelDeg === 0) && byHand.length === 0) return [];
  const names = (served: readonly number[]): string =>
    edgeNames(
      served.map((i) => edges[i].letter),
      words,
    );
  return [
    ...settings.map(
      ({ bevelDeg, edges: served }) => `${settingText(leanSeenFrom(tracedSide, bevelDeg), words)}: ${names(served)}`,
    ),
    ...byHand.map((cut) => `${words.byHand}: ${handCutText(edges[cut.edge].letter, tracedSide, cut, words)}`),
  ];
}
