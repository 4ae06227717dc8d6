// Everything that must hold before a change is kept: npm test
// `--update-golden` writes the kept texts in tests/golden anew instead of comparing with them.
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
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
const at = (file) => join(ROOT, 'scripts', file);

await runScript(async () => {
  checkNode();
  const stages = new Stages();
  const env = { ...process.env };
  if (process.argv.includes('--update-golden')) env.FOAMLOFT_UPDATE_GOLDEN = '1';

  await stages.run('packages', async () => {
    process.stdout.write(installPackages() ? '' : 'already there\n');
    return true;
  });
  await stages.run('browser', async () => {
    env.CHROMIUM = requireChromium();
    process.stdout.write(`${env.CHROMIUM}\n`);
    return true;
  });
  // Each of the two keeps one core busy.
  await Promise.all([
    stages.run('types', () => runNode(TSC, ['-p', 'tsconfig.json', '--noEmit'], env)),
    stages.run('lint', () =>
      runNode(ESLINT, ['--config', at('eslint.config.js'), 'src', 'tests', 'scripts', 'samples'], env),
    ),
  ]);
  const isBuilt = await stages.run('build', () => runNode(at('build.mjs'), [], env));

  const reports = mkdtempSync(join(tmpdir(), 'foamloft-tests-'));
  const count = { passed: 0, failed: stages.failed.length };
  const vitest = async (name, projects, ...more) => {
    const report = join(reports, `${projects[0]}.json`);
    let counted;
    await stages.run(name, async () => {
      const words = [
        'run',
        '--config',
        at('vitest.config.ts'),
        ...projects.flatMap((project) => ['--project', project]),
        ...more,
      ];
      const isGood = await runNode(
        VITEST,
        [...words, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
        env,
      );
      counted = countTests(report, isGood);
      return isGood;
    });
    count.passed += counted.passed;
    count.failed += counted.failed;
  };
  try {
    // Left to itself it would leave one of two cores idle.
    await vitest('unit tests', ['unit'], `--maxWorkers=${Math.max(2, availableParallelism() - 1)}`);
    if (isBuilt) await vitest('tests of what was built', ['component', 'e2e']);
    else process.stdout.write('\nNothing was built, so the tests of what is built were left out.\n');
  } finally {
    rmSync(reports, { recursive: true, force: true });
  }

  if (stages.failed.length > 0) {
    process.stdout.write(`\nFailed: ${stages.failed.join(', ')}\n`);
    process.exitCode = 1;
  }
  process.stdout.write(`\n${count.passed} passed, ${count.failed} failed\n`);
});
