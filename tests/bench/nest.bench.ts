// Eight published strip packing tasks, by the command line as it is built: npm run bench:nest [-- --seconds 1,10,60 | --moves 20000,200000] [names…]
// What it finds is laid out anew from the task's own numbers and checked for overlaps here, without a line of the product.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { laidOutFaults, type LaidTask } from './laid-out-check.ts';
import { textTable } from './text-table.ts';

/** Mean density in per cent of the 2025 study (arXiv 2509.13329): 20 minutes on 16 cores. */
const PUBLISHED: Readonly<Record<string, number>> = {
  albano: 89.48,
  blaz1: 84.67,
  fu: 92.23,
  jakobs1: 89.08,
  shapes0: 68.59,
  shapes1: 75.68,
  shirts: 89.66,
  swim: 78.26,
};

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const words = process.argv.slice(2);
const at = words.findIndex((word) => word.startsWith('--'));
const [option, list] = at < 0 ? ['--seconds', '1,10,60'] : words.splice(at, 2);
const names = words.length > 0 ? words : Object.keys(PUBLISHED);
const amounts = list.split(',');
const folder = mkdtempSync(join(tmpdir(), 'nest-'));

const rows = names.map((name) => {
  const input = join(ROOT, 'tests/reference/nesting', `${name}.json`);
  const cells = amounts.map((amount) => {
    const out = join(folder, `${name}.json`);
    const run = spawnSync(process.execPath, [join(ROOT, 'dist/cli.js'), 'nest', input, option, amount, '--out', out], {
      encoding: 'utf8',
    });
    const density = /^density (\S+) %$/m.exec(run.stdout)?.[1];
    if (run.status !== 0 || density === undefined) throw new Error(`${name}: ${run.stderr}`);
    const text = readFileSync(out, 'utf8');
    const laid = JSON.parse(text) as LaidTask & { moves: number };
    const faults = laidOutFaults(JSON.parse(readFileSync(input, 'utf8')) as never, laid, Number(density));
    for (const fault of faults) process.stderr.write(`${name} ${amount}: ${fault}\n`);
    const sum = createHash('sha256').update(JSON.stringify(laid.places)).digest('hex').slice(0, 8);
    return { density: Number(density), moves: laid.moves, sum, isRight: faults.length === 0 };
  });
  const last = cells[cells.length - 1];
  return [
    name,
    ...cells.map(({ density }) => density.toFixed(2)),
    PUBLISHED[name].toFixed(2),
    (last.density - PUBLISHED[name]).toFixed(2),
    cells.map(({ moves }) => moves).join(' / '),
    cells.every(({ isRight }) => isRight) ? 'right' : 'WRONG',
    cells.map(({ sum }) => sum).join(' '),
  ];
});
rmSync(folder, { recursive: true });
process.stdout.write(
  `density in per cent; load of the machine ${loadavg()[0].toFixed(1)}\n` +
    textTable(
      [
        'task',
        ...amounts.map((amount) => `${option.slice(2)} ${amount}`),
        'published',
        'last less that',
        'moves',
        'check',
        'checksums',
      ],
      rows,
    ),
);
