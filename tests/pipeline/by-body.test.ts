import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { setBodyMeasure, tieToBody } from '../../src/project/body-commands.ts';
import { setThickness } from '../../src/project/commands.ts';
import { setTape } from '../../src/project/wear-commands.ts';
import { sampleProject } from '../support/run-sample.ts';

describe('a bracer that follows the arm', () => {
  it('has body and ease inside whatever the wall, and its seams stay', async () => {
    const { project: bare, pipeline } = await sampleProject('bracer');
    const run = (project: typeof bare) => pipeline.run(project, QUIET_WORK, { date: '2026-01-01' });
    const plain = await run(bare);
    const facts = plain.sculpt?.facts;
    if (facts === undefined) throw new Error('no sculpt');
    const axis = facts.boxSize.indexOf(Math.max(...facts.boxSize));
    const tape = {
      id: 'tape-1',
      name: 'Forearm',
      pointInFile: [0, 1, 2].map((i) => facts.boxMin[i] + facts.boxSize[i] / 2) as unknown as readonly [
        number,
        number,
        number,
      ],
      normal: [0, 1, 2].map((i) => (i === axis ? 1 : 0)) as unknown as readonly [number, number, number],
    };
    const tie = tieToBody({ measure: 'forearm-girth', easeMm: 15, at: { by: 'tape', tape: 'tape-1' } });
    const tied = tie.apply(setBodyMeasure({ name: 'forearm-girth', mm: 330 }).apply(setTape(tape).apply(bare)));
    const first = await run(tied);
    expect(first.stopped).toBeNull();
    expect(first.bodyFit?.tapes[0].back?.girthMm).toBeCloseTo(345, 6);
    expect(first.findings.map(({ code }) => code)).toContain('size/by-body');
    expect(first.layers[0].seams?.map(({ letter }) => letter)).toEqual(
      plain.layers[0].seams?.map(({ letter }) => letter),
    );
    // The same again makes nothing anew; a thicker wall makes the sculpt larger, the inside stays.
    expect((await run({ ...tied })).madeNew).toEqual([]);
    const thick = await run(setThickness(12).apply(tied));
    expect(thick.bodyFit?.tapes[0].back?.girthMm).toBeCloseTo(345, 6);
    expect(thick.sculpt?.mmPerUnit).not.toBeCloseTo(first.sculpt?.mmPerUnit ?? 0, 3);
    const wider = await run(setBodyMeasure({ name: 'forearm-girth', mm: 360 }).apply(tied));
    expect(wider.bodyFit?.tapes[0].back?.girthMm).toBeCloseTo(375, 6);
  });
});
