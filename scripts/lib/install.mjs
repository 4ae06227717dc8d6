import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Complaint } from './complaint.mjs';
import { MODULES, ROOT } from './paths.mjs';

/** Holds the hash of the lock file that node_modules was filled from. */
const STAMP = join(MODULES, '.foamloft-lock');

/** Fills node_modules from the lock file, unless it was filled from this very lock file before. @returns whether it had to. */
export function installPackages() {
  const lockHash = hashOf(readFileSync(join(ROOT, 'package-lock.json')));
  const isThere = () => existsSync(STAMP) && readFileSync(STAMP, 'utf8') === lockHash;
  if (isThere()) return false;
  return alone(() => !isThere() && install(lockHash));
}

function install(lockHash) {
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

/** Two commands begun at once would empty the folder under each other: one installs, the other waits. */
function alone(work) {
  const turn = join(tmpdir(), `foamloft-install-${hashOf(ROOT).slice(0, 16)}`);
  let isTold = false;
  while (!takes(turn)) {
    // One that broke off leaves its turn behind.
    if (isLeft(turn)) rmSync(turn, { recursive: true, force: true });
    else {
      if (!isTold) process.stdout.write('Another command installs the packages: waiting for it.\n');
      isTold = true;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, WAIT_MS);
    }
  }
  try {
    return work();
  } finally {
    rmSync(turn, { recursive: true, force: true });
  }
}

/** Takes the turn and writes down whose it is. @returns false where another has it. */
function takes(turn) {
  try {
    mkdirSync(turn);
  } catch (error) {
    if (error.code === 'EEXIST') return false;
    throw error;
  }
  writeFileSync(join(turn, OWNER), String(process.pid));
  return true;
}

/** Whether nobody is at it any more: its owner has ended, or it is older than any install. */
function isLeft(turn) {
  const since = statSync(turn, { throwIfNoEntry: false })?.mtimeMs;
  if (since === undefined) return false;
  if (Date.now() - since > LONGEST_MS) return true;
  const owner = ownerOf(turn);
  // It is written at once after the turn is taken.
  return owner === null ? Date.now() - since > WRITTEN_MS : !isRunning(owner);
}

function ownerOf(turn) {
  try {
    return Number(readFileSync(join(turn, OWNER), 'utf8'));
  } catch (error) {
    if (error.code === 'ENOENT') return null;
    throw error;
  }
}

function isRunning(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // There, and not ours.
    return error.code === 'EPERM';
  }
}

const OWNER = 'owner';
const WRITTEN_MS = 5000;
const WAIT_MS = 500;
/** No install takes so long. */
const LONGEST_MS = 600_000;

const hashOf = (content) => createHash('sha256').update(content).digest('hex');
