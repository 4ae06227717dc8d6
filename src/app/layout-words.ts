import { formatNumber } from '../base/format-length.ts';
import { spoken } from './language/spoken.ts';

/** Texts about the search for a better layout. */
export const LAYOUT_WORDS = spoken('layout', {
  begin: 'Improve the layout',
  why: 'Looks for fewer sheets, then for a shorter last one, until you stop it. What is held stays; it never gets worse.',
  stop: 'Stop',
  take: 'Take it',
  again: 'Look again',
  put: 'put away',
  outdated: 'The job changed, so the search has ended: begin it anew.',
  same: 'Nothing better yet.',
  nothing: 'Nothing better was found.',
  broken: 'The search broke off before it was done: look again, or reload the page first.',
  caption: 'The layout as it is, and as it was found',
  rows: { bought: 'Sheets to buy', sheets: 'Sheets in all', lastMm: 'Last filled to', densityPct: 'Foam that is used' },
  now: 'as it is',
  found: 'found',
  time: (seconds: number, moves: number) =>
    `${formatNumber(seconds)}\u00a0s, ${formatNumber(moves)}\u00a0${moves === 1 ? 'try' : 'tries'}`,
  picture: (sheet: number) => `Sheet ${sheet} as it was found`,
  verbs: { begin: 'improve the layout', stop: 'stop improving the layout', take: 'take the layout that was found' },
  spoken: {
    begun: 'Looking for a better layout.',
    stopped: 'The search has stopped.',
    taken: 'The layout is taken.',
  },
});
