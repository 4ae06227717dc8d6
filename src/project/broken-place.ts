import * as v from 'valibot';

/**
 * Where a JSON text does not fit its schema and what belongs there, as the end of a sentence: `at edges.0.1 there is nothing where a number
 * belongs`. Lists and objects count from 0.
 */
export function brokenPlace(issue: v.BaseIssue<unknown>): string {
  const place = v.getDotPath(issue);
  const at = place === null ? 'at its top' : `at ${place}`;
  if (isMissingKey(issue)) return `${at} something is missing`;
  const found = issue.received === 'undefined' ? 'nothing' : inWords(issue.received);
  return issue.expected === 'never'
    ? `${at} there is ${found} too much`
    : `${at} there is ${found} where ${wanted(issue)} belongs`;
}

/** The schema then asks for the key itself, in quotes. */
const isMissingKey = ({ expected, received }: v.BaseIssue<unknown>): boolean =>
  received === 'undefined' && (expected?.startsWith('"') ?? false);

function wanted({ type, expected, message }: v.BaseIssue<unknown>): string {
  if (type === 'integer') return 'a whole number';
  // What a check of our own wants is told by its message.
  if (expected === null) return type.startsWith('check') && !message.startsWith('Invalid') ? message : 'something else';
  if (expected.startsWith('>=')) return `at least ${expected.slice(2)}`;
  if (expected.startsWith('<=')) return `at most ${expected.slice(2)}`;
  return expected.startsWith('/') ? 'another text' : inWords(expected);
}

/** Kinds of values as a maker calls them; values themselves as they are, cut short. */
function inWords(text: string): string {
  switch (text) {
    case 'number':
    case 'string':
    case 'boolean':
      return `a ${text}`;
    case 'Array':
      return 'a list';
    case 'Object':
      return 'an object';
    case 'Infinity':
    case '-Infinity':
      return 'a number too large to hold';
    default:
      return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
  }
}

const LONGEST = 40;
