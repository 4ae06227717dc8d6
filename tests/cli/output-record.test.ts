import { mkdirSync, mkdtempSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { clearLeftOver, leftOver, RECORD_NAME, recordOf } from '../../src/cli/output-record.ts';

const FIRST = new Map<string, Uint8Array | string>([
  ['templates.pdf', 'pages'],
  ['sheet-1.svg', 'one'],
  ['sheet-2.svg', 'two'],
  ['sheet-2.dxf', Uint8Array.of(1, 2, 3)],
]);
const NOW = new Set(['templates.pdf', 'sheet-1.svg']);

let folder = '';
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'record-'));
  for (const [name, content] of FIRST) writeFileSync(join(folder, name), content);
  writeFileSync(join(folder, RECORD_NAME), await recordOf(FIRST));
});

describe('what an earlier run has left', () => {
  it('goes where it is as it was written, and is told', async () => {
    const left = await leftOver(folder, NOW, []);
    expect(left).toEqual({ unchanged: ['sheet-2.svg', 'sheet-2.dxf'], kept: [], unknown: [] });
    expect(await clearLeftOver(folder, left)).toEqual([
      'removed, written by an earlier run and no part of this one: sheet-2.svg, sheet-2.dxf',
    ]);
    expect(readdirSync(folder).sort()).toEqual([RECORD_NAME, 'sheet-1.svg', 'templates.pdf']);
  });

  it('stays where it was changed since, is read now, or is a link', async () => {
    writeFileSync(join(folder, 'sheet-2.svg'), 'two, with a line of mine');
    expect(await leftOver(folder, NOW, [join(folder, 'sheet-2.dxf')])).toEqual({
      unchanged: [],
      kept: ['sheet-2.svg', 'sheet-2.dxf'],
      unknown: [],
    });
    const record = await recordOf(new Map([['mock-up.pdf', 'pages']]));
    writeFileSync(join(folder, RECORD_NAME), record);
    symlinkSync(join(folder, 'templates.pdf'), join(folder, 'mock-up.pdf'));
    expect((await leftOver(folder, NOW, [])).unchanged).toEqual([]);
  });

  it('is never more than the record names, in its own folder', async () => {
    const outside = mkdtempSync(join(tmpdir(), 'outside-'));
    writeFileSync(join(outside, 'mine.txt'), 'mine');
    mkdirSync(join(folder, 'sub'));
    writeFileSync(join(folder, 'sub', 'mine.txt'), 'mine');
    writeFileSync(join(folder, 'page-1-scale.png'), 'mine?');
    writeFileSync(join(folder, 'notes.txt'), 'mine');
    writeFileSync(join(folder, 'mine.txt'), 'mine');
    const up = `../${outside.split('/').at(-1)}/mine.txt`;
    const names = [join(outside, 'mine.txt'), up, 'sub/mine.txt', '..', 'sub', 'mine.txt'];
    writeFileSync(join(folder, RECORD_NAME), await recordOf(new Map(names.map((name) => [name, 'mine']))));
    const left = await leftOver(folder, NOW, []);
    expect(left).toEqual({ unchanged: [], kept: [], unknown: ['page-1-scale.png', 'sheet-2.dxf', 'sheet-2.svg'] });
    const before = readdirSync(folder);
    expect(await clearLeftOver(folder, left)).toEqual([
      'no part of this run, maybe of an earlier one; look before you cut by them: page-1-scale.png, sheet-2.dxf, sheet-2.svg',
    ]);
    expect(readdirSync(folder)).toEqual(before);
  });

  it.each(['', '[]', '{"files": 3}', '{"files": [null, {"name": 1, "sha256": 2}, {"name": "sheet-2.svg"}]}'])(
    'is unknown where the record says %s',
    async (text) => {
      writeFileSync(join(folder, RECORD_NAME), text);
      expect((await leftOver(folder, NOW, [])).unchanged).toEqual([]);
    },
  );

  it('is nothing where there is no folder yet', async () => {
    expect(await leftOver(join(folder, 'new'), NOW, [])).toEqual({ unchanged: [], kept: [], unknown: [] });
  });
});
