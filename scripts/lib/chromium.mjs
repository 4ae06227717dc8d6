// The browser the tests run in: one that is on the machine, or Debian's own.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { Complaint } from './complaint.mjs';

/**
 * Root needs `--no-sandbox`; 3D is drawn in software, so that pictures do not depend on the machine; small /dev/shm of containers
 * is not used; nothing runs in the background that would ask the net for something. The page itself is painted by the processor at once,
 * not by one that plays a graphics card: an app is open in half the time.
 */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-gpu-rasterization',
  '--disable-dev-shm-usage',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'msedge'];
const MAC_PLACES = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];
const WINDOWS_PLACES = [
  'Chromium\\Application\\chrome.exe',
  'Google\\Chrome\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
];

/** The path of a Chromium on this machine, or undefined. `$CHROMIUM` wins; when it names nothing, that is said. */
export function findChromium(env = process.env, platform = process.platform) {
  if (env.CHROMIUM) {
    if (existsSync(env.CHROMIUM)) return env.CHROMIUM;
    throw new Complaint(`CHROMIUM says ${env.CHROMIUM}, and there is no such file: correct it or unset it.`, 2);
  }
  return places(env, platform).find((path) => existsSync(path));
}

function places(env, platform) {
  const ending = platform === 'win32' ? '.exe' : '';
  const onPath = (env.PATH ?? env.Path ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .flatMap((folder) => NAMES.map((name) => join(folder, name + ending)));
  if (platform === 'darwin') return [...onPath, ...MAC_PLACES];
  if (platform !== 'win32') return onPath;
  const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter(Boolean);
  return [...onPath, ...roots.flatMap((root) => WINDOWS_PLACES.map((place) => `${root}\\${place}`))];
}

/** The path of a Chromium, installed from Debian when there is none and this process may. */
export function requireChromium() {
  const found = findChromium() ?? (mayInstall() ? installFromDebian() : undefined);
  if (found) return found;
  throw new Complaint(
    'The browser tests need Chromium, and none was found. Run: sudo apt-get install chromium, or set CHROMIUM to the path of one.',
    2,
  );
}

function mayInstall() {
  return process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/etc/debian_version');
}

function installFromDebian() {
  process.stdout.write('No Chromium found: installing it with apt-get.\n');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const words of [
    ['update', '-q'],
    ['install', '-y', '-q', '--no-install-recommends', 'chromium'],
  ]) {
    const apt = spawnSync('apt-get', words, { env, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
    if (apt.status !== 0) {
      process.stderr.write(`${apt.stdout ?? ''}${apt.stderr ?? apt.error?.message ?? ''}`);
      return undefined;
    }
  }
  return findChromium();
}
