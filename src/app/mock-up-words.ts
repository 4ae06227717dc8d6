import { spoken } from './language/spoken.ts';

/** What is said of the mock-up in card. */
export const MOCK_UP_WORDS = spoken('mock-up', {
  heading: 'Mock-up in card',
  what: 'The same pieces smaller, laid flat anew for card with square edges: print, cut, score, tape, and see in ten minutes how they close. Not for foam, not even enlarged.',
  scale: 'Scale',
  card: 'Card is thick',
  save: 'Save mock-up, PDF',
  verb: 'make a mock-up in card',
  begun: 'Laying the pieces flat for card.',
  saved: (name: string) => `${name} is saved: print it on card at 100 %.`,
});
