import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { shopFrom, withShop } from '../../src/cli/shop-option.ts';
import { USAGE } from '../../src/cli/usage.ts';
import { newProject } from '../../src/project/new-project.ts';

const project = newProject('lid', { hash: '0'.repeat(64), fileName: 'lid.obj', format: 'obj' });
const [{ thicknessMm, foam }] = project.parts[0].layers;

describe('glue and prices on the command line', () => {
  it('go into the project', () => {
    const price = `${thicknessMm}=24,50`;
    const words = ['make', 'lid.obj', '--out', 'out', '--glue', 'water', '--sheet-price', price, '--currency', 'EUR'];
    const shop = { glue: 'water', currency: 'EUR', sheetPrices: [{ thicknessMm, price: 24.5 }] };
    expect(parseCommand(words, '2026-03-01')).toMatchObject({ choices: { shop } });
    for (const word of ['--glue', '--sheet-price', '--currency']) expect(USAGE).toContain(word);
    const said = withShop(project, shop).shop;
    expect(said?.glue?.id).toBe('water');
    expect(said?.sheetPrices).toEqual([{ foam, price: 24.5 }]);
    expect(withShop(project, undefined)).toBe(project);
    expect(shopFrom({})).toBeUndefined();
  });

  it('are refused where they say nothing', () => {
    for (const values of [{ glue: 'paste' }, { currency: ' ' }, { 'sheet-price': ['6'] }, { 'sheet-price': ['6=-1'] }])
      expect(() => shopFrom(values)).toThrow(WrongUsage);
    expect(() => withShop(project, { sheetPrices: [{ thicknessMm: 77, price: 1 }] })).toThrow(Refused);
  });
});
