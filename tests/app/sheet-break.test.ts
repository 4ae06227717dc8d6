import { describe, expect, it } from 'vitest';
import { breakOf, frameOf } from '../../src/app/sheet-drawing.ts';

const SHEET = { widthMm: 1000, heightMm: 2000, fillAlong: 'y', filledMm: 300 } as const;
const numbers = (path: string): number[][] =>
  path
    .slice(1)
    .replace('Z', '')
    .split('L')
    .map((point) => point.split(' ').map(Number));

describe('a sheet that is shown in part', () => {
  it('is broken off beyond what is filled, from edge to edge, and nothing of it is left beyond', () => {
    const cut = breakOf(SHEET, frameOf(SHEET, true))!;
    const line = numbers(cut.line);
    expect([line[0][0], line.at(-1)![0]]).toEqual([0, 1000]);
    expect(Math.min(...line.map(([, y]) => y))).toBeGreaterThan(300);
    expect(Math.max(...numbers(cut.beyond).map(([, y]) => y))).toBeGreaterThanOrEqual(2000);
  });

  it('is broken off across its other side where it is filled along that', () => {
    const along = { ...SHEET, widthMm: 2000, heightMm: 1000, fillAlong: 'x' } as const;
    const line = numbers(breakOf(along, frameOf(along, true))!.line);
    expect([line[0][1], line.at(-1)![1]]).toEqual([0, 1000]);
    expect(Math.min(...line.map(([x]) => x))).toBeGreaterThan(300);
  });

  it('is whole where all of it is shown', () => {
    expect(breakOf(SHEET, frameOf(SHEET))).toBeNull();
    expect(breakOf({ ...SHEET }, frameOf({ ...SHEET, filledMm: 1900 }, true))).toBeNull();
  });
});
