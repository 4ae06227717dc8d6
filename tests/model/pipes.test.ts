import { describe, expect, it } from 'vitest';
import { checkPipes, findPipe, PIPES, type Pipe } from '../../src/model/pipes.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';

const series = (name: string): readonly Pipe[] =>
  PIPES.filter((one) => one.name.startsWith(`${name} `) && /^[\d ./]+$/.test(one.name.slice(name.length)));
/** `1 1/4` as a number. */
const inches = (size: string): number =>
  size
    .trim()
    .split(' ')
    .map((part) => part.split('/').map(Number))
    .reduce((sum, [top, bottom]) => sum + top / (bottom ?? 1), 0);

describe('pipes', () => {
  it('of PVC-U have the walls of ISO 4065: d / (2 S + 1) rounded up to 0.1 mm, S of the series R10, 1.5 mm at least', () => {
    // The rule is from memory; it gives every wall of a shop's table that was read, up to 50 and from 110 mm.
    for (const { name, outsideMm, wallMm } of series('PVC')) {
      const s = outsideMm <= 90 ? 10 ** 0.8 : 10 ** 0.9;
      const hundredths = Math.round((100 * outsideMm) / (2 * s + 1));
      expect(wallMm, name).toBeCloseTo(Math.max(1.5, Math.ceil(hundredths / 10) / 10), 9);
    }
  });

  it('of copper by ASTM B88 are an eighth of an inch thicker than their size', () => {
    const all = series('Copper type L');
    expect(all).toHaveLength(8);
    for (const { name, outsideMm } of all)
      expect(outsideMm, name).toBeCloseTo((inches(name.slice('Copper type L'.length)) + 1 / 8) * 25.4, 9);
  });

  it('of ASTM D1785 and ISO 4200 agree within what inches and mm are rounded by', () => {
    // The same row of diameters, one in thousandths of an inch and one in tenths of a mm.
    for (const [size, steel] of [
      ['1/2', '21.3'],
      ['3/4', '26.9'],
      ['1', '33.7'],
      ['1 1/4', '42.4'],
      ['1 1/2', '48.3'],
      ['2', '60.3'],
    ]) {
      const [a, b] = [expectOk(findPipe(`Schedule 40 ${size}`)), expectOk(findPipe(`Steel ${steel}`))];
      expect(Math.abs(a.outsideMm - b.outsideMm)).toBeLessThan(0.31);
    }
    expect(expectOk(findPipe('Schedule 40 1/2')).outsideMm).toBeCloseTo(21.336, 9);
  });

  it('that are named by their outside are as thick as that', () => {
    for (const one of [
      ...series('PVC'),
      ...series('Conduit'),
      ...series('Copper'),
      ...series('Steel'),
      ...series('Dowel'),
    ])
      expect(one.outsideMm, one.name).toBe(Number(one.name.split(' ').at(-1)));
  });

  it('are found by any way of writing, and others are refused with what there is', () => {
    for (const word of ['PVC 32', 'pvc32', 'Pvc-32']) expect(expectOk(findPipe(word)).outsideMm).toBe(32);
    expect(expectOk(findPipe('dn25')).outsideMm).toBe(33.7);
    expect(expectProblem(findPipe('pvc 33'), 'core/pipe').text).toContain('PVC 32');
    expectProblem(findPipe(''), 'core/pipe');
  });

  it('that are listed twice or are all wall are our mistake', () => {
    expect(() => checkPipes([PIPES[0], PIPES[0]])).toThrow('twice');
    expect(() => checkPipes([{ ...PIPES[0], wallMm: 8 }])).toThrow('wall');
  });
});
