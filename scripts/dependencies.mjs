// Lists every package the lock file pins, and what is known against it, without a network: npm run dependencies
// `-- --ask` asks the registry for all notices it has (npm audit); the names and versions of the packages go there for that.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Complaint, runScript } from './lib/complaint.mjs';
import { faultsOf, noticesFor, otherRegistries, readDependencies } from './lib/dependencies.mjs';
import { ROOT } from './lib/paths.mjs';

const json = (path) => JSON.parse(readFileSync(join(ROOT, path), 'utf8'));
const say = (line = '') => process.stdout.write(`${line}\n`);

await runScript(async () => {
  const dependencies = readDependencies(json('package-lock.json'));
  const { gatheredOn, source, advisories } = json('shared/advisories.json');
  for (const it of dependencies) {
    const kind = it.isForTools ? 'tool' : 'program';
    const notes = [
      it.isOptional && 'optional',
      it.hasInstallScript && 'has an install script, which is never run',
      it.deprecated,
    ];
    say([it.name, it.version, it.licence, kind, ...notes.filter(Boolean)].join('\t'));
  }
  const count = (isSo) => dependencies.filter(isSo).length;
  const terms = new Map();
  for (const { licence } of dependencies) terms.set(licence, (terms.get(licence) ?? 0) + 1);
  say();
  say(
    `${dependencies.length} packages: ${count((it) => !it.isForTools)} of the program or wanted by one, ${count((it) => it.isForTools)} tools`,
  );
  say(
    `held to their bytes: ${count((it) => it.integrity !== null)}; with an install script: ${count((it) => it.hasInstallScript)}; given up by their makers: ${count((it) => it.deprecated !== null)}`,
  );
  say(
    `terms: ${[...terms]
      .sort((a, b) => b[1] - a[1])
      .map(([name, n]) => `${name} ${n}`)
      .join(', ')}`,
  );
  const notices = noticesFor(dependencies, advisories);
  say();
  say(`Known notices as of ${gatheredOn} (${advisories.length} looked at). ${source}`);
  for (const { id, package: name, version, what, standing } of notices)
    say(`${name} ${version}: ${what} (${id}). ${standing ?? 'OPEN'}`);
  if (notices.length === 0) say('None of them holds for a pinned version.');
  if (process.argv.includes('--ask')) ask();
  const faults = [...faultsOf(dependencies), ...otherRegistries().map((line) => `.npmrc names a registry: ${line}`)];
  if (notices.some(({ standing }) => standing === undefined)) faults.push('A notice above is open.');
  if (faults.length > 0) throw new Complaint(faults.join('\n'));
});

function ask() {
  const npm = spawnSync('npm audit --json', { cwd: ROOT, shell: true, encoding: 'utf8', maxBuffer: 1e8 });
  let report = null;
  try {
    report = JSON.parse(npm.stdout);
  } catch {
    // What is no report is told below.
  }
  say();
  if (report?.metadata?.vulnerabilities === undefined) {
    return say(
      `The registry gave no notices: ${report?.message ?? report?.error?.summary ?? npm.stderr.trim().split('\n')[0]}`,
    );
  }
  say(`The registry knows: ${JSON.stringify(report.metadata.vulnerabilities)}`);
  for (const it of Object.values(report.vulnerabilities)) {
    const about = it.via.map((via) => (typeof via === 'string' ? via : `${via.title} ${via.url}`)).join('; ');
    say(`${it.name} ${it.range}: ${it.severity}; ${about}`);
  }
}
