import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { laidOutFaults, type LaidTask } from '../bench/laid-out-check.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { ROOT, runCli, scratchFolder } from './run-cli.ts';

const TASK = join(ROOT, 'tests/reference/nesting/fu.json');
const json = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));

describe('nest on the command line', () => {
  it('lays a task, tells its density on a line and writes a layout that holds from outside', () => {
    const out = join(scratchFolder(), 'layout.json');
    const { status, stdout, stderr } = runCli('nest', TASK, '--moves', '600', '--seed', '3', '--out', out);
    expect(status, stderr).toBe(0);
    const density = Number(/^density (\d+\.\d\d) %$/m.exec(stdout)?.[1]);
    expect(density).toBeGreaterThan(75);
    const laid = json(out) as LaidTask & { seed: number; moves: number };
    expect(schemaFaults(json(join(ROOT, 'shared/nest-layout.schema.json')) as Schema, laid)).toEqual([]);
    expect(laidOutFaults(json(TASK) as never, laid, density)).toEqual([]);
    expect([laid.seed, laid.moves]).toEqual([3, 600]);
  });

  it('says what is wrong with what it was told, and lays nothing', () => {
    const both = runCli('nest', TASK, '--moves', '1', '--seconds', '1');
    expect([both.status, both.stdout]).toEqual([2, '']);
    expect(both.stderr).toContain('not both');
  });
});
