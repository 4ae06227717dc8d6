import { beforeAll, describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { parseCommand } from '../../src/cli/args.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { seamCommands, type SeamWishes } from '../../src/cli/seam-options.ts';
import { USAGE } from '../../src/cli/usage.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import type { Pipeline } from '../../src/pipeline/pipeline.ts';
import type { Project } from '../../src/project/project.ts';
import { solidProject } from '../support/run-solid.ts';

function wishesOf(...words: string[]): SeamWishes | undefined {
  const command = parseCommand(['make', 'helm.obj', '--out', 'out', ...words], '2026-03-01');
  if (command.name !== 'make') throw new Error(`read as ${command.name}`);
  return command.choices.seamWishes;
}

const [COS_20, SIN_20, COS_140, SIN_140] = [20, 140].flatMap((angle) => [
  Math.cos((angle * Math.PI) / 180),
  Math.sin((angle * Math.PI) / 180),
]);

/** Three panels of 100 by 60 mm in a row, folded by 20 and then by 120 degrees; both folds are seams. */
const ROW = {
  corners: [
    [0, 0],
    [60, 0],
    [60 + 60 * COS_20, -60 * SIN_20],
    [60 + 60 * COS_20 + 60 * COS_140, -60 * SIN_20 - 60 * SIN_140],
  ].flatMap(([x, z]): [number, number, number][] => [
    [x, 0, z],
    [x, 100, z],
  ]),
  faces: [
    [0, 2, 3, 1],
    [2, 4, 5, 3],
    [4, 6, 7, 5],
  ],
  seams: [
    [2, 3],
    [4, 5],
  ] as [number, number][],
};

describe('seams named by letter on the command line', () => {
  let project: Project;
  let pipeline: Pipeline;
  let outcome: Outcome;
  let [gentle, steep] = ['', ''];

  beforeAll(async () => {
    ({ project, pipeline } = await solidProject(ROW));
    outcome = await pipeline.run(project, QUIET_WORK, {});
    const letterOf = (sharp: boolean): string =>
      outcome.cut?.chains.find(({ letter, foldRad }) => letter !== '' && Math.abs(foldRad[0]) > 1 === sharp)?.letter ??
      '';
    [gentle, steep] = [letterOf(false), letterOf(true)];
  });

  const changed = (wishes: SeamWishes): Project =>
    seamCommands(outcome, wishes).reduce((before, command) => command.apply(before), project);

  it('are built as is wished', async () => {
    const wished = changed({ steep: [{ letter: steep, way: 'split' }] });
    expect(wished.parts[0].seamSettings).toEqual([{ edge: [4, 5], kind: 'butt', allowanceMm: 0, steep: 'split' }]);
    const { seams } = await pipeline.run(wished, QUIET_WORK, {});
    expect(seams?.find(({ letter }) => letter === steep)?.steep?.way).toBe('split');
  });

  it('are scored instead of parted', async () => {
    const wished = changed({ scores: [{ letter: gentle, depthMm: 2.5, openMm: 1 }] });
    expect(wished.parts[0].scores).toMatchObject([{ edges: [[2, 3]], depthMm: 2.5, openMm: 1 }]);
    const { pieces } = await pipeline.run(wished, QUIET_WORK, {});
    expect(pieces?.length).toBe(2);
    expect(pieces?.flatMap(({ scores = [] }) => scores.map(({ depthMm }) => depthMm))).toEqual([2.5]);
  });

  it('are refused in one sentence where they are not there, or are not steep', () => {
    const told = (wishes: SeamWishes) => () => seamCommands(outcome, wishes);
    const none = told({ steep: [{ letter: 'Q', way: 'fill' }] });
    expect(none).toThrow(Refused);
    expect(none).toThrow('--steep Q=fill: there is no seam Q; the sculpt has seams A to B.');
    expect(told({ scores: [{ letter: 'C', depthMm: 1, openMm: 0 }] })).toThrow(/^--score C: there is no seam C/);
    expect(told({ steep: [{ letter: gentle, way: 'trim' }] })).toThrow(
      `--steep ${gentle}=trim: blade and table lean far enough for seam ${gentle}, whose fold is at most 20 degrees.`,
    );
  });
});

describe('wishes for seams on the command line', () => {
  it('are read by letter, as often as wanted', () => {
    expect(wishesOf()).toBeUndefined();
    expect(wishesOf('--steep', 'a=split', '--steep=AB=trim', '--score', 'C=3,1.5', '--score=d=2')).toEqual({
      steep: [
        { letter: 'A', way: 'split' },
        { letter: 'AB', way: 'trim' },
      ],
      scores: [
        { letter: 'C', depthMm: 3, openMm: 1.5 },
        { letter: 'D', depthMm: 2, openMm: 2 },
      ],
    });
    expect(USAGE).toContain('--steep LETTER=WAY');
    expect(USAGE).toContain('--score LETTER=MM,MM');
  });

  it.each([
    ['--steep=A', /^--steep looks like A=split: .*\.$/],
    ['--steep=1=split', /^--steep looks like A=split/],
    ['--steep=A=split=2', /^--steep looks like A=split/],
    ['--steep=A=glue', /^--steep takes A= and one of split, fill, trim, not glue\.$/],
    ['--steep=A=', /^--steep takes .*, not nothing\.$/],
    ['--score=3', /^--score looks like A=3,2/],
    ['--score=A=0', /^--score takes how deep and how wide it opens in mm, as A=3,2, not 0\.$/],
    ['--score=A=3,-1', /^--score takes how deep/],
    ['--score=A=3,1,1', /^--score takes how deep/],
    ['--score=A=', /not nothing\.$/],
    ['--score=A=deep', /not deep\.$/],
  ])('refuse %s in one sentence', (word, sentence) => {
    expect(() => wishesOf(word)).toThrow(WrongUsage);
    expect(() => wishesOf(word)).toThrow(sentence);
  });

  it('refuse a seam that is named twice', () => {
    expect(() => wishesOf('--steep=A=fill', '--score=a=3')).toThrow('seam A is named twice: say one thing of a seam.');
  });
});
