// Which scripts of the built app must arrive before its first picture, and how large all of them are.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

/** Bytes, gzip, that the scripts before the first picture may have together: 300 kB. */
export const FIRST_LIMIT = 300_000;
/** The beginnings of it: the window, its picture, and the worker that reads the sculpt. */
const BEGINNINGS = /^(index|bench-scene|worker)-.*\.js$/;

/**
 * @param {string} dist  folder of the built app
 * @returns {{ name: string, bytes: number, isFirst: boolean }[]} each script in `assets/`, first ones first, then the largest; bytes as gzip sends them
 */
export function sizedScripts(dist) {
  const folder = join(dist, 'assets');
  const all = readdirSync(folder).filter((name) => name.endsWith('.js'));
  const text = (name) => readFileSync(join(folder, name), 'utf8');
  const first = new Set(all.filter((name) => BEGINNINGS.test(name)));
  // A set that grows is gone through to its new end.
  for (const name of first) {
    for (const [, loaded] of text(name).matchAll(/\b(?:from|import) ?["']\.\/([\w.-]+\.js)["']/g)) first.add(loaded);
  }
  return all
    .map((name) => ({ name, bytes: gzipSync(text(name)).length, isFirst: first.has(name) }))
    .sort((a, b) => Number(b.isFirst) - Number(a.isFirst) || b.bytes - a.bytes);
}

/** @param {ReturnType<typeof sizedScripts>} scripts */
export const firstBytes = (scripts) => scripts.reduce((sum, { bytes, isFirst }) => sum + (isFirst ? bytes : 0), 0);

/**
 * One script a line, and the sum of those before the first picture.
 * @param {ReturnType<typeof sizedScripts>} scripts
 */
export function sizeTable(scripts) {
  const kb = (bytes) => (bytes / 1000).toFixed(1).padStart(8);
  const lines = scripts.map(({ name, bytes, isFirst }) => `${kb(bytes)} kB ${isFirst ? 'first' : 'later'} ${name}`);
  return [...lines, `${kb(firstBytes(scripts))} kB before the first picture, of ${kb(FIRST_LIMIT).trim()}`].join('\n');
}
