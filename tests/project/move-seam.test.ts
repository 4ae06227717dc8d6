import { describe, expect, it } from 'vitest';
import { moveSeam } from '../../src/project/commands.ts';
import { History } from '../../src/project/history.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';

/** A seam 1-2-3-4 with a setting tied to its edge 2-3, and an edge 8-9 elsewhere. */
function begin(): Project {
  const project = newProject('helm', { hash: '0'.repeat(64), fileName: 'helm.obj', format: 'obj' });
  const part = {
    ...project.parts[0],
    seams: {
      edges: [
        [1, 2],
        [2, 3],
        [3, 4],
        [8, 9],
      ] as [number, number][],
      paths: [],
    },
    seamSettings: [{ edge: [3, 2] as [number, number], kind: 'lap' as const, allowanceMm: 8 }],
    edgeWishes: [{ edge: [2, 3] as [number, number], straight: true }],
  };
  return { ...project, parts: [part] };
}

/** The edges of a walk from corner to corner. */
const walk = (...corners: number[]): [number, number][] => corners.slice(1).map((v, i) => [corners[i], v]);

const before = ({ parts: [part] }: Project) => ({
  seams: part.seams,
  settings: part.seamSettings,
  edgeWishes: part.edgeWishes,
});

describe('moving a seam', () => {
  it('leaves what it left, takes what it took, and keeps its setting', () => {
    const project = begin();
    const [part] = moveSeam(before(project), walk(2, 3, 4), walk(2, 6, 4), 'drag').apply(project).parts;
    expect(part.seams.edges).toEqual([
      [1, 2],
      [8, 9],
      [2, 6],
      [6, 4],
    ]);
    expect(part.seamSettings).toEqual([{ edge: [2, 6], kind: 'lap', allowanceMm: 8 }]);
    expect(part.edgeWishes).toEqual([{ edge: [2, 6], straight: true }]);
  });

  it('counts every step of a drag from its beginning, and undoes them as one', () => {
    const project = begin();
    const history = new History(project);
    history.run(moveSeam(before(project), walk(2, 3, 4), walk(2, 6, 4), 'drag'));
    history.run(moveSeam(before(project), walk(2, 3, 4), walk(2, 7, 4), 'drag'));
    expect(history.project.parts[0].seams.edges).toEqual([
      [1, 2],
      [8, 9],
      [2, 7],
      [7, 4],
    ]);
    expect(history.undo()).toBe(project);
  });

  it('takes an edge once, wherever it is a seam already', () => {
    const project = begin();
    const [part] = moveSeam(
      before(project),
      [[2, 3]],
      [
        [9, 8],
        [2, 5],
        [5, 2],
      ],
      'drag',
    ).apply(project).parts;
    expect(part.seams.edges).toEqual([
      [1, 2],
      [3, 4],
      [9, 8],
      [2, 5],
    ]);
  });
});
