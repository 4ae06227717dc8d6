import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { stockFrom, withBetterLayout, withStock } from '../../src/cli/stock-option.ts';
import { foamId } from '../../src/base/ids.ts';
import { move4 } from '../../src/geom/matrix4.ts';
import { vec3 } from '../../src/geom/vec.ts';
import { fillOf } from '../../src/project/fill-rule.ts';
import { addPlain } from '../../src/project/plain-commands.ts';
import { runSample, sampleProject } from '../support/run-sample.ts';
import { scratchFolder } from './run-cli.ts';

describe('foam in hand on the command line', () => {
  it('is said, or nothing is', () => {
    expect(stockFrom({})).toBeUndefined();
    expect(stockFrom({ border: '5', spacing: '0,2', turns: 'half', 'turn-over': true, 'no-buying': true })).toEqual({
      fill: { borderMm: 5, spacingMm: 0.2, turns: 'half', turnOver: true, buys: false },
    });
    expect(stockFrom({ 'lay-out-moves': '300', stock: 'x.json' })).toEqual({ fill: {}, file: 'x.json', moves: 300 });
    for (const wrong of [{ border: '-1' }, { spacing: 'wide' }, { turns: 'two' }, { 'lay-out-moves': '1.5' }])
      expect(() => stockFrom(wrong)).toThrow(/^--/);
  });

  it('takes the place of that of the project, and its faults are told', async () => {
    const { project } = await sampleProject('bracer');
    const { foam } = project.parts[0].layers[0];
    const at = join(scratchFolder(), 'shelf.json');
    const sheet = {
      id: 'a',
      name: 'offcut',
      foam,
      shape: { kind: 'outline', points: [10, 10, 10, 300, 400, 300, 400, 10] },
      count: 1,
    };
    const write = (value: unknown): void => writeFileSync(at, JSON.stringify(value));
    write([sheet]);
    const said = await withStock(project, { file: at, fill: { spacingMm: 1 } });
    expect(said.stock?.sheets).toMatchObject([{ id: 'a', shape: { points: [0, 0, 390, 0, 390, 290, 0, 290] } }]);
    expect(fillOf(said.stock, foam).spacingMm).toBe(1);
    write([{ ...sheet, id: 'b' }]);
    expect((await withStock(said, { file: at, fill: {} })).stock?.sheets).toMatchObject([{ id: 'b' }]);
    for (const [value, word] of [
      [{}, 'list of sheets'],
      [[{ ...sheet, foam: 'felt' }], 'felt'],
      [[sheet, sheet], 'two sheets'],
      [[{ ...sheet, count: 0 }], 'count'],
      [[{ ...sheet, shape: { kind: 'outline', points: [0, 0, 90, 90, 90, 0, 0, 90] } }], 'no clean ring'],
    ] as const) {
      write(value);
      await expect(withStock(project, { file: at, fill: {} })).rejects.toThrow(word);
    }
  });

  it('is laid better for some moves, and the layout is kept', async () => {
    const grip = addPlain({
      kind: 'shape',
      name: 'Grip',
      transform: move4(vec3(1000, 0, 0)),
      copies: 2,
      foams: [foamId('eva-6')],
      shape: 'pipe_wrap',
      sizes: { diameter: '8 mm', length: '30 mm' },
    });
    const outcome = await runSample('bracer', (project) =>
      grip.apply({
        ...project,
        foams: project.foams.map((foam) => ({ ...foam, sheetWidthMm: 420, sheetHeightMm: 600 })),
      }),
    );
    expect(await withBetterLayout(outcome, 0, QUIET_WORK)).toBe(outcome.project);
    const better = await withBetterLayout(outcome, 150, QUIET_WORK);
    expect(better.stock?.kept).toHaveLength(1);
    // What no sculpt is parted for is laid with the rest.
    expect(better.stock?.kept?.[0].places.filter(({ piece }) => piece === 'part-2/wrap')).toHaveLength(2);
    const again = await runSample('bracer', () => better);
    const [before] = outcome.sheets?.sheets ?? [];
    const [after] = again.sheets?.sheets ?? [];
    expect(after.filledMm).toBeLessThan(before.filledMm);
    expect(after.placements.map(({ piece, copy }) => `${piece} ${copy}`).sort()).toEqual(
      before.placements.map(({ piece, copy }) => `${piece} ${copy}`).sort(),
    );
  });
});
