import { spoken } from './language/spoken.ts';

/** Texts of the printer's own correction. Part of the words of the window. */
export const PRINTER_WORDS = spoken('printer', {
  printer: 'Printer',
  any: 'any, uncorrected',
  another: 'measure a printer…',
  heading: (name: string | null) => (name === null ? 'Measure a printer' : `Measure ${name} again`),
  how: 'Print the first page at 100 % and measure its square with a good ruler, to a fifth of a millimetre if you can.',
  howAgain: (name: string) => `Measure the square on a first page that says “for ${name}”; what is still off is added.`,
  name: 'Name of the printer',
  across: 'Across, read',
  up: 'Up, read',
  rising: 'Lower left to upper right',
  falling: 'Upper left to lower right',
  diagonals: 'Both diagonals or none: with them a leaning print is put right too.',
  keep: (name: string) => (name === '' ? 'Draw pages for this printer' : `Draw pages for ${name}`),
  forget: (name: string) => `forget ${name}`,
  now: (across: string, up: string, lean: string | null) =>
    `Prints ${across} across and ${up} up${lean === null ? '' : `, leaning ${lean}`}; pages are drawn the other way.`,
} as const);
