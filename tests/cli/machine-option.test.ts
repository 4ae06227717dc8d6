import { describe, expect, it } from 'vitest';
import { machineFrom } from '../../src/cli/machine-option.ts';

describe('machineFrom', () => {
  it('is nothing unless a file is asked for', () => {
    expect(machineFrom({})).toBeUndefined();
    expect(() => machineFrom({ cutter: 'laser' })).toThrow('add --dxf');
    expect(() => machineFrom({ bridges: '4,2' })).toThrow('add --dxf');
  });

  it('knows how wide a cutter cuts, unless it was measured', () => {
    expect(machineFrom({ dxf: true })?.cutter).toEqual({ kind: 'unknown', cutWidthMm: 0 });
    expect(machineFrom({ dxf: true, cutter: 'blade' })?.cutter.cutWidthMm).toBe(0);
    expect(machineFrom({ 'svg-sheets': true, cutter: 'laser' })?.cutter.cutWidthMm).toBe(0.2);
    expect(machineFrom({ dxf: true, cutter: 'laser', 'cut-width': '0,15' })?.cutter.cutWidthMm).toBe(0.15);
  });

  it('takes bridges', () => {
    expect(machineFrom({ dxf: true, bridges: '4,2.5' })?.cutter.bridges).toEqual({ count: 4, widthMm: 2.5 });
  });

  it.each(['', '4', '0,2', '4,0', '4,2,1', '2.5,2', 'four,2', '101,2', '4,51', '4,-1', 'NaN,NaN'])(
    'refuses bridges “%s”',
    (bridges) => expect(() => machineFrom({ dxf: true, bridges })).toThrow('--bridges takes'),
  );

  it.each(['-1', '10.1', 'thin', '1e9', ''])('refuses a cut “%s” wide', (width) =>
    expect(() => machineFrom({ dxf: true, 'cut-width': width })).toThrow('--cut-width takes a number from 0 to 10'),
  );

  it('takes pictures and models by themselves, cut by nothing', () => {
    expect(machineFrom({ png: '150' })).toMatchObject({ pngDpi: 150, dxf: false, sheetSvg: false });
    expect(machineFrom({ stl: true, smaller: '10' })?.models).toEqual({ stl: true, obj: false, timesSmaller: 10 });
    expect(machineFrom({ obj: true })?.models).toEqual({ stl: false, obj: true });
    expect(machineFrom({ dxf: true })).not.toHaveProperty('models');
    expect(() => machineFrom({ smaller: '10' })).toThrow('add --stl or --obj');
    expect(() => machineFrom({ stl: true, smaller: '1' })).toThrow('--smaller takes a number over 1, at most 1000');
    for (const png of ['0', '9', '-300', '2401', 'fine', '']) expect(() => machineFrom({ png })).toThrow('--png takes');
  });

  it('refuses a cutter it does not know', () => {
    expect(() => machineFrom({ dxf: true, cutter: 'saw' })).toThrow('--cutter takes blade, laser, not saw.');
  });
});
