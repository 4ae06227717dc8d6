import { readdirSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { GERMAN } from '../../../src/app/german/german.ts';
import { GLOSSARY } from '../../../src/app/german/glossary.ts';
import { englishTables } from '../../../src/app/language/spoken.ts';

/** Long texts that are said in English until they are translated. It must not grow. */
const UNTRANSLATED = 0;
/** The same in both languages. */
const ALIKE =
  /^(?:[^\p{L}]+|[xyz]|mm|cm|m|in|m²|min|h|[A-Z]|name|laser|english|deutsch|foamloft|stl|page|material|start|app|svg|png|esc)$/iu;

/** What stands for a text that is put together. */
const MADE = 'ƒ';

/** Texts of a table by their paths. */
function textsOf(table: unknown, path: string): [string, string][] {
  if (typeof table === 'string') return [[path, table]];
  if (typeof table === 'function') return [[path, MADE]];
  if (typeof table !== 'object' || table === null) return [];
  return Object.entries(table).flatMap(([key, value]) => textsOf(value, `${path}.${key}`));
}

/** What the functions of a table say, as they are written. */
function sourcesOf(table: unknown): string[] {
  if (typeof table === 'function') return [String(table)];
  if (typeof table !== 'object' || table === null) return [];
  return Object.values(table).flatMap(sourcesOf);
}

const german = Object.entries(GERMAN).flatMap(([name, table]) => textsOf(table, name));
const said = [...german.map(([, text]) => text), ...Object.values(GERMAN).flatMap(sourcesOf)];

beforeAll(async () => {
  const root = new URL('../../../src/app/', import.meta.url);
  const files = readdirSync(root, { recursive: true, encoding: 'utf8' });
  const tables = files.filter((path) => path.endsWith('words.ts') && !path.startsWith('german'));
  await Promise.all(tables.map((path) => import(new URL(path, root).href)));
});

describe('German', () => {
  it('has every table of words', () => {
    expect([...englishTables().keys()].filter((name) => !(name in GERMAN))).toEqual([]);
    expect(Object.keys(GERMAN).filter((name) => !englishTables().has(name))).toEqual([]);
  });

  it('has every text, but for long ones that are listed', () => {
    const own = new Set(german.map(([path]) => path));
    const missing = [...englishTables()].flatMap(([name, table]) =>
      textsOf(table, name).filter(([path, text]) => !own.has(path) && !isOfOther(path) && text !== ''),
    );
    expect(missing.length, JSON.stringify(missing, null, 2)).toBeLessThanOrEqual(UNTRANSLATED);
  });

  it('is German', () => {
    const english = new Map([...englishTables()].flatMap(([name, table]) => textsOf(table, name)));
    expect(
      german.filter(([path, text]) => english.get(path) === text && text !== MADE && !ALIKE.test(text.trim())),
    ).toEqual([]);
  });

  it('keeps to its glossary and addresses nobody', () => {
    for (const { not = [] } of GLOSSARY)
      for (const word of not) expect(said.filter((text) => new RegExp(`\\b${word}\\b`).test(text))).toEqual([]);
    expect(said.filter((text) => /\b(du|dich|dir|deine?[mnrs]?)\b/.test(text))).toEqual([]);
  });
});

/** Tables within a table are translated by themselves. */
function isOfOther(path: string): boolean {
  const [name, ...keys] = path.split('.');
  let at: unknown = englishTables().get(name);
  for (const key of keys) {
    at = (at as Record<string, unknown>)[key];
    if (typeof at === 'object' && at !== null && isTable(at)) return true;
  }
  return false;
}

const isTable = (inner: object): boolean =>
  [...englishTables().values()].some((table) => Object.keys(table).join() === Object.keys(inner).join());
