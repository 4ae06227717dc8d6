import { spoken } from './language/spoken.ts';

/** How the window speaks of the kinds of seam. */
export const JOIN_WORDS = spoken('join', {
  verbs: {
    butt: 'butt',
    lap: (width: string) => `lap ${width}`,
    otherLap: 'lap on the other side',
    over: 'lay the lap on top',
    under: 'lay the lap under',
    rebate: 'rebate',
    otherStands: 'let the other piece stand',
  },
  /** A fold beyond the blade. */
  steep: {
    split: 'put a strip between',
    fill: 'leave a gap and fill it',
    trim: 'leave a gap under a trim strip',
    asItFolds: 'cut it as it folds',
  },
  liesOver: (top: number, under: number) =>
    top === under ? 'one end lies over the other' : `${top} lies over ${under}`,
  standsOn: (stands: number, on: number) =>
    stands === on ? 'one edge stands on the other' : `${stands} stands on ${on}`,
  onFace: (length: string) => `${length} on the face`,
  onBack: (length: string) => `${length} on the back`,
  step: (sides: readonly string[]) => `step of ${sides.join(', ')}`,
  kind: { lap: 'lap', rebate: 'rebate', step: 'step' },
  pieceFoam: 'Foam',
  asSheet: (thickness: string) => `as the sheet, ${thickness}`,
});
