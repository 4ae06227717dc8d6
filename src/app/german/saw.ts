import { sawTexts, type LeanWords } from '../../base/lean-words.ts';
import type { Translation } from '../language/spoken.ts';
import type { SAW_WORDS } from '../saw-words.ts';

export const LEAN: LeanWords = {
  square: 'gerade',
  under: 'nach innen darunter',
  outUnder: 'nach außen darunter',
  to: 'bis',
  between: 'zwischen',
  and: 'und',
  beyond: 'weiter, als Messer und Tisch reichen',
  byHand: 'von Hand',
  openEdge: 'offene Kante',
  openEdges: 'offene Kanten',
};

export const SAW: Translation<typeof SAW_WORDS> = { label: 'Säge', settings: (piece) => sawTexts(piece, LEAN) };
