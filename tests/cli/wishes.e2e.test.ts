import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Report } from '../reference/report-shape.ts';
import { runCli, sample, scratchFiles, scratchFolder } from './run-cli.ts';

/** The part of a project file that holds the wishes. */
interface Saved {
  project: { parts: [{ regions: unknown[]; edgeWishes: unknown[] }] };
}

let bracer = '';
beforeAll(() => {
  const { model, seams } = sample('bracer');
  const out = mkdtempSync(join(tmpdir(), 'foamloft-cli-'));
  expect(runCli('make', model, '--seams', seams, '--unit', 'mm', '--out', out).status).toBe(0);
  bracer = readFileSync(join(out, 'project.foamloft.json'), 'utf8');
  rmSync(out, { recursive: true });
});

/** The bracer's project as the command line saves it, with other wishes. */
function bracerWith(wishes: Partial<Saved['project']['parts'][0]>): string {
  const saved = JSON.parse(bracer) as Saved;
  Object.assign(saved.project.parts[0], wishes);
  const [path] = scratchFiles({ 'vain.foamloft.json': JSON.stringify(saved) });
  return path;
}

describe('a project whose wishes cannot be followed', () => {
  it('is made, and each is told on the terminal and in the report', () => {
    const out = join(scratchFolder(), 'out');
    const project = bracerWith({
      regions: [{ id: 'area-1', name: 'badge', faces: [99_999], give: 'stiff' }],
      edgeWishes: [{ edge: [0, 88_888], straight: true }],
    });
    const { status, stdout } = runCli('make', project, '--out', out);
    expect(status).toBe(0);
    const { findings } = JSON.parse(readFileSync(join(out, 'report.json'), 'utf8')) as Report;
    for (const code of ['wish/no-such-area', 'wish/no-such-edge']) {
      const text = findings.find((finding) => finding.code === code)?.text ?? 'nothing';
      expect(stdout).toContain(`warning: ${text}`);
    }
  });

  it('is refused where two areas have one id', () => {
    const area = { id: 'brow', name: 'brow', faces: [1], give: 'soft' };
    const { status, stderr } = runCli(
      'make',
      bracerWith({ regions: [area, area] }),
      '--out',
      join(scratchFolder(), 'o'),
    );
    expect(status).toBe(1);
    expect(stderr).toMatch(/vain\.foamloft\.json cannot be used: two of its areas have the id brow, .*\.\n$/);
  });
});
