import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { foamId } from '../../src/base/ids.ts';
import type { HeldCopy, StockSheet } from '../../src/model/stock.ts';
import type { Command } from '../../src/project/commands.ts';
import { fillOf, USUAL_FILL } from '../../src/project/fill-rule.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import {
  addStockSheet,
  changeStockSheet,
  forgetLayout,
  groupPieces,
  holdCopy,
  keepLayout,
  keepOffcut,
  releaseCopy,
  removeStockSheet,
  setFillRule,
} from '../../src/project/stock-commands.ts';
import { cleanStockSheet, newStockId } from '../../src/project/stock-sheet.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';

const SCHEMA = JSON.parse(readFileSync(new URL('../../shared/project.schema.json', import.meta.url), 'utf8')) as Schema;

const EVA = foamId('eva-5');
const FULL: StockSheet = {
  id: 'stock-1',
  name: 'whole',
  foam: EVA,
  shape: { kind: 'rectangle', widthMm: 1000, heightMm: 2000 },
  count: 3,
};
const TRACED: StockSheet = {
  id: 'stock-2',
  name: 'offcut of the helm',
  foam: EVA,
  shape: { kind: 'outline', points: [0, 0, 400, 0, 400, 300, 200, 300, 0, 200] },
  count: 1,
  keepOut: [[50, 50, 80, 50, 80, 90]],
  grain: 'y',
};
const HELD: HeldCopy = { copy: 1, sheet: { stock: 'stock-1', nth: 0 }, x: 120, y: 80, turnRad: 0.5, isFlipped: true };
const KEPT = [
  { foam: EVA, sheet: { stock: 'buy', nth: 0 }, places: [{ piece: 'p1', copy: 0, x: 30, y: 40, turnRad: 0 }] },
];

async function project() {
  const bytes = new TextEncoder().encode('v 0 0 0\n');
  const hash = await contentHash(bytes);
  const first = newProject('x', { hash, fileName: 'x.obj', format: 'obj' });
  return {
    first: { ...first, foams: [{ ...first.foams[0], id: EVA }, ...first.foams.slice(1)] } satisfies Project,
    sources: new Map([[hash, { fileName: 'x.obj', bytes }]]),
  };
}

const after = (first: Project, ...commands: readonly Command[]): Project =>
  commands.reduce((changed, command) => command.apply(changed), first);

