import { describe, expect, it } from 'vitest';
import { arc } from '../../../src/geom/outline.ts';
import { edge, piece, side } from '../../../src/steps/shapes/pieces.ts';

const at = (x: number, y: number) => ({ x, y });

describe('a piece', () => {
  const [a, b, c] = [at(0, 0), at(40, 0), at(0, 30)];
  it('has the area of its outline less its holes', () => {
    const hole = [edge('hole', arc(at(10, 10), 5, 0, -2 * Math.PI))];
    const made = piece('triangle', [side('a', a, b), side('b', b, c), side('c', c, a)], { holes: [hole] });
    expect(made.areaMm2).toBeCloseTo(600 - 25 * Math.PI, 9);
    expect(made.outline.map(({ lengthMm }) => lengthMm)).toEqual([40, 50, 30]);
  });
  it('must close and run counter-clockwise', () => {
    expect(() => piece('open', [side('a', a, b), side('b', b, c), side('c', c, at(1, 0))])).toThrow('open');
    expect(() => piece('turned', [side('a', b, a), side('c', a, c), side('b', c, b)])).toThrow('area');
  });
});
