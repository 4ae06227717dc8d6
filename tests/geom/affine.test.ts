import { describe, expect, it } from 'vitest';
import { composed, greatestScale, IDENTITY, mapped, readTransform, type Affine } from '../../src/geom/affine.ts';
import { forAll } from '../support/for-all.ts';
import { near } from '../support/near-numbers.ts';

const at = (map: Affine | null, x: number, y: number): number[] => {
  if (map === null) throw new Error('not read');
  const found = mapped(map, { x, y });
  return [found.x, found.y];
};

describe('mapped and composed', () => {
  it('write a matrix as SVG does', () => {
    expect(at([2, 3, 5, 7, 11, 13], 10, 100)).toEqual([20 + 500 + 11, 30 + 700 + 13]);
    expect(at(IDENTITY, 4, -9)).toEqual([4, -9]);
  });

  it('do the inner one first', () => {
    // Moved by 3, 4, then drawn twice as wide and three times as high.
    expect(composed([2, 0, 0, 3, 0, 0], [1, 0, 0, 1, 3, 4])).toEqual([2, 0, 0, 3, 6, 12]);
    expect(composed([1, 0, 0, 1, 3, 4], [2, 0, 0, 3, 0, 0])).toEqual([2, 0, 0, 3, 3, 4]);
  });

  it('come to the same place in one step as in two', async () => {
    const gen = (rand: () => number) => Array.from({ length: 14 }, () => 4 * rand() - 2);
    await forAll(gen, (n) => {
      const [outer, inner] = [n.slice(0, 6), n.slice(6, 12)] as unknown as [Affine, Affine];
      const [x, y] = at(inner, n[12], n[13]);
      expect(at(composed(outer, inner), n[12], n[13])).toEqual(near(at(outer, x, y)));
    });
  });
});

describe('greatestScale', () => {
  it('is how much the circle of all ways is drawn out at most', async () => {
    expect(greatestScale([2, 0, 0, 3, 50, 60])).toBe(3);
    expect(greatestScale([-4, 0, 0, 1, 0, 0])).toBe(4);
    // A shear by 1.5 enlarges by 2 and by 1/2: (1.5 + sqrt(1.5² + 4)) / 2.
    expect(greatestScale([1, 0, 1.5, 1, 0, 0])).toBe(2);
    expect(greatestScale([1, 1.5, 0, 1, 0, 0])).toBe(2);
    const gen = (rand: () => number) => Array.from({ length: 6 }, () => 4 * rand() - 2) as unknown as Affine;
    await forAll(gen, (map) => {
      const lengths = Array.from({ length: 720 }, (_, i) => {
        const [x, y] = at([map[0], map[1], map[2], map[3], 0, 0], Math.cos(i / 100), Math.sin(i / 100));
        return Math.hypot(x, y);
      });
      const most = greatestScale(map);
      expect(Math.max(...lengths)).toBeLessThanOrEqual(most * (1 + 1e-12));
      expect(Math.max(...lengths)).toBeGreaterThan(most * 0.9999);
    });
  });
});

describe('readTransform', () => {
  const read = (text: string, x = 10, y = 100) => at(readTransform(text), x, y);

  it('reads each kind', () => {
    expect(read('matrix(2 3 5 7 11 13)')).toEqual([531, 743]);
    expect(read('translate(3, -4)')).toEqual([13, 96]);
    expect(read('translate(3)')).toEqual([13, 100]);
    expect(read('scale(2 .5)')).toEqual([20, 50]);
    expect(read('scale(-3)')).toEqual([-30, -300]);
    expect(read('rotate(90)')).toEqual(near([-100, 10]));
    expect(read('rotate(30)', 2, 0)).toEqual(near([Math.sqrt(3), 1]));
    expect(read('rotate(90 7 20)', 9, 25)).toEqual(near([2, 22]));
    expect(read('rotate(60 7 20)', 11, 20)).toEqual(near([9, 20 + 2 * Math.sqrt(3)]));
    expect(read('rotate(60 7 20)', 7, 26)).toEqual(near([7 - 3 * Math.sqrt(3), 23]));
    expect(read('skewX(45)')).toEqual(near([110, 100]));
    expect(read('skewY(45)')).toEqual(near([10, 110]));
    expect(read('skewX(60)', 0, 1)).toEqual(near([Math.sqrt(3), 1]));
  });

  it('reads what is one behind the other, the last done first', () => {
    expect(read('translate(1,2)scale(3)')).toEqual([31, 302]);
    expect(read('  translate( 1 , 2 ) ,  scale( 3 )  ')).toEqual([31, 302]);
    expect(read('scale(3) translate(1 2)')).toEqual([33, 306]);
  });

  it('reads numbers in every way they may be written', () => {
    expect(read('translate(+1.50e+1,-2.5E-1)')).toEqual([25, 99.75]);
    expect(read('translate(.25-12.)')).toEqual([10.25, 88]);
    expect(read('translate(12 345)')).toEqual([22, 445]);
    expect(read('translate(12e1 -1e12)')).toEqual([130, 100 - 1e12]);
  });

  it('changes nothing where nothing stands', () => {
    expect(readTransform('')).toEqual(IDENTITY);
    expect(readTransform('   ')).toEqual(IDENTITY);
  });

  it.each([
    'turn(3)',
    'matrix(1 2 3 4 5)',
    'translate()',
    'translate(1 2 3)',
    'scale()',
    'scale(1 2 3)',
    'rotate(1 2)',
    'rotate()',
    'skewX()',
    'skewY(1 2)',
    'translate(1px 2)',
    'translate(1;2)',
    'translate(1 2',
    'translate 1 2',
    '(1 2)',
    'translate(1 2) x',
    'x translate(1 2)',
    'scale(1e999)',
  ])('refuses %s', (text) => expect(readTransform(text)).toBeNull());
});
