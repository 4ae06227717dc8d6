import { formatNumber } from '../base/format-length.ts';
import { spoken } from './language/spoken.ts';

/** `1 sheet`, `2 sheets`. */
const count = (n: number, one: string, many: string): string => `${n}\u00a0${n === 1 ? one : many}`;

/** Texts about sheets with pieces on them, and about laying pieces by hand. */
export const PLACING_WORDS = spoken('placing', {
  /** `2 sheets of 1000 × 2000 mm to buy, 1 in hand`. */
  answer: (bought: number, inHand: number, size: string) =>
    [
      ...(bought === 0 ? [] : [`${count(bought, 'sheet', 'sheets')}${size === '' ? '' : ` of ${size}`}`]),
      ...(inHand === 0 ? [] : [bought === 0 ? `${count(inHand, 'sheet', 'sheets')} in hand` : `and ${inHand} in hand`]),
    ].join(' '),
  isKept: 'The layout stays as it was taken or laid by hand.',
  anew: 'Lay out anew',
  /** The pieces are cut from another foam than when the layout was taken. */
  isOfOther: (foams: string) =>
    `The layout you took was for ${foams}. This foam is laid out anew; with the other one yours comes back.`,
  forgetOther: 'Forget that layout',
  open: 'move pieces by hand',
  openOf: (sheet: string) => `${sheet}: move pieces by hand`,
  sheet: (n: number) => `Sheet ${n}`,
  bought: 'to buy',
  inHand: (name: string) => `in hand: ${name}`,
  kind: (size: string, thickness: string) => `${size} of ${thickness} foam`,
  used: (share: string) => `${share} used`,
  last: (length: string) => `filled to ${length}`,
  left: (size: string) => `${size} left whole`,
  view: (sheet: string) => `${sheet} from above. Tab goes from piece to piece.`,
  closer: { true: 'whole sheet', false: 'come closer' },
  before: 'sheet before',
  next: 'next sheet',
  close: 'back to the bench',
  place: (n: number, of: number) => `sheet ${n} of ${of}`,

  piece: (number: number | string, name: string, copy: number, copies: number) =>
    copies > 1 ? `${number} ${name}, copy ${copy + 1} of ${copies}` : `${number} ${name}`,
  label: (name: string, isHeld: boolean) => `${name}${isHeld ? ', held' : ''}`,
  held: 'held',
  heldHere: 'Held: it stays here when the rest is laid out anew.',
  loose: 'Not held: it lies where the layout puts it.',
  choose: 'Drag a piece, or choose one with Tab and move it with the arrow keys, with Shift finer.',
  move: 'move it',
  ways: { ArrowLeft: 'to the left', ArrowUp: 'up', ArrowDown: 'down', ArrowRight: 'to the right' },
  turnLeft: 'turn left',
  turnRight: 'turn right',
  turnHalf: 'turn half round',
  flip: 'other side up',
  noFlip: 'Its other side may not lie up: say so under “Foam in hand” first, where both sides are alike.',
  hold: 'hold it here',
  release: 'release',
  toSheet: 'On',
  together: 'Keep with',
  alone: 'no other',
  withGroup: (numbers: string) => `with ${numbers}`,
  tool: (deg: number) => `Turned by ${formatNumber(deg)}°`,
  handle: 'Turn it by this handle',

  /** Where its middle lies on its sheet. */
  at: (name: string, across: string, up: string) => `${name}: its middle lies ${across} across the sheet and ${up} up.`,
  inAir: {
    wait: 'Seeing whether it can lie there …',
    over: (name: string) => `It would lie over ${name}: move it clear.`,
    clear: 'It would lie over a place that is kept clear: move it off.',
    edge: 'It would reach over the edge of what may be used: move it in.',
  },
  spoken: {
    back: (why: string) => `${why} It is back where it was.`,
    full: (sheet: number) => `There is no place for it on sheet ${sheet + 1} as it is turned.`,
    onSheet: (name: string, sheet: number) => `${name} is on sheet ${sheet + 1}.`,
    blocked: {
      over: (name: string) => `${name} is in the way.`,
      clear: 'A place that is kept clear is in the way.',
      edge: 'That is as far as it goes.',
    },
  },
});
