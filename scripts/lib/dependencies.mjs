import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './paths.mjs';

/** Terms under which a package may be built in: they ask for no more than to be named. */
const FOR_THE_PROGRAM = [
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BSL-1.0',
  'ISC',
  'MIT',
  'OFL-1.1',
  'Unlicense',
  'Zlib',
  'Bitstream-Vera',
];
/** Those of tools, which nobody is given: so much the more. */
const FOR_TOOLS = [...FOR_THE_PROGRAM, 'BlueOak-1.0.0', 'CC-BY-4.0', 'CC0-1.0', 'MPL-2.0'];

/** Short names of terms that a package only describes in words, read by a person. */
const IN_WORDS = { 'SEE LICENSE IN README.md AND LICENSE': 'Bitstream-Vera' };

/**
 * A package as the lock file pins it.
 * @typedef {{ name: string, path: string, version: string, licence: string, isForTools: boolean, isOptional: boolean, resolved: string | null, integrity: string | null, hasInstallScript: boolean, deprecated: string | null }} Dependency
 */

/** Every package of a lock file, by name. A place it is fetched from stands in none of ours: then it is the machine's own source of packages. @returns {Dependency[]} */
export function readDependencies(lock) {
  return Object.entries(lock.packages)
    .filter(([path]) => path !== '')
    .map(([path, it]) => ({
      name: path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
      path,
      version: it.version ?? '',
      licence: IN_WORDS[it.license] ?? it.license ?? '',
      isForTools: it.dev === true,
      isOptional: it.optional === true || it.devOptional === true,
      resolved: it.link === true ? 'a folder' : (it.resolved ?? null),
      integrity: it.integrity ?? null,
      hasInstallScript: it.hasInstallScript === true,
      deprecated: it.deprecated ?? null,
    }))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** Whether terms are among those allowed: of terms with OR one is enough, of terms with AND all are needed. */
export function isAllowed(licence, isForTools) {
  const allowed = isForTools ? FOR_TOOLS : FOR_THE_PROGRAM;
  return licence
    .replace(/^\((.*)\)$/, '$1')
    .split(' OR ')
    .some((choice) => choice.split(' AND ').every((one) => allowed.includes(one)));
}

/** What must not be, a sentence each. @param {readonly Dependency[]} dependencies @returns {string[]} */
export function faultsOf(dependencies) {
  return dependencies.flatMap((it) => {
    const faults = [];
    const name = `${it.name} ${it.version}`;
    if (!/^\d+\.\d+\.\d+/.test(it.version)) faults.push(`${name} is pinned to no version.`);
    if (!isAllowed(it.licence, it.isForTools))
      faults.push(`${name} has terms nobody has allowed: ${it.licence || 'none'}.`);
    if (it.resolved !== null) faults.push(`${name} comes from ${it.resolved}.`);
    if (!/^sha512-[\w+/]{86}==$/.test(it.integrity ?? ''))
      faults.push(`${name} is not held to its bytes by a SHA-512.`);
    return faults;
  });
}

/** Notices that hold for what is pinned: each with its package. `below`: the first version without the fault. */
export function noticesFor(dependencies, advisories) {
  return advisories.flatMap((advisory) =>
    dependencies
      .filter((it) => it.name === advisory.package && isBelow(it.version, advisory.below))
      .map((it) => ({ ...advisory, version: it.version })),
  );
}

/** Whether one version comes before another; what follows a hyphen comes before the version without it. */
export function isBelow(version, limit) {
  const [a, b] = [version, limit].map((text) => text.split('-'));
  const [left, right] = [a[0], b[0]].map((text) => text.split('.').map(Number));
  for (let i = 0; i < 3; i += 1) if (left[i] !== right[i]) return left[i] < right[i];
  return a.length > b.length;
}

/** Other registries that the settings of npm beside the lock file name; there are none. @returns {string[]} */
export function otherRegistries() {
  const path = join(ROOT, '.npmrc');
  const lines = existsSync(path) ? readFileSync(path, 'utf8').split('\n') : [];
  return lines.filter((line) => /registry\s*=/.test(line) && !/lockfile/.test(line));
}
