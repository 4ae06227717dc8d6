import { spoken } from './language/spoken.ts';

/** How the window speaks of scored lines: slits in the face that heat opens. */
export const SCORE_WORDS = spoken('score', {
  verb: 'score, not part',
  heading: 'Scored lines, cut into the face and opened with heat. The foam stays joined along them.',
  name: (number: number, edges: number) => `Scored line ${number}, ${edges} ${edges === 1 ? 'edge' : 'edges'}`,
  depth: 'Depth of the cut',
  open: 'Width once opened',
  part: 'part here',
  remove: 'take away',
  /** Buttons of one line, said in full for those who hear them. */
  of: (what: string, name: string) => `${what}: ${name}`,
});
