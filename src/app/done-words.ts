import { spoken } from './language/spoken.ts';

const pieces = (n: number): string => (n === 1 ? '1 piece' : `${n} pieces`);

/** Texts of what is ticked off: paper printed, foam cut. Part of the words of the window. */
export const DONE_WORDS = spoken('done', {
  printed: 'printed',
  cut: 'cut',
  stale: 'printed, but changed since: print it anew',
  changed: 'cut, but changed since',
  release: 'release',
  tickPrinted: (name: string) => `${name} is printed`,
  tickCut: (name: string) => `${name} is cut`,
  releasePiece: (name: string) => `release ${name}: it will be cut anew`,
  state: (printed: number, stale: number, cut: number, changed: number, all: number) =>
    [
      `${printed} of ${pieces(all)} printed`,
      ...(stale === 0 ? [] : [`${stale} out of date`]),
      ...(cut === 0 ? [] : [`${cut} cut`]),
      ...(changed === 0 ? [] : [`${changed} cut, but changed since`]),
    ].join(', '),
  tickAll: (n: number) => `Tick ${pieces(n)} as printed`,
  forgetGone: (n: number) => `Forget ${pieces(n)} that ${n === 1 ? 'is' : 'are'} no more`,
  saveChanged: (n: number) => `Save pages of ${pieces(n)} only, PDF`,
} as const);
