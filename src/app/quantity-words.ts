import { formatNumber, formatPlain } from '../base/format-length.ts';
import type { Glue } from '../model/glues.ts';
import { spoken } from './language/spoken.ts';

const count = (n: number, one: string, many: string): string => `${n}\u00a0${n === 1 ? one : many}`;

/** Minutes under two hours, hours from there on. */
const time = (min: number): string =>
  min < 120 ? `${formatPlain(min)} min` : `${formatNumber(min / 60, 1).replace(/\.0$/, '')} h`;

/** What the window says of what a job takes and comes to. */
export const QUANTITY_WORDS = spoken('quantity', {
  waiting: 'waiting for pieces',
  making: 'being worked out',
  unfinished: 'waiting until every piece lies flat',
  /** Mass and longest dimension are what an event asks for first. */
  answer: (mass: string, longest: string) => `${mass} bare, ${longest} at its longest`,
  cost: (cost: string) => `What has a price comes to ${cost}.`,
  mass: (grams: number) =>
    grams < 1000 ? `${formatNumber(grams)}\u00a0g` : `${formatNumber(grams / 1000, 2)}\u00a0kg`,
  money: (amount: number, currency: string | undefined) =>
    `${formatNumber(amount, 2)}${currency === undefined ? '' : `\u00a0${currency}`}`,
  volume: (ml: number) =>
    ml < 1000 ? `${Math.max(5, 5 * Math.ceil(ml / 5))}\u00a0ml` : `${formatNumber(Math.ceil(ml / 100) / 10, 1)}\u00a0l`,
  size: (x: string, y: string, z: string) => `Finished it measures ${x} × ${y} × ${z}.`,
  centre: (x: string, y: string, z: string) =>
    `It balances at x ${x}, y ${y}, z ${z} from the nought of the sculpt, by the density given for its foam and without glue, paint and fittings.`,
  event: 'Events set limits of size and weight: ask your event.',
  seams: (length: string | null) =>
    `${length === null ? '' : `${length} of seam. `}Volumes are what the coverage on the label comes to: have a third more for brush and tin.`,
  tooLarge: (n: number, foam: string) =>
    n === 1
      ? `Not counted: a piece for which no sheet of ${foam} is large enough.`
      : `Not counted: ${n} pieces for which no sheet of ${foam} is large enough.`,
  table: {
    caption: 'What it takes: what, how much, for what, and what it costs',
    what: 'What',
    much: 'How much',
    for: 'For',
    cost: 'Cost',
    sheets: (bought: number, inHand: number) =>
      inHand === 0
        ? count(bought, 'sheet', 'sheets')
        : bought === 0
          ? `${inHand} in hand`
          : `${bought} to buy, ${inHand} in hand`,
    pieces: (area: string) => `${area} of pieces`,
    faces: (area: string) => `${area}, both faces`,
    coats: (area: string, coats: number) => `${area}, ${count(coats, 'coat', 'coats')}`,
    clay: 'fillets and shapes, wet',
    all: 'What has a price, in all',
  },
  prices: {
    heading: 'Prices',
    currency: 'Currency',
    sheet: (foam: string) => `A sheet of ${foam}`,
    glue: 'A litre of glue',
  },
  glue: {
    heading: (name: string) => `Glue: ${name}`,
    choose: 'Glue',
    label: 'The label of your tin goes first. Type what it says:',
    waitMin: 'Touch-dry after',
    openMin: 'To be joined within',
    cureH: 'Full strength after',
    coverageM2PerL: 'One face covered',
    brushMmPerMin: 'You brush',
    joinMmPerMin: 'You roll shut',
    alignMinPerSeam: 'You find the first touch in',
    units: { min: 'min', h: 'h', m2PerL: 'm² a litre', mmPerMin: 'mm a minute', inPerMin: 'in a minute' },
    tooShort: ({ waitMin, alignMinPerSeam }: Glue) =>
      `It must stay open for longer than ${formatPlain(waitMin + alignMinPerSeam)} min: until it is touch-dry and the first touch is found.`,
    usual: 'Take the usual figures again',
  },
  coats: {
    heading: (names: readonly string[]) =>
      names.length === 0 ? 'Coats: none, it stays bare' : `Coats: ${names.join('; then ')}`,
    list: 'Coats in the order they are put on',
    coats: 'Coats',
    coverage: 'One coat covered',
    recoat: 'From coat to coat',
    cure: 'To be worn after',
    dries: (min: number, cureH: number) =>
      `Its coats take ${time(min)} to dry; it may be worn ${formatPlain(cureH)} h after the last.`,
    remove: (name: string) => `take away ${name}`,
    earlier: (name: string) => `put ${name} on earlier`,
    earlierShort: 'earlier',
    removeShort: 'take away',
    add: 'Add a coat',
    choose: 'choose …',
    bare: 'None: the prop stays bare.',
  },
  source: 'Usual figures',
  wrong: (least: number, most: number, isOver: boolean, isWhole: boolean) => {
    const what = isWhole ? 'A whole number' : 'A number';
    const from = isOver ? `over ${formatPlain(least)}` : `from ${formatPlain(least)}`;
    return Number.isFinite(most)
      ? `${what} ${from} to ${formatPlain(most)}.`
      : `${what} ${from}${isOver ? '' : ' up'}.`;
  },
});
