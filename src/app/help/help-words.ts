import { spoken } from '../language/spoken.ts';

/** What the help of the window says beside sentences, words and steps. */
export const HELP_WORDS = spoken('help', {
  /** Stands on a mark: nothing but the sign. */
  mark: '?',
  ask: 'What this field means',
  note: 'What the field means',
  close: 'close',
  back: 'back to the field',
  inWords: 'Words of the trade',
  foot: {
    heading: 'Help',
    fields: 'Point at a field or be in it: the ? in the margin says what it means. F1 does it by key.',
    keys: 'All keys',
    words: 'Words of the trade',
    guide: 'The ten-minute job',
  },
  verbs: {
    keys: 'show all keys',
    words: 'words of the trade',
    guide: 'the ten-minute job: begin or take it up again',
    leave: 'leave the ten-minute job',
    term: (word: string) => `${word}: what it is`,
  },
  sheet: {
    keys: 'All keys',
    words: 'Words of the trade',
    close: 'back to the bench',
    print: 'Print this sheet',
    find: 'Find a word',
    none: 'No word of the trade is like this.',
    count: (n: number) => (n === 1 ? '1 word' : `${n} words`),
  },
});
