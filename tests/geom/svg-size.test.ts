import { describe, expect, it } from 'vitest';
import { readSvgLength, readUserLength, svgScale } from '../../src/geom/svg-size.ts';
import { near } from '../support/near-numbers.ts';

const PX = 25.4 / 96;

describe('readSvgLength', () => {
  it('knows the units of CSS', () => {
    const inches = { mm: '25.4mm', cm: '2.54cm', q: '101.6Q', in: '1in', pt: '72pt', pc: '6pc', px: '96px' };
    for (const text of Object.values(inches)) {
      const { value, mmPerUnit } = readSvgLength(text) ?? { value: NaN, mmPerUnit: NaN };
      expect(value * (mmPerUnit ?? NaN), text).toBeCloseTo(25.4, 12);
    }
    expect(readSvgLength('3CM')).toEqual({ value: 3, mmPerUnit: 10 });
  });

  it.each([
    ['12', 12],
    ['-12.25', -12.25],
    ['+.50', 0.5],
    ['7.', 7],
    ['1.5e+12', 1.5e12],
    ['15E-12', 15e-12],
    ['2e3', 2000],
    ['  34  ', 34],
  ])('reads %s as a bare number', (text, value) => expect(readSvgLength(text)).toEqual({ value, mmPerUnit: null }));

  it('allows space before the unit and round all', () => {
    expect(readSvgLength(' 3  mm ')).toEqual({ value: 3, mmPerUnit: 1 });
  });

  it.each([
    '',
    'mm',
    '5%',
    '2em',
    '3 toString',
    '1e999',
    '1,5',
    '3mm4',
    '3mm 4',
    'x3mm',
    'e5',
    '.',
    '5-mm',
    '4 constructor',
  ])('does not read %s', (text) => expect(readSvgLength(text)).toBeNull());
});

describe('readUserLength', () => {
  it('counts units in px', () => {
    expect(readUserLength('1in')).toBeCloseTo(96, 12);
    expect(readUserLength('30pt')).toBeCloseTo(40, 12);
    expect(readUserLength('17')).toBeCloseTo(17, 12);
    expect(readUserLength('3px')).toBeCloseTo(3, 12);
  });

  it('takes what is missing as told, and is nothing where it cannot be read', () => {
    expect(readUserLength(undefined)).toBe(0);
    expect(readUserLength(undefined, 4)).toBe(4);
    expect(readUserLength('wide', 4)).toBeNull();
  });
});

describe('svgScale', () => {
  const scale = (attributes: Record<string, string>) => {
    const { mmFromUser, hasUnits } = svgScale(new Map(Object.entries(attributes)));
    return { mmFromUser: [...mmFromUser], hasUnits };
  };
  const alike = (x: number, hasUnits: boolean, y = x) => ({ mmFromUser: near([x, 0, 0, y, 0, 0]), hasUnits });

  it('follows from width and viewBox', () => {
    expect(scale({ width: '100mm', height: '50mm', viewBox: '0 0 200 100' })).toEqual(alike(0.5, true));
    expect(scale({ width: '10cm', viewBox: '0 0 200 1' })).toEqual(alike(0.5, true));
    expect(scale({ height: '10cm', viewBox: '0 0 1 400' })).toEqual(alike(0.25, true));
    expect(scale({ width: '100mm', viewBox: '  -5,-7 , 200,100 ' })).toEqual(alike(0.5, true));
  });

  it('takes the smaller of two, the larger for a slice, each by itself where none keeps them alike', () => {
    const frame = { width: '100mm', height: '30mm', viewBox: '0 0 200 100' };
    expect(scale(frame)).toEqual(alike(0.3, true));
    expect(scale({ ...frame, preserveAspectRatio: 'xMidYMid meet' })).toEqual(alike(0.3, true));
    expect(scale({ ...frame, preserveAspectRatio: 'xMidYMid slice' })).toEqual(alike(0.5, true));
    expect(scale({ ...frame, preserveAspectRatio: 'slices' })).toEqual(alike(0.3, true));
    expect(scale({ ...frame, preserveAspectRatio: ' none ' })).toEqual(alike(0.5, true, 0.3));
    expect(scale({ width: '100mm', viewBox: '0 0 200 100', preserveAspectRatio: 'none' })).toEqual(alike(0.5, true));
  });

  it('counts a bare number as px beside one with a unit, as mm where none has', () => {
    expect(scale({ width: '100mm', height: '960', viewBox: '0 0 100 960' })).toEqual(alike(PX, true));
    expect(scale({ width: '960', height: '100mm', viewBox: '0 0 960 100' })).toEqual(alike(PX, true));
    expect(scale({ width: '100', height: '50', viewBox: '0 0 200 100' })).toEqual(alike(0.5, false));
    expect(scale({ viewBox: '0 0 200 100' })).toEqual(alike(1, false));
    expect(scale({})).toEqual(alike(1, false));
    expect(scale({ width: '100' })).toEqual(alike(1, false));
    expect(scale({ width: '100', height: '100mm' })).toEqual(alike(PX, true));
  });

  it.each(['0 0 200', '0 0 200 100 5', '0 0 0 100', '0 0 200 0', '0 0 -200 100', '0 0 200 -100', '0 0 wide 100', ''])(
    'passes over the viewBox "%s"',
    (viewBox) => expect(scale({ width: '100mm', height: '10mm', viewBox })).toEqual(alike(PX, true)),
  );

  it.each(['0mm', '-5mm', '100%', 'wide'])('passes over the width %s', (width) => {
    expect(scale({ width, height: '30mm', viewBox: '0 0 200 100' })).toEqual(alike(0.3, true));
    expect(scale({ width, viewBox: '0 0 200 100' })).toEqual(alike(1, false));
  });
});
