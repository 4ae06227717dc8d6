/** Letters of one sentence at most: of a longer one its beginning and its end are kept. */
const MOST_LETTERS = 1500;
const KEPT_END = 400;

/**
 * Characters that may not come to a screen, a terminal or paper from a file: those that steer (U+0000 to U+001F, U+007F to U+009F), that part lines
 * (U+2028, U+2029), that turn the text after them about (U+202A to U+202E, U+2066 to U+2069; Unicode Annex 9), and halves of a pair.
 */
const UNSHOWN =
  /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** The same where a line may go on: with line ends and tabs. */
const UNSHOWN_IN_LINES =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** A name or a sentence as it may be shown: tabs and line ends are blanks, what cannot be seen is a replacement sign (U+FFFD). */
export const shownText = (text: string): string =>
  text.replace(UNSHOWN, (letter) => (/[\t\n\r]/.test(letter) ? ' ' : '\ufffd'));

/** Lines for a terminal: as they are, what steers it is a replacement sign. */
export const shownLines = (text: string): string => text.replace(UNSHOWN_IN_LINES, '\ufffd');

/** A sentence that quotes a file: as it may be shown, and no longer than anybody reads. */
export function shownSentence(text: string): string {
  const shown = shownText(text);
  return shown.length <= MOST_LETTERS
    ? shown
    : shownText(`${shown.slice(0, MOST_LETTERS - KEPT_END)}…${shown.slice(-KEPT_END)}`);
}
