import { formatPlain } from '../base/format-length.ts';
import { spoken } from './language/spoken.ts';

const KINDS: Readonly<Record<string, string>> = { brushed: 'by brush', sprayed: 'as a spray' };

/** What the window says of colours, clay and the steps of finishing. */
export const PAINT_WORDS = spoken('paint', {
  waiting: 'waiting for pieces',
  making: 'being worked out',
  none: 'no colours yet',
  answer: (colours: number, steps: number) =>
    `${colours === 0 ? 'No colours' : colours === 1 ? 'One colour' : `${colours} colours`}, ${steps === 1 ? 'one step' : `${steps} steps`}`,
  show: 'Show the colours',
  hide: 'Hide the colours',
  sealed: 'It is sealed and coated all over as said under What it takes.',
  colours: {
    heading: (names: readonly string[]) => (names.length === 0 ? 'Colours' : `Colours: ${names.join(', ')}`),
    why: 'The label of the tin goes first: put in what it says.',
    add: 'Add a colour',
    fresh: (n: number) => `Colour ${n}`,
    name: 'Name',
    shade: 'Shade on screen',
    kind: 'Put on',
    kinds: KINDS,
    label: (coats: number, m2: number, figures: 'label' | 'usual') =>
      `${coats === 1 ? 'One coat' : `${coats} coats`}, ${formatPlain(m2)} m² a litre, ${figures === 'label' ? 'by your label' : 'as usual'}`,
    coats: 'Coats',
    coverage: 'One coat of a litre covers',
    recoat: 'To the next coat',
    handle: 'Until it can be taped',
    figures: {
      label: 'These figures are your label’s.',
      usual: 'These figures are the usual ones of its kind, not your label’s.',
    },
    remove: 'take away',
    removeOf: (name: string) => `take away ${name}`,
    base: 'All that has no colour of its own',
    noBase: 'keeps the coats',
  },
  areas: {
    heading: 'Areas',
    none: 'Click a place on a piece to mean an area of it, then choose its colour in the row under the bench.',
    colour: 'Colour',
    colourOf: (area: string) => `Colour of ${area}`,
    asRest: 'as the rest',
    clay: 'Built up in clay',
    clayOf: (area: string) => `Built up in clay: ${area}`,
    named: { panel: (piece: string, at: number) => `${piece}, panel ${at}`, spot: (piece: string) => `${piece}, area` },
    first: 'Add a colour in the job sheet first.',
  },
  fillet: { field: 'Filled with clay, radius' },
  clay: {
    heading: 'Clay',
    layer: 'Thickest layer that dries through',
    dry: 'Such a layer dries',
    shrink: 'It shrinks by',
    how: 'Build an area up in the list of areas; fill an inner corner by choosing its seam.',
    sum: (wet: string, days: number) => `${wet} of it, wet; ${formatPlain(days)} days of drying.`,
  },
  table: {
    caption: 'What each colour takes',
    colour: 'Colour',
    area: 'Area',
    coats: 'Coats',
    volume: 'Volume',
    base: (name: string) => `${name}, the base`,
  },
  steps: 'Steps of finishing',
  mind: 'Mind',
  units: { m2: 'm²', min: 'min', h: 'h', pct: '%' },
} as const);

/** Shades a new colour begins with, one after the other. */
export const SHADES: readonly string[] = ['#26272b', '#b08a3e', '#e6dcc4', '#7c3026', '#3f5c4c', '#48566e'];
