// Inputs that nobody would send, to every reader: npm run fuzz -- minutes=10 targets=obj,svg seed=7, or count=50000 for so many of each target.
// Each leg of inputs runs in a process of its own with bounds on time and memory; an input that fails is made small and kept in tests/fuzz/kept.
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { contentHash } from '../../src/base/hash.ts';
import { textTable } from '../bench/text-table.ts';
import { targetNamed, TARGETS } from './targets.ts';
import type { Target } from './target.ts';

const LEG = 20_000;
/** Where it is the time that is given, a leg goes on for about so long: readers that answer sooner get more inputs, ms. */
const LEG_MS = 60_000;
/** A process begins within so long, ms. */
const BEGIN_MS = 120_000;
/** An input that takes longer is ended with its process, ms. */
const HANG_MS = 15_000;
const HEAP_MB = 512;

const wishes = new Map(process.argv.slice(2).map((word) => word.split('=') as [string, string]));
const seed = Number(wishes.get('seed') ?? 1);
const minutes = Number(wishes.get('minutes') ?? (wishes.has('count') ? Infinity : 10));
const count = Number(wishes.get('count') ?? Infinity);
const legSize = Math.min(LEG, count);
const chosen = wishes.has('targets') ? (wishes.get('targets') ?? '').split(',').map(targetNamed) : TARGETS;
const folder = join(tmpdir(), `foamloft-fuzz-${process.pid}`);
mkdirSync(folder, { recursive: true });
// Built into one file: a process begins in a moment and runs at full speed.
await build({
  configFile: false,
  logLevel: 'error',
  ssr: { noExternal: true },
  build: {
    ssr: 'tests/fuzz/leg-process.ts',
    outDir: folder,
    minify: false,
    rollupOptions: { output: { entryFileNames: 'leg.mjs' } },
  },
});

interface LegTold {
  readonly inputs: number;
  readonly oks: number;
  readonly kinds: number;
  readonly slowestMs: number;
  readonly peakMb: number;
  readonly ms: number;
  readonly codes: readonly string[];
  readonly faults: readonly { readonly name: string; readonly fault: string; readonly base64: string }[];
}

class Tally {
  inputs = 0;
  oks = 0;
  kinds = 0;
  slowestMs = 0;
  peakMb = 0;
  ms = 0;
  readingMs = 0;
  readonly codes = new Set<string>();
  readonly faults = new Map<string, string>();
}

const tallies = new Map(chosen.map((target) => [target, new Tally()]));
const start = performance.now();
const isOver = (): boolean => performance.now() - start > 60_000 * minutes;

for (let leg = 0; !isOver() && leg * legSize < count; leg += 1) {
  for (const target of chosen) {
    if (isOver()) break;
    const tally = tallies.get(target) ?? new Tally();
    const rate = tally.inputs / Math.max(1, tally.readingMs);
    const timed = leg === 0 ? 2000 : Math.round(Math.min(300_000, Math.max(2000, rate * LEG_MS)));
    const inputs = Number.isFinite(count) ? Math.min(legSize, count - leg * legSize) : timed;
    await runOne(target, seed * 1_000_003 + leg, inputs, tally);
    const sum = [...tallies.values()].reduce((total, one) => total + one.inputs, 0);
    process.stdout.write(
      `${target.name} ${tally.inputs} inputs, ${tally.faults.size} faults, ${Math.round((1000 * tally.inputs) / Math.max(1, tally.readingMs))} a second; ${sum} in all\n`,
    );
  }
}
rmSync(folder, { recursive: true });
const all = [...tallies];
const sum = all.reduce((total, [, { inputs }]) => total + inputs, 0);
const rows = all.map(([{ name }, { inputs, oks, codes, kinds, slowestMs, peakMb, faults, readingMs }]) => [
  name,
  String(inputs),
  `${((100 * oks) / Math.max(1, inputs)).toFixed(0)} %`,
  String(codes.size),
  String(kinds),
  slowestMs.toFixed(0),
  peakMb.toFixed(0),
  String(Math.round((1000 * inputs) / Math.max(1, readingMs))),
  String(faults.size),
]);
process.stdout.write(
  `\nseed ${seed}, ${sum} inputs\n${textTable(['target', 'inputs', 'ok', 'codes', 'kinds', 'slowest ms', 'peak MB', 'a second', 'faults'], rows)}\n`,
);
for (const [{ name }, { faults }] of all)
  for (const [path, fault] of faults) process.stdout.write(`${name} ${path}: ${fault}\n`);
process.exitCode = all.some(([, { faults }]) => faults.size > 0) ? 1 : 0;

async function runOne(target: Target, legSeed: number, inputs: number, tally: Tally): Promise<void> {
  const file = join(folder, target.name);
  const began = performance.now();
  const words = [
    `--max-old-space-size=${HEAP_MB}`,
    join(folder, 'leg.mjs'),
    target.name,
    String(legSeed),
    String(inputs),
    file,
  ];
  writeFileSync(file, '');
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'pipe'] });
  let [told, said] = ['', ''];
  child.stdout.on('data', (text: Buffer) => (told += text.toString()));
  child.stderr.on('data', (text: Buffer) => (said = (said + text.toString()).slice(-2000)));
  let [last, since] = [-1, performance.now()];
  let isHung = false;
  const watch = setInterval(() => {
    const number = inHand(file).number;
    if (number !== last) [last, since] = [number, performance.now()];
    // The last is followed by making faults smaller, each try within its own bound.
    else if (performance.now() - since > (number + 1 >= inputs ? 40 * HANG_MS : number < 0 ? BEGIN_MS : HANG_MS)) {
      isHung = true;
      child.kill('SIGKILL');
    }
  }, 1000);
  const code = await new Promise<number | null>((resolve) => child.on('close', resolve));
  clearInterval(watch);
  tally.ms += performance.now() - began;
  if (code === 0) {
    const result = JSON.parse(told.trimEnd().split('\n').at(-1) ?? '') as LegTold;
    tally.inputs += result.inputs;
    tally.oks += result.oks;
    tally.readingMs += result.ms;
    tally.kinds = Math.max(tally.kinds, result.kinds);
    tally.slowestMs = Math.max(tally.slowestMs, result.slowestMs);
    tally.peakMb = Math.max(tally.peakMb, result.peakMb);
    for (const one of result.codes) tally.codes.add(one);
    for (const { fault, base64 } of result.faults)
      await keep(target, fault, new Uint8Array(Buffer.from(base64, 'base64')), tally);
    return;
  }
  const { number, bytes } = inHand(file);
  tally.inputs += number + 1;
  await keep(
    target,
    isHung ? `hangs for ${HANG_MS} ms` : `its process ended: ${said.trim().slice(0, 400)}`,
    bytes,
    tally,
  );
}

function inHand(file: string): { readonly number: number; readonly bytes: Uint8Array } {
  const all = readFileSync(file);
  if (all.length < 8) return { number: -1, bytes: new Uint8Array(0) };
  return { number: all.readUInt32LE(0), bytes: new Uint8Array(all.subarray(8, 8 + all.readUInt32LE(4))) };
}

async function keep(target: Target, fault: string, bytes: Uint8Array, tally: Tally): Promise<void> {
  const path = join('tests/fuzz/kept', `${target.name}-${(await contentHash(bytes)).slice(0, 8)}.${target.ending}`);
  writeFileSync(path, bytes);
  tally.faults.set(path, fault);
  process.stdout.write(`FAULT ${path} (${bytes.length} bytes)\n${fault}\n`);
}
