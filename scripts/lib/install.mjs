import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Complaint } from './complaint.mjs';
import { MODULES, ROOT } from './paths.mjs';

/** Holds the hash of the lock file that node_modules was filled from. */
const STAMP = join(MODULES, '.foamloft-lock');

/** Fills node_modules from the lock file, unless it was filled from this very lock file before. @returns whether it had to. */
export function installPackages() {
  const lockHash = createHash('sha256')
    .update(readFileSync(join(ROOT, 'package-lock.json')))
    .digest('hex');
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === lockHash) return false;
  // npm is a script on Windows, which only a shell can start; the words hold nothing from outside.
  const npm = spawnSync('npm ci --ignore-scripts --no-audit --no-fund --loglevel=error', {
    cwd: ROOT,
    shell: true,
    stdio: ['ignore', 'inherit', 'inherit'],
    // A machine set to production would leave out the packages that build and test.
    env: { ...process.env, NODE_ENV: 'development' },
  });
  if (npm.status !== 0) throw new Complaint('The packages could not be installed; npm says why above.');
  writeFileSync(STAMP, lockHash);
  return true;
}
