import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DEFAULT_FOAMS } from '../../src/model/foams.ts';
import { readStockFile } from '../../src/project/stock-file.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';

const SCHEMA = JSON.parse(readFileSync(new URL('../../shared/stock.schema.json', import.meta.url), 'utf8')) as Schema;
const PROJECT = JSON.parse(readFileSync(new URL('../../shared/project.schema.json', import.meta.url), 'utf8')) as {
  $defs: { stockSheet: unknown };
};
const [{ id: foam }] = DEFAULT_FOAMS;

const sheet = {
  id: 'a',
  name: 'whole sheets',
  foam,
  shape: { kind: 'rectangle', widthMm: 600, heightMm: 900 },
  count: 2,
  keepOut: [[0, 0, 50, 0, 50, 50]],
  grain: 'x',
  leftBy: { stock: 'buy', nth: 0 },
};
const read = (value: unknown) => readStockFile(JSON.stringify(value), 'shelf.json', DEFAULT_FOAMS);

describe('a file of sheets in hand', () => {
  it('is read as its schema says; what another project left is there by now', () => {
    expect(schemaFaults(SCHEMA, [sheet])).toEqual([]);
    const { leftBy: _, ...rest } = sheet;
    expect(expectOk(read([sheet]))).toEqual([rest]);
  });

  it('holds sheets as a project does', () => {
    expect(SCHEMA.items).toEqual(PROJECT.$defs.stockSheet);
  });

  it.each([
    ['an object', {}],
    ['a sheet without a foam', [{ ...sheet, foam: undefined }]],
    ['half a sheet', [{ ...sheet, count: 0.5 }]],
    ['no sheet at all', [{ ...sheet, count: 0 }]],
    ['a round sheet', [{ ...sheet, shape: { kind: 'round' } }]],
    ['a sheet as large as a hall', [{ ...sheet, shape: { kind: 'rectangle', widthMm: 1e6, heightMm: 900 } }]],
    ['a line for a zone', [{ ...sheet, keepOut: [[0, 0, 1, 1]] }]],
    ['a grain that runs up', [{ ...sheet, grain: 'up' }]],
  ])('is refused with %s, by the schema too', (_, value) => {
    expect(schemaFaults(SCHEMA, JSON.parse(JSON.stringify(value)))).not.toEqual([]);
    expectProblem(read(value), 'stock/broken');
  });

  it('says how much is the most', () => {
    expect(expectProblem(read([{ ...sheet, count: 1000 }]), 'stock/broken').text).toContain(
      'at 0.count there is 1000 where at most 999 belongs',
    );
  });

  it('is refused with a foam that is not there, with one id twice, and where it is no JSON', () => {
    expect(expectProblem(read([{ ...sheet, foam: 'felt' }]), 'stock/foam').text).toContain(foam);
    expectProblem(read([sheet, sheet]), 'stock/broken');
    expectProblem(readStockFile('[', 'shelf.json', DEFAULT_FOAMS), 'stock/not-json');
  });
});
