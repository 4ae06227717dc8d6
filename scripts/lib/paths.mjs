// Where the project's folders are, whatever folder a script is started from.
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../../', import.meta.url)).replace(/[\\/]$/, '');
export const DIST = join(ROOT, 'dist');
export const MODULES = join(ROOT, 'node_modules');
