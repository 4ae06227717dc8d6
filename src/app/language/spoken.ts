/**
 * Tables of words that can be spoken in another language. A table is written in English beside what it is for; what it says in another language
 * is asked for at each read, so words are read when something is drawn and never kept.
 */

declare const SPOKEN: unique symbol;

/** A table of words whose reads go to the language in force. */
export type Spoken<T> = T & { readonly [SPOKEN]: true };

/**
 * What a table must say in another language: the same keys, texts of any words, functions of the same arguments. Tables within it are left out:
 * they are translated by themselves.
 */
export type Translation<T> = T extends string
  ? string
  : T extends (...args: infer A) => infer R
    ? (...args: A) => Translation<R>
    : T extends readonly (infer E)[]
      ? readonly Translation<E>[]
      : T extends object
        ? { readonly [K in keyof T as K extends typeof SPOKEN ? never : Named<T, K>]: Translation<T[K]> }
        : T;

/** The key of what is no table of its own. */
type Named<T, K extends keyof T> = T[K] extends { readonly [SPOKEN]: true } ? never : K;

/** The same of a table of long texts: what is missing is said in English until it is translated. */
export type TranslationInPart<T> = T extends (...args: never[]) => unknown
  ? Translation<T>
  : T extends readonly unknown[]
    ? Translation<T>
    : T extends object
      ? { readonly [K in keyof Translation<T>]?: K extends keyof T ? TranslationInPart<T[K]> : never }
      : Translation<T>;

/** Translated tables by their names. */
export type Tables = Readonly<Record<string, object>>;

/** The English tables by their names, as far as they are loaded. */
const english = new Map<string, object>();
/** What is in force: null for English. */
let tables: Tables | null = null;
/** Tables in force that were read already, with English where something is missing. */
let filled = new Map<string, object>();

/**
 * @param name of the table, as the translations name it. Given twice: our own mistake, it throws.
 * @param words the table in English.
 */
export function spoken<T extends object>(name: string, words: T): Spoken<T> {
  if (english.has(name)) throw new Error(`two tables of words are named ${name}`);
  english.set(name, words);
  return new Proxy(words, { get: (_, key) => Reflect.get(inForce(name, words), key) as unknown }) as Spoken<T>;
}

/** From now on words are read from these tables; null: in English. */
export function speakFrom(translated: Tables | null): void {
  tables = translated;
  filled = new Map();
}

/** The English tables that were loaded, for checks. */
export const englishTables = (): ReadonlyMap<string, object> => english;

function inForce(name: string, words: object): object {
  const own = tables?.[name];
  if (own === undefined) return words;
  const known = filled.get(name) ?? fill(words, own);
  filled.set(name, known);
  return known;
}

/** A table with the words of another where that has them. */
function fill(words: object, own: object): object {
  if (own instanceof Array) return own as readonly unknown[];
  const all: Record<string, unknown> = { ...words };
  for (const [key, said] of Object.entries(own) as [string, unknown][]) {
    const before = all[key];
    all[key] = isTable(said) && isTable(before) ? fill(before, said) : said;
  }
  return all;
}

const isTable = (value: unknown): value is object => typeof value === 'object' && value !== null;
