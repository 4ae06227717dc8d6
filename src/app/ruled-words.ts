import { spoken } from './language/spoken.ts';

/** What is said of straight strips that are cut by the ruler. */
export const RULED_WORDS = spoken('ruled', {
  paper: 'Long straight strips',
  ways: { tell: 'by the ruler, told on the map', print: 'printed' },
});