describe('the foam in hand', () => {
  it('is kept in the file as its schema says, and read again', async () => {
    const { first, sources } = await project();
    const said = after(
      first,
      addStockSheet(FULL),
      addStockSheet(TRACED),
      setFillRule(EVA, { spacingMm: 2, turns: 'half', buys: false }),
      holdCopy('p1', HELD),
      groupPieces(['p1', 'p2'], 'helm'),
      keepLayout(KEPT),
      keepOffcut({ ...FULL, id: 'stock-3', count: 1, leftBy: { stock: 'buy', nth: 0 } }),
    );
    const text = writeProjectFile(said, sources);
    expect(schemaFaults(SCHEMA, JSON.parse(text))).toEqual([]);
    expect(expectOk(await readProjectFile(text, 'x')).project.stock).toEqual(said.stock);
    expect(said.stock?.sheets).toHaveLength(3);
    expect(said.stock?.pieces).toEqual([
      { piece: 'p1', held: [HELD], group: 'helm' },
      { piece: 'p2', group: 'helm' },
    ]);
  });

  it('leaves nothing behind when all is taken back, and changes nothing where nothing changes', async () => {
    const { first } = await project();
    const said = after(
      first,
      addStockSheet(FULL),
      setFillRule(EVA, { turnOver: true }),
      holdCopy('p1', HELD),
      groupPieces(['p2'], 'helm'),
      keepLayout(KEPT),
    );
    for (const idle of [
      changeStockSheet({ ...FULL }),
      changeStockSheet({ ...FULL, id: 'stock-9' }),
      removeStockSheet('stock-9'),
      setFillRule(EVA, { turnOver: true }),
      holdCopy('p1', { ...HELD }),
      releaseCopy('p1', 0),
      groupPieces(['p2'], 'helm'),
      keepLayout(KEPT),
    ])
      expect(idle.apply(said)).toBe(said);
    expect(forgetLayout().apply(first)).toBe(first);
    const bare = after(
      said,
      removeStockSheet('stock-1'),
      setFillRule(EVA, { turnOver: false }),
      groupPieces(['p2'], null),
      forgetLayout(),
    );
    expect(bare).toEqual(first);
    expect(after(said, releaseCopy('p1', 1)).stock?.pieces).toEqual([{ piece: 'p2', group: 'helm' }]);
  });

  it('is filled as usual where nothing is said', async () => {
    const { first } = await project();
    expect(fillOf(first.stock, EVA)).toEqual({ foam: EVA, ...USUAL_FILL });
    expect(USUAL_FILL).toMatchObject({ borderMm: 10, spacingMm: 0 });
    const { stock } = setFillRule(EVA, { borderMm: 0 }).apply(first);
    expect(fillOf(stock, EVA)).toMatchObject({ borderMm: 0, spacingMm: 0 });
    expect(() => setFillRule(EVA, { borderMm: -1 }).apply(first)).toThrow('borderMm');
  });

  it('holds one offcut of a sheet', async () => {
    const { first } = await project();
    const left = (id: string, widthMm: number): StockSheet => ({
      ...FULL,
      id,
      count: 1,
      shape: { kind: 'rectangle', widthMm, heightMm: 500 },
      leftBy: { stock: 'buy', nth: 1 },
    });
    const said = after(first, keepOffcut(left('stock-1', 300)), keepOffcut(left('stock-2', 350)));
    expect(said.stock?.sheets?.map(({ id }) => id)).toEqual(['stock-2']);
    expect(newStockId(said.stock)).toBe('stock-1');
    expect(newStockId(after(said, addStockSheet(FULL)).stock)).toBe('stock-3');
  });

  it('is cleaned: an outline may be drawn anywhere and either way round', () => {
    const shape = { kind: 'outline', points: [100, 50, 100, 250, 300, 350, 500, 350, 500, 50, 500, 50] } as const;
    const clean = expectOk(
      cleanStockSheet({ ...TRACED, name: ' left ', shape, keepOut: [[150, 100, 180, 100, 180, 140]] }),
    );
    expect(clean.name).toBe('left');
    expect(clean.shape).toEqual({ kind: 'outline', points: [0, 0, 400, 0, 400, 300, 200, 300, 0, 200] });
    expect(clean.keepOut).toEqual([[50, 50, 80, 50, 80, 90]]);
  });

  it.each<[string, string, Partial<StockSheet>]>([
    ['without a name', 'stock/name', { name: '  ' }],
    ['named as those that are bought', 'stock/name', { id: 'buy' }],
    ['of which half a one is there', 'stock/count', { count: 0.5 }],
    ['with a size that is no number', 'stock/size', { shape: { kind: 'rectangle', widthMm: NaN, heightMm: 200 } }],
    ['larger than a hall', 'stock/size', { shape: { kind: 'rectangle', widthMm: 1000, heightMm: 1e6 } }],
    [
      'whose outline crosses itself',
      'stock/outline',
      { shape: { kind: 'outline', points: [0, 0, 100, 100, 100, 0, 0, 100] } },
    ],
    ['whose outline is a line', 'stock/outline', { shape: { kind: 'outline', points: [0, 0, 100, 100, 200, 200] } }],
    ['with half a corner', 'stock/outline', { shape: { kind: 'outline', points: [0, 0, 100, 0, 100, 100, 50] } }],
    ['with a zone that crosses itself', 'stock/keep-out', { keepOut: [[0, 0, 10, 10, 10, 0, 0, 10]] }],
  ])('refuses a sheet %s', async (_, code, change) => {
    expectProblem(cleanStockSheet({ ...FULL, ...change }), code);
    const { first, sources } = await project();
    expect(() => addStockSheet({ ...FULL, ...change }).apply(first)).toThrow(RangeError);
    const text = writeProjectFile({ ...first, stock: { sheets: [{ ...FULL, ...change }] } }, sources);
    expectProblem(await readProjectFile(text, 'x'), 'project/broken');
  });

  it('refuses a file with two sheets of one id, or with a sheet of a foam that it does not hold', async () => {
    const { first, sources } = await project();
    const broken = async (stock: Project['stock']): Promise<string> =>
      expectProblem(await readProjectFile(writeProjectFile({ ...first, stock }, sources), 'x'), 'project/broken').text;
    expect(await broken({ sheets: [FULL, FULL] })).toContain('sheets.1');
    expect(await broken({ sheets: [{ ...FULL, foam: foamId('felt') }] })).toContain('felt');
  });
});
