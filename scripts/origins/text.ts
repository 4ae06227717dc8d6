import { colours, drawings, nameWords, sentenceWords, signs } from './gather.ts';
import { CODE_ORIGINS, DRAWING_ORIGINS, PLAIN_WORDS, SIGN_ORIGINS, TOKEN_ORIGINS, WORD_ORIGINS } from './origins.ts';

const listed = (words: string): readonly string[] => words.trim().split(/\s+/);

/** The words of names that have an origin, as they are listed. */
const knownWords = (): string[] => [...Object.values(WORD_ORIGINS), PLAIN_WORDS].flatMap(listed);

/** What is shown and has no origin, and what has an origin and is shown nowhere, each with what to do. */
export function originFaults(): string[] {
  const { tokens, codes } = colours();
  return [
    ...compare('word of a name', nameWords(), knownWords()),
    ...compare('sign', signs(), Object.keys(SIGN_ORIGINS)),
    ...compare('colour', tokens, Object.keys(TOKEN_ORIGINS)),
    ...compare('file with colour codes', [...codes.keys()], Object.keys(CODE_ORIGINS)),
    ...compare('file that draws', drawings(), Object.keys(DRAWING_ORIGINS)),
  ];
}

function compare(kind: string, shown: readonly string[], known: readonly string[]): string[] {
  const [isShown, isKnown] = [new Set(shown), new Set(known)];
  return [
    ...shown.filter((each) => !isKnown.has(each)).map((each) => `${kind} without an origin: ${each}`),
    ...known.filter((each) => !isShown.has(each)).map((each) => `${kind} that is shown no more: ${each}`),
    ...known.filter((each, i) => known.indexOf(each) !== i).map((each) => `${kind} with two origins: ${each}`),
  ];
}

/** The list as Markdown. What has no origin says so. */
export function originsText(): string {
  const { tokens, codes } = colours();
  const known = (table: Readonly<Record<string, string>>, key: string): string => table[key] ?? '**no origin**';
  const rows = (pairs: readonly (readonly [string, string])[]): string[] =>
    pairs.map(([key, from]) => `| ${key} | ${from} |`);
  const words = new Set(knownWords());
  const lone = nameWords().filter((word) => !words.has(word));
  return [
    '# Where what is seen comes from',
    '',
    'Made by `npm run origins` from the tables of words, the colours and the drawings of the sources; the origins stand in `scripts/origins/origins.ts`, by hand. A test fails when a word of a name, a sign, a colour or a drawing has none. A name is what a tool, state, command or option is called; none was taken from another program, and none is there that brings one to mind.',
    '',
    '## Words of names',
    ...Object.entries(WORD_ORIGINS).flatMap(([from, words]) => ['', `**${from}**: ${listed(words).join(', ')}.`]),
    '',
    `**Plain English**: ${listed(PLAIN_WORDS).join(', ')}.`,
    ...(lone.length === 0 ? [] : ['', `**No origin**: ${lone.join(', ')}.`]),
    '',
    'German names are plain or trade words of the same things.',
    '',
    '## Words that only sentences have',
    '',
    `Plain English: ${sentenceWords().join(', ')}.`,
    '',
    '## Letters of keys',
    '',
    'A letter is the first of the verb or of what it is about where that is free (P part, W whole, A apart, F flat, S sheet, E edge, J join, H hold), else one nearby on the keyboard. Ctrl with Z, Y, S, O and F1, Esc, Enter, Space are those of every system.',
    '',
    '## Signs',
    '',
    '| sign | from |',
    '|---|---|',
    ...rows(signs().map((sign) => [sign, known(SIGN_ORIGINS, sign)])),
    '',
    '## Colours',
    '',
    'All ours but the scale; `tokens.css` holds their codes for day and night.',
    '',
    '| colour | stands for |',
    '|---|---|',
    ...rows(tokens.map((name) => [`\`${name}\``, known(TOKEN_ORIGINS, name)])),
    '',
    '| elsewhere | codes | from |',
    '|---|---|---|',
    ...[...codes].map(([path, list]) => `| \`${path}\` | ${list.join(' ')} | ${known(CODE_ORIGINS, path)} |`),
    '',
    '## Drawings',
    '',
    'Each drawn for this project, in code; none is an icon of a set. Kinds of line are those of ISO 128-2:2020.',
    '',
    '| file | draws |',
    '|---|---|',
    ...rows(drawings().map((path) => [`\`${path}\``, known(DRAWING_ORIGINS, path)])),
    '',
  ].join('\n');
}
