import { formatNumber } from '../base/format-length.ts';
import type { Glue } from '../model/glues.ts';
import { spoken } from './language/spoken.ts';

const count = (n: number, one: string, many: string): string => `${n}\u00a0${n === 1 ? one : many}`;

/** What the window says of the order of gluing. */
export const GLUING_WORDS = spoken('gluing', {
  waiting: 'waiting for pieces',
  making: 'being worked out',
  unfinished: 'waiting until every piece lies flat',
  none: 'nothing to glue: no two edges meet',
  answer: (steps: number, batches: number) =>
    `${count(steps, 'step', 'steps')} in ${count(batches, 'batch', 'batches')}`,
  ofParts: (steps: number, parts: number) =>
    `${count(steps, 'step', 'steps')} of work on ${count(parts, 'part', 'parts')}`,
  partSteps: 'Work on the other parts',
  copies: (n: number) => `each step ${n} times`,
  pieces: (numbers: readonly number[]) => `${numbers.length === 1 ? 'piece' : 'pieces'} ${numbers.join(', ')}`,
  how: 'Contact glue grabs at once and cannot slide: put the edges together at the dot, then roll them shut along the arrows.',
  glue: ({ name, waitMin, openMin }: Glue) =>
    `With ${name}: touch-dry after ${formatNumber(waitMin)} min, to be joined within ${formatNumber(openMin)} min. If the label says otherwise, say so under “What it takes”.`,
  outside: (letters: readonly string[]) =>
    letters.length === 1
      ? `Glued blind: when seam ${letters[0]} is shut no hand reaches it from within. Press it from outside.`
      : `Glued blind: when seams ${letters.join(', ')} are shut no hand reaches them from within. Press them from outside.`,
  reached: 'A hand reaches every seam from within when it is shut.',
  steps: 'Steps of gluing, in their order',
  step: (number: number) => `Step ${number}`,
  chosen: (number: number, title: string) => `Step ${number}: ${title}`,
  picture: (number: number) =>
    `The prop when step ${number} is done: what is added is drawn heavy, the dot is touched first`,
  drawing: 'The picture is being drawn …',
  warm: 'Warm first, before the glue is opened',
  blind: 'glued blind',
  earlier: 'Earlier',
  later: 'Later',
  moveLabel: (way: 'earlier' | 'later', number: number) => `Glue step ${number} ${way}`,
  grip: 'Drag to glue it earlier or later',
  keys: 'On a step, Alt with an arrow moves it.',
  fixed: 'What is laid on the sheet below comes after that sheet, piece by piece from the middle: it cannot be moved.',
  anew: 'Find the order anew',
  anewWhy: 'Lets go of the order as you have moved it.',
  yours: 'In the order you chose.',
  refused: (number: number) => `Step ${number} cannot go there:`,
  cannot: 'It stays where it is:',
  /** A finding without what is said of an order that was accepted before. */
  why: (text: string) => text.replace(/ in the order of gluing you chose/, ' there').replace(/ Until then .*$/, ''),
  close: 'I see',
  spoken: {
    moved: 'Moved. The order is worked out again.',
    first: 'It is the first step already.',
    last: 'It is the last step of its sheet already.',
    wait: 'The order is still being worked out.',
    fixed: 'This step cannot be moved.',
  },
  verbs: {
    earlier: 'glue it earlier',
    later: 'glue it later',
    anew: 'find the order of gluing anew',
  },
});
