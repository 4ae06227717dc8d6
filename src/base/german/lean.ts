import type { LeanWords } from '../lean-words.ts';

/** How a leaning cut is told in German. */
export const LEAN: LeanWords = {
  square: 'gerade',
  under: 'nach innen',
  outUnder: 'nach außen',
  to: 'bis',
  between: 'zwischen',
  and: 'und',
  beyond: 'weiter, als Messer und Tisch reichen',
  byHand: 'von Hand',
  openEdge: 'offene Kante',
  openEdges: 'offene Kanten',
};
