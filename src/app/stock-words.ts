import { formatLength, type LengthUnit } from '../base/format-length.ts';
import type { TurnRule } from '../model/stock.ts';
import type { OutlineFault } from '../viewport/outline-edit.ts';
import { spoken } from './language/spoken.ts';

/** Texts about foam in hand and how sheets are filled. */
export const STOCK_WORDS = spoken('stock', {
  heading: 'Foam in hand, and how sheets are filled',
  why: 'Sheets and offcuts in hand are used before any is bought.',
  nothing: 'None in hand: sheets are bought.',
  add: {
    sheet: 'Add sheets',
    offcut: 'Add an offcut',
    traced: 'Trace an offcut',
    drawing: 'Offcut from an SVG file …',
  },
  names: { sheet: 'sheet', offcut: 'offcut', traced: 'traced offcut' },
  name: 'Written on it',
  width: 'Wide',
  height: 'High',
  count: 'In hand',
  remove: 'take off the list',
  removeOf: (name: string) => `take ${name} off the list`,
  about: (size: string, n: number) => `${size}, ${n} in hand`,
  traced: (size: string) => `traced, ${size}`,

  shelf: {
    heading: 'Left by other jobs:',
    of: (foam: string) => `${foam}, left by other jobs`,
    sheet: (name: string, size: string, n: number) => `${name}, ${size}${n > 1 ? `, ${n} of them` : ''}`,
    take: 'use it here',
    takeOf: (name: string) => `use ${name} here`,
    forget: 'it is gone',
    forgetOf: (name: string) => `${name} is gone`,
  },

  fill: {
    border: 'Kept free along edges',
    spacing: 'Kept free between pieces',
    cutBy: 'Cut with',
    cuts: { knife: 'a knife', laser: 'a laser', saw: 'a saw', own: 'my own spacing' },
    cutOption: (name: string, gap: string) => `${name}, ${gap}`,
    turns: 'Pieces may lie',
    turn: {
      any: 'any way round',
      half: 'along the grain, either way',
      none: 'only as the arrow says',
    } satisfies Record<TurnRule, string>,
    turnOver: 'other side up as well',
    buys: 'sheets may be bought',
    bought: (size: string) => `A sheet that is bought is ${size}.`,
  },

  clear: {
    heading: 'Keep clear',
    why: 'Print, holes and dents: nothing is cut from there.',
    add: 'Keep a place clear',
    place: (n: number) => `Place ${n}`,
    takeAway: 'take away',
    remove: (n: number) => `take place ${n} away`,
  },

  outline: {
    label: (name: string) => `Outline of ${name}, with a grid`,
    corner: (n: number, of: number, x: string, y: string) => `Corner ${n} of ${of}, ${x} across, ${y} up`,
    corners: 'Corner',
    across: 'Across',
    up: 'Up',
    add: 'one more after it',
    remove: 'take it out',
    grid: (step: string) => `Lines are ${step} apart.`,
    how: 'Drag a corner, or a dot between two for one more. Arrow keys move the one in hand, with Shift finer; plus adds one, Delete takes it out.',
    faults: {
      few: 'Three corners at least.',
      crossing: 'The outline crosses itself: move the corner back, then it counts again.',
      flat: 'There is nothing inside it: pull a corner out, then it counts.',
      outside: 'It reaches over the edge of the sheet: move it onto it, then it counts.',
    } satisfies Record<OutlineFault, string>,
  },
  drawing: {
    none: (file: string) => `${file} has no closed line: draw the offcut as one outline in its true size.`,
    taken: (file: string, size: string) => `The largest closed line of ${file} is the offcut, ${size}.`,
  },
});

/** `1000 × 2000 mm`. */
export const sizeText = (widthMm: number, heightMm: number, unit: LengthUnit): string =>
  `${formatLength(widthMm, unit)} × ${formatLength(heightMm, unit)}`;
