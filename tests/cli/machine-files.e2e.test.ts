import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runCli, sample, scratchFolder } from './run-cli.ts';

const { model, seams } = sample('bracer');

it('writes what machines take beside the templates, after what a laser must never cut', () => {
  const out = scratchFolder();
  const { status, stdout, stderr } = runCli(
    ...['make', model, '--seams', seams, '--out', out, '--dxf', '--svg-sheets', '--png', '20', '--stl', '--obj'],
    ...['--cutter', 'laser', '--bridges', '3,2', '--smaller', '10'],
  );
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toMatch(/^Before a laser cuts foam:\n {2}PVC and vinyl: /);
  expect(stdout).toContain('A machine cuts upright');
  const text = (name: string): string => readFileSync(join(out, name), 'latin1');
  expect(text('sheet-1.dxf')).toContain('PVC and vinyl');
  expect(text('sheet-1.svg')).toContain('PVC and vinyl');
  expect(text('sheet-1-filled.svg')).toContain('class="area"');
  expect(text('sheet-1.png').slice(1, 4)).toBe('PNG');
  expect(text('page-1-scale.png').slice(1, 4)).toBe('PNG');
  for (const name of ['prop.stl', 'prop.obj', 'prop-1-to-10.stl', 'prop-1-to-10.obj', 'flat-pieces.obj'])
    expect(existsSync(join(out, name)), name).toBe(true);
  // A sheet that is no part of the job any more must not be cut by mistake.
  appendFileSync(join(out, 'prop.obj'), '# mine\n');
  const again = runCli('make', model, '--seams', seams, '--out', out);
  expect(again.stdout).toMatch(/^removed, written by an earlier run .*: .*sheet-1\.dxf/m);
  expect(again.stdout).toMatch(/^of an earlier run .*kept.*: prop\.obj$/m);
  expect(['sheet-1.dxf', 'sheet-1.png', 'prop.stl', 'prop.obj'].map((name) => existsSync(join(out, name)))).toEqual([
    false,
    false,
    false,
    true,
  ]);
});

it('refuses a picture no program would open, and writes nothing', () => {
  const out = join(scratchFolder(), 'new');
  const { status, stderr } = runCli('make', model, '--seams', seams, '--out', out, '--png', '2400');
  expect(status).toBe(1);
  expect(stderr).toMatch(
    /^.*At 2400 dpi sheet 1 would be \d+ × \d+ dots, which few programs open: take \d+ dpi or less\.\n$/,
  );
  expect(existsSync(out)).toBe(false);
});
