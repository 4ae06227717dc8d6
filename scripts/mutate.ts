// Changes the code by one sign at a time and asks the tests whether they notice: npm run mutate -- folder=geom share=0.05 seed=1
// A folder has thousands of such changes, and each takes a second or two: so a share of its lines is drawn, in stretches that stand together,
// and the score is told with the interval in which that of the whole folder lies. The same seed draws the same stretches.
// `only=FILE:FROM-TO,…` takes these alone, to see whether a new test finds what was overlooked.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { drawStretches, intervalOf, linesOf, scoreOf, type Mutant } from './lib/mutants.ts';

const ROOT = fileURLToPath(new URL('../', import.meta.url));

/** What is changed, and the tests that stand near it: what only tests farther off notice counts as overlooked, so the score is one of the least. */
const FOLDERS: Readonly<Record<string, { readonly source: string; readonly tests: readonly string[] } | undefined>> = {
  geom: { source: 'src/geom', tests: ['tests/geom', 'tests/mesh'] },
  foam: { source: 'src/steps/foam', tests: ['tests/steps/foam'] },
  tile: { source: 'src/steps/tile', tests: ['tests/steps/tile', 'tests/steps/read-back'] },
};

const words: Readonly<Record<string, string | undefined>> = Object.fromEntries(
  process.argv.slice(2).map((word) => word.split('=', 2) as [string, string]),
);
const folder = FOLDERS[words.folder ?? ''];
if (folder === undefined) throw new Error(`Say folder=${Object.keys(FOLDERS).join('|')}.`);
const share = Number(words.share ?? 0.05);
const seed = Number(words.seed ?? 1);
if (!(share > 0 && share <= 1) || !Number.isInteger(seed))
  throw new Error('share is above 0 and up to 1, seed is whole.');

const files = readdirSync(join(ROOT, folder.source), { recursive: true, encoding: 'utf8' })
  .map((name) => `${folder.source}/${name}`)
  .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
  .sort();
const lines = files.map((file) => ({ file, count: linesOf(readFileSync(join(ROOT, file), 'utf8')) }));
const stretches = words.only?.split(',') ?? drawStretches(lines, share, seed);

const room = mkdtempSync(join(tmpdir(), 'foamloft-mutate-'));
try {
  const report = join(room, 'report.json');
  const config = join(room, 'config.json');
  writeFileSync(
    config,
    JSON.stringify({
      testRunner: 'vitest',
      plugins: ['@stryker-mutator/vitest-runner'],
      vitest: { configFile: 'scripts/vitest.mutate.config.ts', related: false },
      coverageAnalysis: 'perTest',
      // What is worked out once when a file is loaded cannot be told apart by test: each would need a run of all of them.
      ignoreStatic: true,
      concurrency: Number(words.at ?? 1),
      mutate: stretches,
      reporters: ['progress-append-only', 'json'],
      jsonReporter: { fileName: report },
      tempDirName: join(room, 'copy'),
      ignorePatterns: ['dist', 'tests/browser', 'samples/pictures'],
      timeoutMS: 20_000,
      allowEmpty: true,
    }),
  );
  const env = { ...process.env, FOAMLOFT_MUTATE_TESTS: folder.tests.join(',') };
  const run = spawnSync(
    process.execPath,
    [join(ROOT, 'node_modules/@stryker-mutator/core/bin/stryker.js'), 'run', config],
    {
      cwd: ROOT,
      env,
      stdio: 'inherit',
    },
  );
  if (run.status !== 0) throw new Error('The changes were not gone through to the end; it says why above.');
  tell(JSON.parse(readFileSync(report, 'utf8')) as Report, stretches);
} finally {
  rmSync(room, { recursive: true, force: true });
}

/** What the tool writes (mutation testing report schema). */
interface Report {
  readonly files: Readonly<
    Record<string, { readonly source: string; readonly mutants: readonly Omit<Mutant, 'file' | 'source'>[] }>
  >;
}

/** Score, what it may be for the whole folder, and every change that nobody noticed. */
function tell(report: Report, stretches: readonly string[]): void {
  const mutants: readonly Mutant[] = Object.entries(report.files).flatMap(([path, { mutants: found, source }]) =>
    found.map((mutant) => ({ ...mutant, file: relative(ROOT, join(ROOT, path)), source })),
  );
  const { noticed, overlooked, unreached, left } = scoreOf(mutants);
  for (const { file, location, mutatorName, replacement, source, status } of [...overlooked, ...unreached]) {
    const line = source.split('\n')[location.start.line - 1].trim();
    process.stdout.write(
      `${status === 'NoCoverage' ? 'not reached' : 'overlooked '} ${file}:${location.start.line}:${location.start.column} ${mutatorName} -> ${replacement?.replace(/\s+/g, ' ').slice(0, 90)}\n             ${line}\n`,
    );
  }
  const { low, high } = intervalOf(mutants, stretches);
  const all = noticed + overlooked.length + unreached.length;
  const percent = (value: number): string => (100 * value).toFixed(1);
  process.stdout.write(
    `\n${all} changes, ${noticed} noticed, ${overlooked.length} overlooked, ${unreached.length} where no test near by comes; ${left} left out (worked out at loading, or no program any more)\n` +
      `score ${percent(noticed / all)} %, of the whole folder ${percent(low)} to ${percent(high)} % (95 %, stretches drawn anew 2000 times)\n`,
  );
}
