import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The built app, with a slash at its end. */
export const DIST = fileURLToPath(new URL('../../dist/', import.meta.url));

/** In dist/ beside the app: the command line, and what the build notes for itself. */
const BESIDE = /^(cli[\w-]*\.js|\.packages\/.*|\.sources)$/;

/** For the browser alone, which asks for it when the app is installed or its keeper is: no window does. */
const FOR_THE_BROWSER = /^(keeper\.js|manifest\.webmanifest|icons\/.*)$/;

/** Every file of the built app, by its path from its folder, in order. */
export const appFiles = (): string[] =>
  readdirSync(DIST, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => `${parentPath}/${name}`.replaceAll('\\', '/').slice(DIST.length).replace(/^\//, ''))
    .filter((path) => !BESIDE.test(path))
    .sort();

/** Those that a window may ask for. */
export const windowFiles = (): string[] => appFiles().filter((path) => !FOR_THE_BROWSER.test(path));
