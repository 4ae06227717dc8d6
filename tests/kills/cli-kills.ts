// Whether files outlive a command that is ended while it writes: npm run kills:cli [-- times=200 seed=1] (after npm run build)
// The command line writes over a folder of an earlier run and is ended before one of its changes on the disk, drawn at random, or half
// way through a write. Every file must be whole, old or new; where both
// are there, the note says so; the next run must leave its own files alone, no draft and no note, and must have said what it took away.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { seededRandom } from '../../src/base/random.ts';
import { UNFINISHED_NAME } from '../../src/cli/output-draft.ts';

const words = new Map(process.argv.slice(2).map((word) => word.split('=') as [string, string]));
const times = Number(words.get('times') ?? 200);
const seed = Number(words.get('seed') ?? 1);
const random = seededRandom(seed);
const fromRoot = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const HOOK = fromRoot('tests/kills/end-at.cjs');
const CLI = words.get('cli') ?? fromRoot('dist/cli.js');

const home = await mkdtemp(join(tmpdir(), 'foamloft-cli-kills-'));
const WRITER = join(home, 'writer', 'writer.js');
await build({
  configFile: false,
  logLevel: 'error',
  build: {
    ssr: fromRoot('tests/kills/writer.ts'),
    outDir: join(home, 'writer'),
    rolldownOptions: { output: { format: 'es' } },
  },
});
await writeFile(join(home, 'writer', 'package.json'), '{"type":"module"}');

/** Files of one finished run: the SHA-256 of each by its name. */
type Files = ReadonlyMap<string, string>;

/** Two ways to call the same command, which write other bytes under the same names. */
interface Job {
  readonly name: string;
  /** How often it is ended, as against the others. */
  readonly share: number;
  readonly ways: readonly [readonly string[], readonly string[]];
  /** Files that are other at each run. */
  readonly unlike: readonly string[];
  /** `writer`: only what writes, which is sooner there than the whole command line; left out, that. */
  readonly by?: 'writer';
}

const bracer = [
  'make',
  fromRoot('samples/bracer.obj'),
  '--seams',
  fromRoot('samples/bracer.seams.json'),
  '--unit',
  'mm',
];
const JOBS: readonly Job[] = [
  {
    name: 'files',
    share: 0.9,
    ways: [['1'], ['2']],
    unlike: [],
    by: 'writer',
  },
  {
    name: 'shape',
    share: 0.08,
    ways: [
      ['shape', 'cone', 'base_radius=100', 'pieces=12'],
      ['shape', 'cone', 'base_radius=120', 'pieces=12'],
    ],
    unlike: [],
  },
  {
    name: 'make',
    share: 0.02,
    ways: [
      [...bracer, '--date', '2026-01-01'],
      [...bracer, '--date', '2026-01-02', '--thickness', '5'],
    ],
    unlike: ['timings.json'],
  },
];

async function filesOf(folder: string, without: readonly string[] = []): Promise<Map<string, string>> {
  const files = new Map<string, string>();
  for (const name of await readdir(folder)) {
    if (name.startsWith('.draft-') || without.includes(name)) continue;
    files.set(
      name,
      createHash('sha256')
        .update(await readFile(join(folder, name)))
        .digest('hex'),
    );
  }
  return files;
}

/** What is run: the command line, or only what writes. */
let program = CLI;

