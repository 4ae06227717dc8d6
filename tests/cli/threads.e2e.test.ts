import { spawnSync } from 'node:child_process';
import { cpSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { domeModel } from '../bench/dome-model.ts';
import { CLI, ROOT, scratchFiles, scratchFolder } from './run-cli.ts';

const DOME = domeModel(18_000);

/** Runs a command line that may lie anywhere. @returns the bytes of its report and pieces, and the threads it had. */
function make(cli: string): { report: Buffer; pieces: Buffer; threads: number } {
  const [model, seams] = scratchFiles({
    'dome.obj': DOME.obj,
    'dome.seams.json': JSON.stringify({ version: 1, edges: DOME.seams }),
  });
  const out = join(scratchFolder(), 'out');
  const words = ['make', model, '--seams', seams, '--unit', 'mm', '--date', '2026-03-01', '--out', out];
  const { status, stderr } = spawnSync(process.execPath, [cli, ...words], { encoding: 'utf8' });
  expect(stderr).toBe('');
  expect(status).toBe(0);
  const { threads } = JSON.parse(readFileSync(join(out, 'timings.json'), 'utf8')) as { threads: number };
  return { report: readFileSync(join(out, 'report.json')), pieces: readFileSync(join(out, 'pieces.svg')), threads };
}

describe('threads of the command line', () => {
  it('make what it makes alone, to the byte', () => {
    const folder = scratchFolder();
    const alone = join(folder, 'cli.js');
    cpSync(CLI, alone);
    cpSync(join(ROOT, 'dist/fonts'), join(folder, 'fonts'), { recursive: true });
    const together = make(CLI);
    const single = make(alone);
    expect(together.threads).toBe(availableParallelism() < 2 ? 0 : Math.min(8, availableParallelism()));
    // The file of the threads does not lie beside this one.
    expect(single.threads).toBe(0);
    expect(together.report.equals(single.report)).toBe(true);
    expect(together.pieces.equals(single.pieces)).toBe(true);
  });
});
