import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { SeamPath } from '../../src/model/seams.ts';
import { marksOfOffer } from '../../src/pipeline/offer-marks.ts';
import { addMarks } from '../../src/project/path-commands.ts';
import { tube } from '../reference/handbook/polygon-solids.ts';
import { solidProject } from '../support/run-solid.ts';

describe('a cut that is offered on a sculpt with a line across its faces', () => {
  it('is marked in the words of the file, and opens the piece', async () => {
    const sides = 12;
    const solid = { ...tube(sides, 50, 50, () => 120), seams: [] };
    // A ring half way up: two tubes, neither of which lies flat yet.
    const ring: SeamPath['points'] = [...Array(sides).keys(), 0].map((face) => ({
      face,
      bary: [0.25, 0.25, 0.25, 0.25],
    }));
    const { project, pipeline } = await solidProject(solid, (part) => ({
      ...part,
      seams: { edges: [], paths: [{ points: ring, kind: 'butt' }] },
    }));
    let now = project;
    for (let i = 0; i < 2; i += 1) {
      const { sculpt, drawn, cut } = await pipeline.run(now, QUIET_WORK);
      if (sculpt === null || drawn === null || cut === null) throw new Error('not parted');
      expect(cut.offers).toHaveLength(2 - i);
      now = addMarks(marksOfOffer(cut.offers[0], sculpt, drawn)).apply(now);
      expect(now.parts[0].seams.edges.flat().every((n) => n < 2 * sides)).toBe(true);
    }
    const opened = await pipeline.run(now, QUIET_WORK);
    expect(opened.cut?.offers).toEqual([]);
    expect(opened.pieces).toHaveLength(2);
    expect(opened.cut?.patches.map(({ kind }) => kind)).toEqual(['disc', 'disc']);
  });
});
