import { describe, expect, it } from 'vitest';
import { boughtOf, shopText, type ShopItem } from '../../../src/app/at-shop/shop-items.ts';

const foam: ShopItem = { id: 'buy/foam/eva/6', what: 'EVA 6 mm', much: '2 sheets', amount: 2, isFoam: true };
const glue: ShopItem = { id: 'buy/glue', what: 'contact glue', much: '120 ml', amount: 118, isFoam: false };

describe('what was bought', () => {
  it('is enough as long as no more is needed: of sheets to the last, of what is poured but for a tenth', () => {
    const bought = (id: string, as: string) => [{ id, as }];
    expect(boughtOf(undefined, foam)).toEqual({ state: 'open', have: 0 });
    expect(boughtOf(bought(foam.id, '2'), foam)).toEqual({ state: 'done', have: 2 });
    expect(boughtOf(bought(foam.id, '3'), foam).state).toBe('done');
    expect(boughtOf(bought(foam.id, '1'), foam)).toEqual({ state: 'short', have: 1 });
    expect(boughtOf(bought(glue.id, '110'), glue).state).toBe('done');
    expect(boughtOf(bought(glue.id, '100'), glue).state).toBe('short');
  });

  it('is told in a message, line by line', () => {
    expect(shopText('Helm', [foam, glue], [{ id: foam.id, as: '2' }])).toBe(
      'Helm: to buy\n☑ 2 sheets, EVA 6 mm\n☐ 120 ml, contact glue',
    );
  });
});
