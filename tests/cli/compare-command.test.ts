import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { compareCommand } from '../../src/cli/compare-command.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { removeSeamEdges } from '../../src/project/commands.ts';
import { keepVersion } from '../../src/project/kept-commands.ts';
import { writeProjectFile } from '../../src/project/project-file.ts';
import { makeWorkbench, openPartedTray } from '../support/tray-workbench.ts';

let folder = '';
let path = '';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'foamloft-compare-'));
  path = join(folder, 'tray.foamloft.json');
  const { workbench } = makeWorkbench();
  await openPartedTray(workbench);
  const { project } = workbench;
  if (project === null) throw new Error('no project');
  const kept = keepVersion('first try', '2026-01-31T09:30:00Z').apply(project);
  const [part] = kept.parts;
  const joined = removeSeamEdges([part.seams.edges[0]]).apply(kept);
  const bytes = await workbench.workshop.getSource(part.source.hash);
  if (bytes === undefined) throw new Error('no bytes');
  const file = { fileName: part.source.fileName, bytes };
  writeFileSync(path, writeProjectFile(joined, new Map([[part.source.hash, file]])));
});

afterAll(() => rmSync(folder, { recursive: true }));

describe('compare', () => {
  it('sets a kept version beside the project as it is', async () => {
    const told = await compareCommand({ inputs: [path], version: 'first try', json: false });
    expect(told).toMatch(/^length of seam .* mm {2,}.* mm {2}\*$/m);
    expect(told).toMatch(/only in the first/);
  });

  it('says which versions there are where none has that name', async () => {
    const told = compareCommand({ inputs: [path], version: 'second', json: false });
    await expect(told).rejects.toThrow(Refused);
    await expect(told).rejects.toThrow('it keeps first try');
  });

  it('takes two projects, or one and a version', () => {
    const read = (...words: string[]): unknown => parseCommand(['compare', ...words], '2026-01-31');
    expect(read('a.json', 'b.json')).toEqual({
      name: 'compare',
      choices: { inputs: ['a.json', 'b.json'], json: false },
    });
    expect(read('a.json', '--kept', 'x', '--json')).toMatchObject({ choices: { version: 'x', json: true } });
    for (const words of [[], ['a.json'], ['a', 'b', 'c'], ['a', 'b', '--kept', 'x'], ['a', 'b', '--out', 'x']])
      expect(() => read(...words)).toThrow(WrongUsage);
    expect(() => parseCommand(['make', 'a.json', '--out', 'x', '--kept', 'y'], '2026-01-31')).toThrow(WrongUsage);
  });
});
