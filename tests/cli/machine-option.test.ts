import { describe, expect, it } from 'vitest';
import { machineChoices, machineFrom, withCutter, type MachineWords } from '../../src/cli/machine-option.ts';
import type { CutterChoice, CutterWish } from '../../src/model/cutter.ts';
import { newProject } from '../../src/project/new-project.ts';

const PROJECT = newProject('x', { hash: 'a', fileName: 'x.obj', format: 'obj' });

/** How the sheets of a project are cut in the end. */
function cutterOf(words: MachineWords, saved?: CutterWish): CutterChoice | undefined {
  const option = machineFrom(words);
  const project = saved === undefined ? PROJECT : { ...PROJECT, cutter: saved };
  return machineChoices(option, withCutter(project, option))?.cutter;
}

describe('machineFrom', () => {
  it('is nothing unless a file is asked for', () => {
    expect(machineFrom({})).toBeUndefined();
    expect(() => machineFrom({ cutter: 'laser' })).toThrow('add --dxf');
    expect(() => machineFrom({ bridges: '4,2' })).toThrow('add --dxf');
  });

  it('knows how wide a cutter cuts, unless it was measured', () => {
    expect(cutterOf({ dxf: true })).toEqual({ kind: 'unknown', cutWidthMm: 0 });
    expect(cutterOf({ dxf: true, cutter: 'blade' })).toEqual({ kind: 'blade', cutWidthMm: 0 });
    expect(cutterOf({ 'svg-sheets': true, cutter: 'laser' })).toEqual({ kind: 'laser', cutWidthMm: 0.2 });
    expect(cutterOf({ dxf: true, cutter: 'laser', 'cut-width': '0,15' })?.cutWidthMm).toBe(0.15);
  });

  it('goes before what the project says of the cutter, and leaves alone what it does not speak of', () => {
    const saved = { kind: 'laser', cutWidthMm: 0.3, bridges: { count: 2, widthMm: 1 } } as const;
    expect(cutterOf({ dxf: true }, saved)).toEqual(saved);
    expect(cutterOf({ dxf: true, bridges: '4,2' }, saved)).toEqual({ ...saved, bridges: { count: 4, widthMm: 2 } });
    expect(cutterOf({ dxf: true, cutter: 'blade' }, saved)).toEqual({ ...saved, kind: 'blade', cutWidthMm: 0 });
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
