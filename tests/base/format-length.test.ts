import { describe, expect, it } from 'vitest';
import {
  formatArea,
  formatFine,
  formatInches,
  formatLength,
  formatMeasured,
  formatMm,
  formatNumber,
  isWholeSixteenths,
  parseLength,
} from '../../src/base/format-length.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('lengths as text', () => {
  it('knows which lengths are whole sixteenths of an inch', () => {
    expect([25.4, 1.5875, 322.2625, 0, 322, 1, 25.42].map(isWholeSixteenths)).toEqual([
      true,
      true,
      true,
      true,
      false,
      false,
      false,
    ]);
  });

  it('shows one decimal below 100 mm and none above', () => {
    expect(plain(formatMm(48.46))).toBe('48.5 mm');
    expect(plain(formatMm(99.96))).toBe('100 mm');
    expect(plain(formatMm(322.4))).toBe('322 mm');
    expect(plain(formatMm(6.02))).toBe('6 mm');
    expect(plain(formatMm(0))).toBe('0 mm');
  });

  it('reduces fractions of an inch', () => {
    expect(plain(formatInches(322.2625))).toBe('12 11/16 in'); // 12.6875 * 25.4
    expect(plain(formatInches(25.4))).toBe('1 in');
    expect(plain(formatInches(12.7))).toBe('1/2 in');
    expect(plain(formatInches(0.2))).toBe('0 in');
    expect(plain(formatInches(25.39))).toBe('1 in'); // rounds up into a whole inch, not 16/16
  });

  it('never writes a negative nothing, and writes a true minus', () => {
    expect(formatNumber(-0.04, 1)).toBe('0.0');
    expect(formatNumber(-1.25, 1)).toMatch(/^\u22121\.[23]$/);
  });

  it('keeps to the unit asked for', () => {
    expect(plain(formatLength(254, 'in'))).toBe('10 in');
    expect(plain(formatFine(0.254, 'in'))).toBe('0.010 in');
    expect(plain(formatFine(0.254, 'mm'))).toBe('0.25 mm');
    expect(plain(formatMeasured(169.46, 'mm'))).toBe('169.5 mm');
    expect(plain(formatMeasured(169.46, 'in'))).toBe('6.67 in');
    expect(plain(formatArea(64516, 'in'))).toBe('100 in²');
    expect(plain(formatArea(120, 'mm'))).toBe('1.2 cm²');
  });
});

describe('lengths as people type them', () => {
  it.each([
    ['322', 'mm', 322],
    ['32,2 cm', 'mm', 322],
    ['12 11/16 in', 'mm', 322.2625],
    ['12-1/2"', 'mm', 317.5],
    ['3/8', 'in', 9.525],
    ['.5', 'in', 12.7],
    ['1.2 m', 'in', 1200],
    ['4½', 'in', 114.3],
    ['4 ½"', 'mm', 114.3],
    ['⅜', 'in', 9.525],
    ['4-1/2"', 'mm', 114.3],
    ['4 1⁄2 Zoll', 'mm', 114.3],
    ['3,5', 'mm', 3.5],
    // NIST SP 811 (2008), appendix B.8: a foot is 0.3048 m exactly.
    ['5 ft', 'mm', 1524],
    ['5\' 4 1/2"', 'mm', 1638.3],
    ['5′ 4½″', 'in', 1638.3],
    ["5'-4", 'mm', 1625.6],
    ['6\' 0"', 'mm', 1828.8],
  ] as const)('%s (%s) is %d mm', (text, unit, mm) => {
    expect(parseLength(text, unit)).toBeCloseTo(mm, 9);
  });

  it.each(['', 'abc', '0', '-5', '3/0', '1 2', '1.234,5', '5 ft 3/0', '½ ½', '5 ft x'])('%j is no length', (text) => {
    expect(parseLength(text, 'mm')).toBeNull();
  });
});
