/** What the window and the paper show, read out of the sources: names, signs, colours and drawings. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const read = (path: string): string => readFileSync(ROOT + path, 'utf8');

/** Paths below a folder, from the top of the project, in order. */
function filesBelow(folder: string): string[] {
  return readdirSync(ROOT + folder, { recursive: true, encoding: 'utf8' })
    .map((path) => `${folder}/${path.replaceAll('\\', '/')}`)
    .sort();
}

const SOURCES = filesBelow('src').filter((path) => /\.(?:ts|css|svg)$/.test(path));
/** Translations say the same again. */
const WORD_TABLES = SOURCES.filter((path) => path.endsWith('words.ts') && !path.startsWith('src/app/german/'));
/** Data with names that makers choose from. */
const NAMED_DATA = ['clays', 'coatings', 'colours', 'foam-stock', 'glues', 'inserts', 'papers', 'pipes'].map(
  (name) => `shared/${name}.json`,
);

/** A name of a tool, a state, a command or an option is that short; what is longer, or ends like a sentence, is one. */
const MOST_WORDS_OF_NAME = 5;

/** The sources are read once. */
function once<T>(make: () => T): () => T {
  let made: { readonly it: T } | null = null;
  return () => (made ??= { it: make() }).it;
}

/** Texts of the tables of words: what is put into them later stands as `…`. */
export const saidTexts = once((): readonly string[] =>
  WORD_TABLES.flatMap((path) => {
    const file = ts.createSourceFile(path, read(path), ts.ScriptTarget.ES2022, true);
    const texts: string[] = [];
    const visit = (node: ts.Node): void => {
      if (ts.isImportDeclaration(node) || ts.isTypeNode(node)) return;
      if (ts.isStringLiteralLike(node) && !isId(node) && !node.text.startsWith('#')) texts.push(node.text);
      else if (ts.isTemplateExpression(node))
        texts.push(node.head.text + node.templateSpans.map(({ literal }) => `…${literal.text}`).join(''));
      // Keys, and values that are compared with, are not said.
      ts.forEachChild(node, (child) => {
        const isKey = ts.isPropertyAssignment(node) && child === node.name;
        const isCompared = ts.isBinaryExpression(node) && /^[!=]==$/.test(node.operatorToken.getText());
        if (!isKey && !(isCompared && ts.isStringLiteralLike(child))) visit(child);
      });
    };
    visit(file);
    return texts;
  }),
);

/** The first of what `spoken` is given: the name of its table. */
const isId = (node: ts.Node): boolean =>
  ts.isCallExpression(node.parent) &&
  node.parent.expression.getText() === 'spoken' &&
  node.parent.arguments[0] === node;

/** Names in the data, in the samples and of the shapes. */
function dataNames(): string[] {
  const named = NAMED_DATA.flatMap((path) => [...read(path).matchAll(/"name": "([^"]*)"/g)]);
  const samples = [...read('samples/samples.json').matchAll(/"title": "([^"]*)"/g)];
  const shapes = filesBelow('src/steps/shapes').flatMap((path) => [...read(path).matchAll(/\bname: '([^']*)'/g)]);
  return [...named, ...samples, ...shapes].map(([, name]) => name);
}

const isName = (text: string): boolean =>
  !/[.!?:]$/.test(text) && !/[.:;] /.test(text) && wordsOf(text).length <= MOST_WORDS_OF_NAME;

/** The words of a text, without figures and signs, small unless they are short forms. */
export const wordsOf = (text: string): string[] =>
  (text.match(/\p{L}[\p{L}’-]*/gu) ?? []).map((word) => (/^\p{Lu}{2,}/u.test(word) ? word : word.toLowerCase()));

const sorted = (words: Iterable<string>): string[] => [...new Set(words)].sort((a, b) => a.localeCompare(b, 'en'));

/** Every word that a name is made of. */
export const nameWords = once((): readonly string[] =>
  sorted([...saidTexts().filter(isName), ...dataNames()].flatMap(wordsOf)),
);

/** Words that only sentences have. */
export function sentenceWords(): string[] {
  const ofNames = new Set(nameWords());
  return sorted(saidTexts().flatMap(wordsOf)).filter((word) => !ofNames.has(word));
}

/** Signs that the window shows beside letters, figures and what every keyboard has, outside of comments. What only steers shows nothing. */
export const signs = (): string[] =>
  sorted(
    SOURCES.filter((path) => /^src\/(?:app\/(?!german)|base\/)/.test(path)).flatMap(
      (path) => withoutComments(read(path)).match(/[^\p{L}\p{M}\p{N}\p{ASCII}\p{Z}\p{C}]/gu) ?? [],
    ),
  );

/** What a source says, signs by their numbers as the signs themselves. */
const withoutComments = (text: string): string =>
  text
    .replace(/\/\*.*?\*\/|^ *\/\/.*$/gms, '')
    .replace(/\\u([\da-f]{4})/gi, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)));

/** Colours by their custom properties, and colour codes elsewhere by their files. */
export function colours(): {
  readonly tokens: readonly string[];
  readonly codes: ReadonlyMap<string, readonly string[]>;
} {
  const tokens = sorted(
    [...read('src/app/tokens.css').matchAll(/(--[a-z\d-]+):\s*(?:light-dark\(|#)/g)].map(([, name]) => name),
  );
  const codes = new Map<string, readonly string[]>();
  for (const path of SOURCES.filter(
    (each) => !each.endsWith('/tokens.css') && !/^src\/(?:geom|mesh|steps\/(?!write))/.test(each),
  )) {
    const found = sorted(
      read(path).match(
        /#(?:[\da-f]{6}|[\da-f]{3})\b(?=["';)])|\b0x[\da-f]{6}\b(?!\s*\?)|^ +\[\d{1,3}, \d{1,3}, \d{1,3}\](?=[,;])/gim,
      ) ?? [],
    );
    if (found.length > 0)
      codes.set(
        path,
        found.map((code) => code.trim()),
      );
  }
  return { tokens, codes };
}

/** Files that draw: pictures in the window and the mark. */
export const drawings = (): string[] =>
  SOURCES.filter((path) => path.startsWith('src/app/') && (path.endsWith('.svg') || /[^`\w]svg`/.test(read(path))));
