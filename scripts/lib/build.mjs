import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { Complaint } from './complaint.mjs';
import { DIST, ROOT } from './paths.mjs';

/** Everything a build is made from. */
const SOURCES = [
  'index.html',
  'src',
  'samples',
  'shared',
  'scripts',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'LICENSE',
];

/** Holds the hash of the sources that dist/ was built from. */
const STAMP = join(DIST, '.sources');

/**
 * Builds all. The app goes first, because its build empties dist/. A build that fails leaves no stamp, and so is made again.
 * @param {string} [sources]  hash of the sources, where it is known already
 */
export async function buildAll(sources = hashSources()) {
  for (const entry of ['index.html', 'src/app/main.ts', 'src/cli/main.ts']) {
    if (!existsSync(join(ROOT, entry))) throw new Complaint(`Nothing was built: ${entry} is missing.`);
  }
  const { build } = await import('vite');
  rmSync(STAMP, { force: true });
  for (const config of [
    'vite.config.ts',
    'vite.cli.config.ts',
    'vite.cli-thread.config.ts',
    'vite.cli-nest-thread.config.ts',
  ]) {
    await build({ root: ROOT, configFile: join(ROOT, 'scripts', config), logLevel: 'warn' });
  }
  writeFileSync(STAMP, sources);
}

/** Builds unless dist/ was built from these very sources. @returns whether it had to. */
export async function buildIfStale() {
  const sources = hashSources();
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === sources) return false;
  await buildAll(sources);
  return true;
}

/** One hash over names and contents: unlike file times, it also notices files that went away or came back older. */
function hashSources() {
  const hash = createHash('sha256');
  for (const path of SOURCES.flatMap((name) => filesUnder(join(ROOT, name)))) {
    hash
      .update(`${relative(ROOT, path)}\0`)
      .update(readFileSync(path))
      .update('\0');
  }
  return hash.digest('hex');
}

function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}
