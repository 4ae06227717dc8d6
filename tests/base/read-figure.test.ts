import { describe, expect, it } from 'vitest';
import { partsThousands, readFigure } from '../../src/base/read-figure.ts';

describe('a number as it is typed', () => {
  it.each([
    ['3.5', 3.5],
    ['3,5', 3.5],
    [',5', 0.5],
    ['\u22122', -2],
    [' 12,5 % ', 12.5],
    ['30°', 30],
    ['+4', 4],
  ] as const)('%j is %d', (text, value) => {
    expect(readFigure(text)).toBe(value);
  });

  it.each(['', ' ', '1.234,5', '1,2,3', '0x10', '1e3', 'abc', '-', '3 1/2'])('%j is none', (text) => {
    expect(readFigure(text)).toBeNaN();
  });

  it('tells marks between thousands from fractions and decimals', () => {
    const parted = ['1.234,5', '1,234.5', '1,234,567', '1 234', "1'234 mm", '1\u202f234,5'];
    const plain = ['1234,5', '1.25', '12 3/4 in', '1 123/128', '4-1/2', "5' 4 1/2", '0,125'];
    expect([...parted, ...plain].filter(partsThousands)).toEqual(parted);
  });
});
