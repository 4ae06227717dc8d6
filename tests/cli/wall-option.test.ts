import { describe, expect, it } from 'vitest';
import { layerId } from '../../src/base/ids.ts';
import { parseCommand } from '../../src/cli/args.ts';
import { WrongUsage } from '../../src/cli/exit.ts';
import { USAGE } from '../../src/cli/usage.ts';
import { staggerFrom, wallFrom, wishedLayers } from '../../src/cli/wall-option.ts';
import { newProject } from '../../src/project/new-project.ts';

const { foams, parts } = newProject('wall', { hash: '0'.repeat(64), fileName: 'wall.obj', format: 'obj' });
const [one] = parts[0].layers;
const two = [one, { ...one, id: layerId('lining'), thicknessMm: 2.2, neutralFraction: 0.4 }];
const told = (layers: ReturnType<typeof wishedLayers>): string[] =>
  layers.map(({ id, foam, thicknessMm }) => `${id} ${foam} ${thicknessMm}`);

describe('a wall on the command line', () => {
  it('is read from the inside outward', () => {
    const command = parseCommand(['make', 'helm.obj', '--out', 'out', '--wall', '6,2.5'], '2026-03-01');
    expect(command).toMatchObject({ choices: { wallMm: [6, 2.5] } });
    expect(USAGE).toContain('--wall');
  });

  it.each(['', '6,', '0', '6,-2', '201', 'six', '1,1,1,1,1,1,1,1,1'])('refuses %j in one sentence', (word) => {
    expect(() => wallFrom(word)).toThrow(WrongUsage);
    expect(() => wallFrom(word)).toThrow(/^--wall takes [^\n]*\.$/);
  });

  it('is not given beside one thickness, nor to the test strip', () => {
    const words = ['make', 'helm.obj', '--out', 'out', '--wall=6,2', '--thickness=6'];
    expect(() => parseCommand(words, '2026-03-01')).toThrow('give --thickness or --wall, not both.');
    expect(() => parseCommand(['strip', '--out', 'out', '--wall=6'], '2026-03-01')).toThrow(WrongUsage);
  });

  it('takes each sheet from the stock, and its id from the wall there was', () => {
    const wall = wishedLayers([one], foams, { wallMm: [10, 6, 2], shrinks: false });
    expect(told(wall)).toEqual(['layer-1 eva-10 10', 'layer-2 eva-6 6', 'layer-3 eva-2 2']);
    expect(told(wishedLayers(two, foams, { wallMm: [6], shrinks: false }))).toEqual(['layer-1 eva-6 6']);
    // No stock is so thick: the foam stays, and its sheet is measured so.
    expect(told(wishedLayers([one], foams, { wallMm: [5.5], shrinks: false }))).toEqual(['layer-1 eva-6 5.5']);
  });

  it('keeps every sheet of a project where nothing is said of it', () => {
    expect(wishedLayers(two, foams, { shrinks: false })).toEqual(two);
    expect(wishedLayers(two, foams, { neutral: 0.3, shrinks: true })).toEqual(
      two.map((layer) => ({ ...layer, neutralFraction: 0.3, allowForShrinkage: true })),
    );
    expect(told(wishedLayers(two, foams, { thicknessMm: 10, shrinks: false }))).toEqual([
      'layer-1 eva-10 10',
      'lining eva-10 10',
    ]);
  });
});

describe('--stagger', () => {
  it.each(['', '0.5', '201', 'x', '1e-3', 'NaN'])('refuses %j in one sentence', (word) => {
    expect(() => staggerFrom(word)).toThrow(/^--stagger takes [^\n]*\.$/);
  });

  it('lays inner sheets to either side in turn, and leaves the outermost', () => {
    const wall = wishedLayers([one], foams, { wallMm: [6, 6, 2], staggerMm: staggerFrom('15'), shrinks: false });
    expect(wall.map(({ staggerMm }) => staggerMm)).toEqual([-15, 15, undefined]);
    const back = wishedLayers(wall, foams, { staggerMm: 0, shrinks: false });
    expect(back.every((layer) => !('staggerMm' in layer))).toBe(true);
    expect(wishedLayers(wall, foams, { shrinks: false })).toEqual(wall);
  });
});
