import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { KIT } from '../../samples/sample-set.ts';
import { IS_LONG } from '../support/long.ts';
import { ROOT, runCli, scratchFiles, scratchFolder } from './run-cli.ts';

interface Report {
  readonly pieces: readonly { readonly name: string }[];
  readonly plain: readonly { readonly part: string; readonly quantity: number }[];
  readonly plainParts: readonly { readonly id: string; readonly name: string }[];
  readonly sheets: readonly unknown[];
  readonly pages: { readonly count: number };
  readonly findings: readonly { readonly severity: string; readonly text: string }[];
}

const ROOF = 'v 0 0 0\nv 90 0 0\nv 90 0 90\nv 0 0 90\nv 0 60 45\nv 90 60 45\nf 1 2 6 5\nf 3 4 5 6\n';

it('two sculpts and a part of another kind are planned from one file', () => {
  const roof = { kind: 'sculpt', file: 'roof.obj', unit: 'mm' };
  const post = { kind: 'shape', name: 'Post', shape: 'pipe_wrap', sizes: { diameter: '60 mm', length: '90 mm' } };
  const beside = { ...roof, name: 'Shed', foam: '2 mm', place: { at: [200, 0, 0] } };
  const [parts] = scratchFiles({
    'roofs.parts.json': JSON.stringify({ version: 1, parts: [{ ...roof, name: 'Roof' }, beside, post] }),
    'roof.obj': ROOF,
  });
  const out = join(scratchFolder(), 'roofs');
  const { status, stdout, stderr } = runCli('make', '--parts', parts, '--name', 'Two roofs', '--out', out);
  expect(stderr).toBe('');
  expect(status).toBe(0);
  expect(stdout).toMatch(/^3 pieces, \d+ pages/);
  const report = JSON.parse(readFileSync(join(out, 'report.json'), 'utf8')) as Report;
  expect(report.pieces.map(({ name }) => name)).toEqual(
    ['Roof', 'Shed'].map((word): unknown => expect.stringContaining(word)),
  );
  expect(readFileSync(join(out, 'project.foamloft.json'), 'utf8')).toContain('"name": "Two roofs"');
});

it.runIf(IS_LONG)('a maul and a lantern are planned in one run, all parts of both', () => {
  const out = join(scratchFolder(), 'kit');
  const kit = join(ROOT, 'samples/kit.parts.json');
  const { status, stdout, stderr } = runCli('make', '--parts', kit, '--date', '2026-03-01', '--out', out);
  expect(stderr).toBe('');
  expect(status).toBe(0);
  const textOf = (name: string): string => readFileSync(join(out, name), 'utf8');
  // What the window opens is what the command line makes.
  expect(textOf('project.foamloft.json')).toBe(readFileSync(join(ROOT, 'samples', KIT.projectFile), 'utf8'));
  const report = JSON.parse(textOf('report.json')) as Report;
  expect(report.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(report.pieces).toHaveLength(17);
  const cut = report.plainParts.map(({ id, name }) => [
    name,
    report.plain.filter(({ part }) => part === id).reduce((sum, { quantity }) => sum + quantity, 0),
  ]);
  expect(Object.fromEntries(cut)).toEqual({
    ...{ Handle: 5, Pommel: 6, Collar: 1, 'Crown ring': 1, Crown: 2, 'Hammer badge': 4, 'Cover strips': 8 },
    ...{ Floor: 1, Knob: 5, 'Carrying ring': 12, 'Roof badge': 12, Battery: 2, Lamp: 0 },
  });
  expect(report.pages.count).toBe(38);
  expect(stdout).toContain('52 pieces, 38 pages');
  expect(stdout).toContain('glued in 21 steps');
  for (const mm of [2, 6, 10]) expect(stdout).toContain(`EVA ${mm} mm, 1000 × 2000: 1 sheet to buy`);
});
