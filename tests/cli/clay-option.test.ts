import { expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { clayFrom, withClay } from '../../src/cli/clay-option.ts';
import { WrongUsage } from '../../src/cli/exit.ts';
import { addRegion } from '../../src/project/commands.ts';
import { block, solidProject } from '../support/run-solid.ts';

it('reads areas in clay with the sheets and the wall of their cores', () => {
  expect(clayFrom({})).toBeUndefined();
  expect(clayFrom({ 'clay-area': ['nose=4', 'a=b=2,5'], 'clay-sheets': '6, 10', 'clay-wall': '8' })).toEqual({
    areas: [
      { area: 'nose', coverMm: 4 },
      { area: 'a=b', coverMm: 2.5 },
    ],
    sheetsMm: [6, 10],
    wallMm: 8,
  });
  for (const wrong of [
    { 'clay-area': ['nose'] },
    { 'clay-area': ['=4'] },
    { 'clay-area': ['nose=-1'] },
    { 'clay-area': ['nose=4'], 'clay-sheets': '6,x' },
    { 'clay-sheets': '6' },
  ])
    expect(() => clayFrom(wrong)).toThrow(WrongUsage);
});

it('says it of an area of the project, and takes it off again', async () => {
  const { project, pipeline } = await solidProject(block([0, 0, 0], [60, 50, 40]));
  const marked = addRegion('nose', [1], 'normal').apply(project);
  const said = await withClay(
    marked,
    clayFrom({ 'clay-area': ['nose=4'], 'clay-sheets': '10,6' }),
    pipeline,
    QUIET_WORK,
  );
  expect(said.parts[0].regions[0].clayCore).toEqual({ coverMm: 4, foams: ['eva-10', 'eva-6'] });
  expect(await withClay(said, clayFrom({ 'clay-area': ['nose=0'] }), pipeline, QUIET_WORK)).toEqual(marked);
  const usual = await withClay(marked, clayFrom({ 'clay-area': ['nose=3'] }), pipeline, QUIET_WORK);
  expect(usual.parts[0].regions[0].clayCore?.foams).toEqual([usual.parts[0].layers[0].foam]);
  for (const words of [['chin=4'], ['nose=4']])
    await expect(
      withClay(marked, clayFrom({ 'clay-area': words, 'clay-sheets': '7' }), pipeline, QUIET_WORK),
    ).rejects.toThrow(WrongUsage);
});