function run(way: readonly string[], folder: string): string {
  const { status, stderr } = spawnSync(process.execPath, [program, ...way, '--out', folder], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${way.join(' ')}: ${stderr}`);
  return stderr;
}

/** Runs a command that ends before its nth change on the disk. @returns whether it was ended. */
function killed(way: readonly string[], folder: string, nth: number): boolean {
  const env = { ...process.env, FOAMLOFT_END_AT: String(nth) };
  return (
    spawnSync(process.execPath, ['--require', HOOK, program, ...way, '--out', folder], { env }).signal === 'SIGKILL'
  );
}

/** How many changes on the disk a run makes. */
function changesOf(way: readonly string[], folder: string): number {
  const env = { ...process.env, FOAMLOFT_END_AT: '0' };
  const { stderr } = spawnSync(process.execPath, ['--require', HOOK, program, ...way, '--out', folder], {
    env,
    encoding: 'utf8',
  });
  return Number(/calls (\d+)/.exec(stderr)?.[1]);
}

const tally = { kills: 0, allOld: 0, allNew: 0, mixed: 0, drafts: 0, said: 0, tooLate: 0 };
const faults: string[] = [];
const fault = (text: string): void => {
  faults.push(text);
  console.log(text);
};

try {
  for (const { name, share, ways, unlike, by } of JOBS) {
    program = by === 'writer' ? WRITER : CLI;
    const known: Files[] = [];
    for (const [i, way] of ways.entries()) {
      const clean = join(home, `${name}-${i}`);
      run(way, clean);
      known.push(await filesOf(clean, unlike));
    }
    const folder = join(home, name);
    run(ways[0], folder);
    let old = 0;
    const changes = changesOf(ways[0], folder);
    const due = Math.round(times * share);
    for (let kill = 0; kill < due;) {
      const at = `${name}, kill ${kill + 1}`;
      const next = 1 - old;
      const isEnded = killed(ways[next], folder, 1 + Math.floor(random() * changes));
      const entries = await readdir(folder);
      const hasNote = entries.includes(UNFINISHED_NAME);
      const drafts = entries.filter((entry) => entry.startsWith('.draft-'));
      const found = await filesOf(folder, [...unlike, UNFINISHED_NAME]);
      if (!isEnded) {
        // It made fewer changes than the run they were counted of.
        tally.tooLate += 1;
        old = next;
        continue;
      }
      kill += 1;
      tally.kills += 1;
      let [olds, news] = [0, 0];
      for (const file of known[old].keys()) if (!found.has(file)) fault(`${at}: ${file} is gone`);
      for (const [file, hash] of found) {
        const [isOld, isNew] = [known[old].get(file) === hash, known[next].get(file) === hash];
        if (!isOld && !isNew) fault(`${at}: ${file} is neither old nor new`);
        else if (!isNew) olds += 1;
        else if (!isOld) news += 1;
      }
      if (olds > 0 && news > 0) {
        tally.mixed += 1;
        if (!hasNote) fault(`${at}: files of two runs, and nothing says so`);
      } else if (news > 0) tally.allNew += 1;
      else tally.allOld += 1;
      if (drafts.length > 0) tally.drafts += 1;
      for (const file of unlike) JSON.parse(await readFile(join(folder, file), 'utf8'));
      const told = run(ways[next], folder);
      if (drafts.every((draft) => told.includes(draft))) tally.said += 1;
      else fault(`${at}: nothing was said of ${drafts.join(', ')}`);
      if (hasNote && !told.includes('an earlier run was ended')) fault(`${at}: nothing was said of files of two runs`);
      const after = await filesOf(folder, unlike);
      const left = (await readdir(folder)).filter((entry) => entry.startsWith('.draft-'));
      if (left.length > 0) fault(`${at}: ${left.join(', ')} stayed`);
      for (const [file, hash] of known[next]) if (after.get(file) !== hash) fault(`${at}: ${file} was not mended`);
      for (const file of after.keys()) if (!known[next].has(file)) fault(`${at}: ${file} stayed`);
      old = next;
      if (kill % 20 === 0)
        console.log(`${name}: ${kill} kills, ${JSON.stringify(tally)}, ${changes} changes on the disk a run`);
    }
  }
} finally {
  await rm(home, { recursive: true, force: true });
}
console.log(`\n${tally.kills} runs ended while they wrote (seed ${seed}); ${tally.tooLate} were over first:`);
console.log(`  all files old: ${tally.allOld}, all new: ${tally.allNew}, of both, and a note says so: ${tally.mixed}`);
console.log(`  drafts left: ${tally.drafts}; the next run took them away and said so: ${tally.said} of ${tally.kills}`);
console.log(`  faults: ${faults.length}`);
if (faults.length > 0) process.exitCode = 1;
