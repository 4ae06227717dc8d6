import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** Folders that are made by commands and belong to nobody. */
const MADE = new Set(['.git', 'node_modules', 'dist', 'coverage', 'out', 'tmp']);

/** Paths of the project's own files below a folder, from the top of the project, with slashes, in order. */
export function projectFiles(folder = ''): string[] {
  return readdirSync(ROOT + folder, { withFileTypes: true })
    .filter((entry) => !(folder === '' && MADE.has(entry.name)))
    .flatMap((entry) => (entry.isDirectory() ? projectFiles(`${folder}${entry.name}/`) : [`${folder}${entry.name}`]))
    .sort();
}

export function readProjectFile(path: string): string {
  return readFileSync(ROOT + path, 'utf8');
}
