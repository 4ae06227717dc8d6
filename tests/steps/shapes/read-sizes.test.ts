import { describe, expect, it } from 'vitest';
import { readSize } from '../../../src/steps/shapes/read-size.ts';
import { readSizes } from '../../../src/steps/shapes/read-sizes.ts';
import { angle, choice, count, length, ratio } from '../../../src/steps/shapes/size-fields.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';

describe('a size', () => {
  it.each([
    ['120', 120],
    ['4 1/2 in', 114.3],
    ['4-1/2"', 114.3],
    ['4.5"', 114.3],
    ['114,3 mm', 114.3],
    ['3/8 in', 9.525],
    ['1e2', 100],
    ['2 ft', 609.6],
    ['12cm', 120],
    ['.5m', 500],
    ['-30', -30],
    ['−30 mm', -30],
    ['0', 0],
  ])('as a length: %s', (text, mm) => expect(readSize(text, 'length')).toBeCloseTo(mm, 9));

  it.each([
    ['45', 45],
    ['45°', 45],
    ['22,5 deg', 22.5],
    ['0.25 turn', 90],
    ['3.141592653589793 rad', 180],
  ])('as an angle: %s', (text, degrees) => expect(readSize(text, 'angle')).toBeCloseTo(degrees, 9));

  it('as a share', () => expect([readSize('33 %', 'ratio'), readSize('0,44', 'ratio')]).toEqual([0.33, 0.44]));
  it('in inches where its name says so', () => expect(readSize('4 1/2', 'length', 'in')).toBeCloseTo(114.3, 9));

  it.each(['', 'wide', '12 apples', '45°', '1/0', '0x10', 'Infinity', '1..2', '--3'])('not as a length: %s', (text) =>
    expect(readSize(text, 'length')).toBe(null),
  );
});

describe('sizes of a shape', () => {
  const kind = {
    name: 'thing',
    sizes: [
      length('outer_radius', 'radius', { default: 10, most: 500, also: ['R'] }),
      length('pipe', 'pipe', { also: [{ name: 'pipe_inside', sets: { surface: 'inside' } }] }),
      angle('cut_angle_deg', 'cut', { default: 45, least: 0, most: 89 }),
      count('sides', 'sides', { default: 6, least: 3 }),
      ratio('K', 'neutral fraction', { default: 0.5 }),
      choice('surface', 'surface', ['outside', 'inside']),
      length('rows', 'rows', { default: [1, 2], isList: true }),
      length('along', 'along', { also: ['width'] }),
      length('across', 'across', { also: ['width'] }),
    ],
  };
  const read = (...typed: [string, string][]) => expectOk(readSizes(kind, typed)).values;

  it('have their defaults, or are left out', () =>
    expect(read()).toEqual({
      outer_radius: 10,
      cut_angle_deg: 45,
      sides: 6,
      K: 0.5,
      surface: 'outside',
      rows: [1, 2],
    }));

  it.each<[string, string, number]>([
    ['outer_radius', '20', 20],
    ['R', '20', 20],
    ['outerRadius', '20', 20],
    ['outer-radius', '20', 20],
    ['outer_radius_mm', '20', 20],
    ['outer_radius_in', '2', 50.8],
    ['outer_diameter', '40', 20],
    ['outer_diameter_in', '4', 50.8],
  ])('go by %s', (name, text, value) => expect(read([name, text]).outer_radius).toBeCloseTo(value, 9));

  it('go by an angle without its unit', () => expect(read(['cut_angle', '30']).cut_angle_deg).toBe(30));
  it('go by k as by K', () => expect(read(['k', '0.33']).K).toBe(0.33));
  it('go by a name of two that is not given by its own', () => {
    expect(read(['width', '5'])).toMatchObject({ along: 5 });
    expect(read(['width', '5'], ['along', '7'])).toMatchObject({ along: 7, across: 5 });
  });
  it('say which surface is meant', () =>
    expect(read(['pipe_inside', '5'])).toMatchObject({ pipe: 5, surface: 'inside' }));

  it.each<[string, readonly number[]]>([
    ['3', [3]],
    ['3,4.5', [3, 4.5]],
    ['3; 4,5 ;6', [3, 4.5, 6]],
    ['[3, 4.5]', [3, 4.5]],
    ['[[3,4],[5,6]]', [3, 4, 5, 6]],
    ['3 4 5', [3, 4, 5]],
    ['1/2 in', [12.7]],
  ])('in a row: %s', (text, row) => expect(read(['rows', text]).rows).toEqual(row));

  it.each<[string, [string, string][], string]>([
    ['one it has not', [['weight', '3']], 'shape/no-size'],
    [
      'one twice',
      [
        ['R', '3'],
        ['outer_radius', '3'],
      ],
      'shape/twice',
    ],
    [
      'two that gainsay one another',
      [
        ['pipe_inside', '3'],
        ['surface', 'outside'],
      ],
      'shape/twice',
    ],
    ['nothing', [['R', '']], 'shape/unreadable'],
    ['one beyond its limit', [['R', '501']], 'shape/out-of-range'],
    ['nought where it must be more', [['R', '0']], 'shape/out-of-range'],
    ['half a side', [['sides', '4.5']], 'shape/out-of-range'],
    ['too few', [['sides', '2']], 'shape/out-of-range'],
    ['a word that is no choice', [['surface', 'middle']], 'shape/no-choice'],
    ['a row with a word in it', [['rows', '1,two']], 'shape/unreadable'],
  ])('refuse %s', (_, typed, code) => {
    const { text } = expectProblem(readSizes(kind, typed), code);
    expect(text).toMatch(/^\S.*\.$/);
  });
});
