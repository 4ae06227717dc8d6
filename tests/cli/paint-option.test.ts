import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { parseCommand } from '../../src/cli/args.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { paintFrom, withPaint } from '../../src/cli/paint-option.ts';
import { seamCommands, seamWishesFrom } from '../../src/cli/seam-options.ts';
import { USAGE } from '../../src/cli/usage.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { addRegion } from '../../src/project/commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';
import { outcomeOf } from '../support/run-solid.ts';

const bare = newProject('lid', { hash: '0'.repeat(64), fileName: 'lid.obj', format: 'obj' });
const project = addRegion('visor', [1, 2], 'stiff').apply(bare);
const said = (values: Parameters<typeof paintFrom>[0], of: Project = project): Promise<Project> =>
  withPaint(of, paintFrom(values), new Pipeline(), QUIET_WORK);

describe('colours on the command line', () => {
  it('go into the project, each option as often as wanted', async () => {
    const words = [
      'make',
      'lid.obj',
      '--out',
      'out',
      '--colour',
      'Brass=#B58A3C',
      '--paint',
      'visor=Brass',
      '--fillet',
      'a=8',
    ];
    const { choices } = parseCommand(words, '2026-03-01') as { choices: { paint?: unknown; seamWishes?: unknown } };
    expect(choices.paint).toEqual({
      colours: [{ name: 'Brass', rgb: '#b58a3c' }],
      paints: [{ area: 'visor', colour: 'Brass' }],
    });
    expect(choices.seamWishes).toEqual({ fillets: [{ letter: 'A', radiusMm: 8 }] });
    for (const word of ['--colour', '--paint', '--clay', '--fillet']) expect(USAGE).toContain(word);
    expect(paintFrom({})).toBeUndefined();
    const colour = ['Lamp black=#1d1d1f', 'Brass=#b58a3c,sprayed,3,4.5', 'lamp BLACK=#000000'];
    const painted = await said({ colour, paint: ['visor=brass', 'rest=Lamp black'], clay: ['visor=4,5'] });
    expect(
      painted.shop?.colours?.map(({ name, rgb, coats, coverageM2PerL, figures, cautions }) => [
        name,
        rgb,
        coats,
        coverageM2PerL,
        figures,
        cautions,
      ]),
    ).toEqual([
      ['lamp BLACK', '#000000', 2, 10, 'usual', []],
      ['Brass', '#b58a3c', 3, 4.5, 'label', ['paint']],
    ]);
    expect(painted.shop?.baseColour).toBe('colour-1');
    expect((await said({ coats: 'sealer, primer' })).shop?.coatings?.map(({ use }) => use)).toEqual(['seal', 'prime']);
    expect((await said({ coats: 'none' })).shop?.coatings).toEqual([]);
    expect(painted.parts[0].regions).toEqual([
      { id: 'area-1', name: 'visor', faces: [1, 2], give: 'stiff', colour: 'colour-2', clay: { heightMm: 4.5 } },
    ]);
    const cleared = await said({ paint: ['visor=none', 'rest=none'], clay: ['visor=0'] }, painted);
    expect(cleared.parts).toEqual(project.parts);
    expect(cleared.shop?.baseColour).toBeUndefined();
  });

  it.each([
    { coats: 'tar' },
    { coats: 'sealer,sealer' },
    { colour: ['Brass'] },
    { colour: ['Brass=b58a3c'] },
    { colour: ['rest=#b58a3c'] },
    { colour: ['Brass=#b58a3c,dipped'] },
    { colour: ['Brass=#b58a3c,0'] },
    { colour: ['Brass=#b58a3c,2,0'] },
    { colour: ['Brass=#b58a3c,2,9,9'] },
    { paint: ['visor'] },
    { paint: ['=Brass'] },
    { clay: ['visor=thick'] },
    { clay: ['visor=61'] },
  ])('refuse %j in one sentence', (values) => {
    expect(() => paintFrom(values)).toThrow(WrongUsage);
  });

  it('are refused where there is no such colour, area or room', async () => {
    await expect(said({ paint: ['visor=Brass'] })).rejects.toThrow(/no colour Brass; say what it is with --colour/);
    await expect(said({ colour: ['Brass=#b58a3c'], paint: ['rim=Brass'] })).rejects.toThrow(
      /--paint rim=Brass: the sculpt has visor/,
    );
    const many = Array.from({ length: 13 }, (_, i) => `c${i}=#000000`);
    await expect(said({ colour: many })).rejects.toThrow(Refused);
    expect(() => seamWishesFrom(undefined, undefined, ['A=61'])).toThrow(WrongUsage);
  });

  it('fill a seam by its letter', async () => {
    const corners = [
      [0, 0, 0],
      [80, 0, 0],
      [80, 60, 0],
      [0, 60, 0],
      [0, 60, 50],
      [80, 60, 50],
    ] as const;
    const outcome = await outcomeOf({
      corners,
      faces: [
        [0, 1, 2, 3],
        [3, 2, 5, 4],
      ],
      seams: [[2, 3]],
    });
    const filled = seamCommands(outcome, { fillets: [{ letter: 'A', radiusMm: 8 }] }).reduce(
      (own, command) => command.apply(own),
      outcome.project,
    );
    expect(filled.parts[0].fillets).toMatchObject([{ nth: 0, radiusMm: 8 }]);
    const emptied = seamCommands(outcome, { fillets: [{ letter: 'A', radiusMm: 0 }] }).reduce(
      (own, command) => command.apply(own),
      filled,
    );
    expect(emptied.parts[0].fillets).toBeUndefined();
    expect(() => seamCommands(outcome, { fillets: [{ letter: 'Q', radiusMm: 8 }] })).toThrow(
      /--fillet Q: there is no seam Q/,
    );
  });
});
