import { describe, expect, it } from 'vitest';
import { edgePath } from '../../../src/steps/seams/edge-path.ts';
import { seamSetFromMarks } from '../../../src/steps/seams/seam-set.ts';
import { sharpEdges } from '../../../src/steps/seams/sharp-edges.ts';
import { boxMesh, meshOf, tubeMesh } from '../../support/meshes.ts';

const marks = (...edges: [number, number][]) => ({ edges, paths: [] });

describe('seamSetFromMarks', () => {
  it('marks edges given either way round, once', () => {
    const result = seamSetFromMarks(boxMesh(10), marks([0, 1], [1, 0], [5, 7]), true);
    expect(result.ok && result.value.count).toBe(2);
  });

  it('passes over an open edge, which is an edge of the foam anyway', () => {
    const result = seamSetFromMarks(tubeMesh(8, 10, 20), marks([0, 1]), true);
    expect(result.ok && result.value.count).toBe(0);
  });

  it('refuses what is no edge, naming the pair', () => {
    const result = seamSetFromMarks(boxMesh(10), marks([0, 7]), true);
    expect(!result.ok && result.problem).toMatchObject({ code: 'seams/no-edge' });
    const outside = seamSetFromMarks(boxMesh(10), marks([0, 99]), true);
    expect(!outside.ok && outside.problem.text).toContain('corner 99');
  });

  it('lists what a project lost instead of refusing it', () => {
    const result = seamSetFromMarks(boxMesh(10), marks([0, 7], [0, 1]), false);
    expect(result.ok && [result.value.count, result.notes[0]?.code]).toEqual([1, 'seams/lost']);
  });
});

describe('sharpEdges', () => {
  it('finds the twelve edges of a box and none of its diagonals', () => {
    expect(sharpEdges(boxMesh(10), 0.5)).toHaveLength(12);
    expect(sharpEdges(boxMesh(10), 1.6)).toHaveLength(0);
  });
});

describe('edgePath', () => {
  it('goes along edges of the polygons, not along diagonals', () => {
    const result = edgePath(boxMesh(10), 0, 3);
    expect(result.ok && result.value.length).toBe(3);
  });

  it('says when two points lie on separate surfaces', () => {
    const mesh = meshOf(
      [
        [0, 0, 0],
        [1, 0, 0],
        [0, 1, 0],
        [5, 0, 0],
        [6, 0, 0],
        [5, 1, 0],
      ],
      [
        [0, 1, 2],
        [3, 4, 5],
      ],
    );
    const result = edgePath(mesh, 0, 4);
    expect(!result.ok && result.problem.code).toBe('seams/no-path');
  });
});
