import { describe, expect, it } from 'vitest';
import { filePairs } from '../../src/app/edge-index.ts';
import { pathName } from '../../src/project/path-names.ts';
import { removeSeamEdges } from '../../src/project/commands.ts';
import { BenchUpdater } from '../../src/worker/bench-update.ts';
import { block, outcomeOf } from '../support/run-solid.ts';

const BOX = block([0, 0, 0], [100, 100, 100]);

describe('edges of a sculpt with a line across its faces', () => {
  const made = outcomeOf(BOX, (part) => ({
    ...part,
    seams: {
      ...part.seams,
      paths: [
        {
          points: [
            { face: 0, bary: [0.25, 0.25, 0.25, 0.25] },
            { face: 2, bary: [0.25, 0.25, 0.25, 0.25] },
          ],
          kind: 'butt',
        },
      ],
    },
  }));

  it('are named as the document names them', async () => {
    const outcome = await made;
    const { sculpt, seams } = new BenchUpdater().next(outcome, 0);
    if (sculpt == null || seams == null || sculpt.edgePathWay === undefined) throw new Error('nothing to show');
    const all = [...sculpt.edgeIsOpen.keys()];
    const names = filePairs(sculpt, all);
    // All that the file has, and the path.
    expect(names.filter(([a, b]) => a >= 0 && b >= 8)).toEqual([]);
    expect(names).toContainEqual([0, 1]);
    expect(names).toContainEqual([...pathName(0)]);
    expect(names.filter(([a]) => a >= 0)).toHaveLength(18);
    // Both halves of the edge that the line crosses have one name.
    const ends = (e: number) => [sculpt.edgeVertices[2 * e], sculpt.edgeVertices[2 * e + 1]];
    const halves = all.filter(
      (e) => seams.chainOfEdge[e] >= 0 && ends(e).some((v) => v < 2) && ends(e).some((v) => v > 7),
    );
    expect(halves).toHaveLength(2);
    expect(filePairs(sculpt, halves)).toEqual([[0, 1]]);
    // The path runs from the first face to the other.
    const along = all.filter((e) => sculpt.edgePathWay?.[e] !== 0);
    expect(filePairs(sculpt, along)).toEqual([pathName(0)]);
    const joined = removeSeamEdges(filePairs(sculpt, along)).apply(outcome.project);
    expect(joined.parts[0].seams.paths).toEqual([]);
  });
});
