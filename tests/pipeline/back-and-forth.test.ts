import { expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Project } from '../../src/project/project.ts';
import { madeSample, sampleProject } from '../support/run-sample.ts';

it('goes on after another size and other seams were tried and taken back', async () => {
  const { project, pipeline } = await sampleProject('bracer');
  const [part] = project.parts;
  const having = (change: Partial<typeof part>): Project => ({ ...project, parts: [{ ...part, ...change }] });
  const first = await pipeline.run(project, QUIET_WORK);
  await pipeline.run(having({ scale: { by: 'size', axis: 'longest', mm: 400 } }), QUIET_WORK);
  // In mm again, but parted elsewhere: one piece is the same as before, seen for the first time since the size was another.
  await pipeline.run(having({ seams: { ...part.seams, edges: part.seams.edges.slice(1) } }), QUIET_WORK);
  const again = await pipeline.run(project, QUIET_WORK);
  expect(again.stopped).toBeNull();
  const outlines = (outcome: typeof first) => outcome.pieces?.map(({ areaMm2 }) => areaMm2.toFixed(4));
  expect(outlines(again)).toEqual(outlines(first));
  // And what was found then is remembered: nothing is made new the next time.
  expect((await pipeline.run(project, QUIET_WORK)).madeNew).toEqual([]);
});

it('comes to the same pieces from nothing and after other seams, also where they lie over themselves', async () => {
  const { project, pipeline } = await madeSample('helm');
  const [part] = project.parts;
  const { edges } = part.seams;
  const fewer = { ...project, parts: [{ ...part, seams: { ...part.seams, edges: edges.slice(edges.length * 0.3) } }] };
  const after = await pipeline.run(fewer, QUIET_WORK);
  const fresh = await (await sampleProject('helm')).pipeline.run(fewer, QUIET_WORK);
  expect(fresh.flats?.some((flat) => (flat?.overlapCount ?? 0) > 0)).toBe(true);
  fresh.flats?.forEach((flat, i) => {
    // The cost is flat round its least, so that a place off by a millionth changes it by far less.
    expect(after.flats?.[i]?.energy).toBeCloseTo(flat?.energy ?? NaN, 9);
  });
});
