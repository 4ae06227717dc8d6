import { readdirSync, readFileSync, statSync } from 'node:fs';
import { extname, join } from 'node:path';

const FOLDERS = ['samples', 'tests/reference', 'tests/golden'];

/** Longer files are no seeds: each change of them costs what a thousand of small ones do. */
const MOST_BYTES = 40_000;

let found: readonly { readonly path: string; readonly bytes: Uint8Array }[] | null = null;

/** The files of an ending among samples and references, the small ones first. */
export function seedFiles(...endings: readonly string[]): readonly Uint8Array[] {
  found ??= FOLDERS.flatMap((folder) =>
    readdirSync(folder, { recursive: true }).map((name) => join(folder, String(name))),
  )
    .filter((path) => ['.obj', '.stl', '.json', '.svg', '.seam'].includes(extname(path).toLowerCase()))
    .filter((path) => statSync(path).isFile() && statSync(path).size <= MOST_BYTES)
    .sort()
    .map((path) => ({ path, bytes: new Uint8Array(readFileSync(path)) }));
  return found
    .filter(({ path }) => endings.some((ending) => path.toLowerCase().endsWith(ending)))
    .map(({ bytes }) => bytes)
    .sort((a, b) => a.length - b.length);
}
