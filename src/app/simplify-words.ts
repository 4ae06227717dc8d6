import { formatNumber } from '../base/format-length.ts';
import { spoken } from './language/spoken.ts';

/** What the window says of a sculpt that is made simpler for paper. */
export const SIMPLIFY_WORDS = spoken('simplify', {
  verb: 'simplify the sculpt for paper',
  heading: 'Simplify for paper',
  now: (triangles: number) => `${formatNumber(triangles)} triangles`,
  why: 'A dense sculpt takes long, and its outlines come out ragged. Creases, marks, borders of areas and open edges stay, and both sides of a mirror stay alike.',
  triangles: 'Triangles that are enough',
  wrong: (least: number) => `A whole number from ${least}.`,
  deviation: 'or moved at most',
  off: 'take it as it is',
});
