import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { WrongUsage } from '../../src/cli/exit.ts';
import { raisedRegions, raisesFrom } from '../../src/cli/raise-option.ts';
import { USAGE } from '../../src/cli/usage.ts';
import { newProject } from '../../src/project/new-project.ts';

const { foams } = newProject('lid', { hash: '0'.repeat(64), fileName: 'lid.obj', format: 'obj' });
const areas = [
  { id: 'area-1', name: 'flame', faces: [1, 2], give: 'stiff' },
  { id: 'area-2', name: 'rim = brow', faces: [5], give: 'soft' },
] as const;

describe('raised sheets on the command line', () => {
  it('are named by their area and the mm of their foam', () => {
    const words = ['make', 'lid.foamloft.json', '--out', 'out', '--raise', 'flame=2', '--raise', 'rim = brow=6'];
    const raises = [
      { area: 'flame', thicknessMm: 2 },
      { area: 'rim = brow', thicknessMm: 6 },
    ];
    expect(parseCommand(words, '2026-03-01')).toMatchObject({ choices: { raises } });
    expect(USAGE).toContain('--raise');
    expect(raisedRegions(areas, raises, foams)).toEqual([
      { ...areas[0], raised: { foam: 'eva-2', thicknessMm: 2, neutralFraction: 0.5 } },
      { ...areas[1], raised: { foam: 'eva-6', thicknessMm: 6, neutralFraction: 0.5 } },
    ]);
  });

  it('are taken off by 0', () => {
    const raised = raisedRegions(areas, [{ area: 'flame', thicknessMm: 2 }], foams);
    expect(raisedRegions(raised, [{ area: 'flame', thicknessMm: 0 }], foams)).toEqual(areas);
    expect(raisedRegions(raised, [], foams)).toBe(raised);
  });

  it.each(['', 'flame', '=2', 'flame=', 'flame=-2', 'flame=two', 'flame=201'])('refuses %j in one sentence', (word) => {
    expect(() => raisesFrom([word])).toThrow(WrongUsage);
    expect(() => raisesFrom([word])).toThrow(/^--raise [^\n]*\.$/);
  });

  it('need an area that is there, and foam of the stock', () => {
    const raise = (area: string, thicknessMm: number) => () => raisedRegions(areas, [{ area, thicknessMm }], foams);
    expect(raise('badge', 2)).toThrow('--raise badge=2: the project has areas flame, rim = brow.');
    expect(raise('flame', 3)).toThrow('--raise flame=3: the stock has foam of 2, 6, 10, 15 mm.');
    expect(() => raisedRegions([], [{ area: 'flame', thicknessMm: 2 }], foams)).toThrow('the project has no areas');
  });
});
