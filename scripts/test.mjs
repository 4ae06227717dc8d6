// Everything that must hold before a change is kept: npm test
// `--long` adds what takes long and is seldom at fault.
// `--update-golden` writes the kept texts in tests/golden anew instead of comparing with them.
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { requireChromium } from './lib/chromium.mjs';
import { runScript } from './lib/complaint.mjs';
import { installPackages } from './lib/install.mjs';
import { checkNode } from './lib/node-version.mjs';
import { MODULES, ROOT } from './lib/paths.mjs';
import { runNode, Stages } from './lib/stages.mjs';
import { countTests } from './lib/test-count.mjs';

const TSC = join(MODULES, 'typescript/bin/tsc');
const ESLINT = join(MODULES, 'eslint/bin/eslint.js');
const VITEST = join(MODULES, 'vitest/vitest.mjs');
/** The unit tests are run in so many shares, each on one core. Each loads the sources and makes the samples for itself: no more than there are cores. */
const UNIT_SHARES = Math.min(4, Math.max(2, availableParallelism()));
/** So many files of window tests may fail beside other work before it is no longer put down to want of time. */
const MOST_AGAIN = 3;
const at = (file) => join(ROOT, 'scripts', file);

await runScript(async () => {
  checkNode();
  const stages = new Stages();
  const env = { ...process.env };
  if (process.argv.includes('--update-golden')) env.FOAMLOFT_UPDATE_GOLDEN = '1';
  if (process.argv.includes('--long')) env.FOAMLOFT_LONG = '1';

  await stages.run('packages', async () => {
    process.stdout.write(installPackages() ? '' : 'already there\n');
    return true;
  });
  await stages.run('browser', async () => {
    env.CHROMIUM = requireChromium();
    process.stdout.write(`${env.CHROMIUM}\n`);
    return true;
  });
  const isBuilt = await stages.run('build', () => runNode(at('build.mjs'), [], env));

  const reports = mkdtempSync(join(tmpdir(), 'foamloft-tests-'));
  const count = { passed: 0, failed: stages.failed.length };
  /** What each stage of tests that failed said. */
  const faults = new Map();
  const vitest = (name, projects, ...more) => ({
    name,
    work: async (write) => {
      const report = join(reports, `${name}.json`);
      const words = [
        'run',
        '--config',
        at('vitest.config.ts'),
        ...projects.flatMap((project) => ['--project', project]),
        ...more,
      ];
      const told = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
      const isGood = await runNode(VITEST, [...words, ...told], env, write);
      const counted = countTests(report, isGood);
      count.passed += counted.passed;
      count.failed += counted.failed;
      if (!isGood) faults.set(name, counted);
      return isGood;
    },
  });
  const units = Array.from({ length: UNIT_SHARES }, (_, i) =>
    vitest(
      `unit tests, share ${i + 1} of ${UNIT_SHARES}`,
      ['unit'],
      '--maxWorkers=1',
      `--shard=${i + 1}/${UNIT_SHARES}`,
    ),
  );
  // One browser that draws in software is enough beside other work.
  const inWindow = (name, files) => vitest(name, ['component', 'e2e'], ...files);
  const inBrowser = [inWindow('window', ['tests/browser'])];
  const onTerminal = [vitest('command line', ['e2e'], 'tests/cli', 'tests/house')];
  const check = (name, file, words) => ({
    name,
    work: async (write) => {
      const isGood = await runNode(file, words, env, write);
      if (!isGood) count.failed += 1;
      return isGood;
    },
  });
  const lint = check('lint', ESLINT, ['--config', at('eslint.config.js'), 'src', 'tests', 'scripts', 'samples']);
  const types = check('types', TSC, ['-p', 'tsconfig.json', '--noEmit']);
  try {
    if (!isBuilt) process.stdout.write('\nNothing was built, so the tests of what is built were left out.\n');
    const [browsers, terminal] = isBuilt ? [inBrowser, onTerminal] : [[], []];
    await stages.runSideBySide([...browsers, ...units, ...terminal, lint, types], Math.max(2, availableParallelism()));
    // A browser that draws in software beside three other runs may starve: files that failed there get one more run of their own, and that is said.
    const first = faults.get('window');
    if (first !== undefined && first.failedFiles.length > 0 && first.failedFiles.length <= MOST_AGAIN) {
      const again = inWindow(
        'window, once more alone',
        first.failedFiles.map((file) => relative(ROOT, file)),
      );
      const before = { ...count };
      const isGood = await stages.run(again.name, () => again.work((text) => process.stdout.write(text)));
      Object.assign(count, before);
      if (isGood) {
        stages.failed = stages.failed.filter((name) => name !== 'window');
        count.passed += first.failed;
        count.failed -= first.failed;
      }
    }
  } finally {
    rmSync(reports, { recursive: true, force: true });
  }

  for (const [name, { faults: lines }] of faults) {
    const isMended = !stages.failed.includes(name);
    process.stdout.write(
      `\nIn ${name}${isMended ? ', passed when run once more alone' : ''}:\n${lines.map((line) => `  ${line}\n`).join('')}`,
    );
  }
  if (stages.failed.length > 0) {
    process.stdout.write(`\nFailed: ${stages.failed.join(', ')}\n`);
    process.exitCode = 1;
  }
  process.stdout.write(`\n${count.passed} passed, ${count.failed} failed\n`);
});
