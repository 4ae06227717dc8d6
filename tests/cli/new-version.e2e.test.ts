import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { objOf, tube } from '../reference/handbook/polygon-solids.ts';
import { runCli } from './run-cli.ts';

/** A tube with a seam along it and a line across its faces, and the same tube of other sides. */
describe('make --new-version', () => {
  const folder = mkdtempSync(join(tmpdir(), 'new-version-'));
  const at = (name: string): string => join(folder, name);
  beforeAll(() => {
    writeFileSync(at('old.obj'), objOf(tube(24, 50, 50, () => 120)));
    writeFileSync(at('new.obj'), objOf(tube(30, 50, 50, () => 120)));
    const across = {
      points: [
        { face: 12, bary: [0.5, 0.5, 0, 0] },
        { face: 12, bary: [0, 0, 0.5, 0.5] },
      ],
    };
    writeFileSync(at('seams.json'), JSON.stringify({ version: 1, edges: [[0, 24]], paths: [across] }));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it('makes the templates on the new file, parted where the old one was', () => {
    const made = runCli('make', at('old.obj'), '--unit', 'mm', '--seams', at('seams.json'), '--out', at('first'));
    expect(made.status).toBe(0);
    const project = join(at('first'), 'project.foamloft.json');
    const renewed = runCli('make', project, '--new-version', at('new.obj'), '--out', at('second'));
    expect(renewed.status).toBe(0);
    const report = JSON.parse(readFileSync(join(at('second'), 'report.json'), 'utf8')) as {
      pieces: unknown[];
      seams: { kind: string; trueLengthMm: number }[];
      model: { fileName?: string };
      findings: { code: string }[];
    };
    expect(report.pieces).toHaveLength(2);
    expect(report.seams.filter(({ kind }) => kind !== 'open').map((seam) => Math.round(seam.trueLengthMm))).toEqual([
      120, 120,
    ]);
    expect(report.findings.map(({ code }) => code)).toContain('carry/seams');
  });

  it('says which file cannot be read', () => {
    const refused = runCli(
      'make',
      at('old.obj'),
      '--unit',
      'mm',
      '--new-version',
      at('none.obj'),
      '--out',
      at('third'),
    );
    expect(refused.status).not.toBe(0);
    expect(refused.stderr).toContain('none.obj');
  });
});
