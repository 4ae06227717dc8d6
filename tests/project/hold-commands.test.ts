import { describe, expect, it } from 'vitest';
import {
  addRegion,
  addSeamEdges,
  clearSeams,
  moveSeam,
  removeSeamEdges,
  setPieceSetting,
  setRegionGive,
  setRegionSeams,
} from '../../src/project/commands.ts';
import { History } from '../../src/project/history.ts';
import { holdPiece, holdSeams, isHeld, letPieceGo, letSeamsGo } from '../../src/project/hold-commands.ts';
import { onBothSides, setMirror } from '../../src/project/mirror-commands.ts';
import { newProject } from '../../src/project/new-project.ts';

const begun = (): History => {
  const history = new History(newProject('helm', { hash: '0'.repeat(64), fileName: 'helm.obj', format: 'obj' }));
  history.run(
    addSeamEdges([
      [0, 1],
      [1, 2],
      [2, 3],
    ]),
  );
  return history;
};
const partOf = ({ project }: History) => project.parts[0];

describe('held seams', () => {
  it('are held where there are seams, whichever way they are named, each once', () => {
    const history = begun();
    history.run(
      holdSeams([
        [1, 0],
        [7, 8],
        [2, 1],
      ]),
    );
    expect(partOf(history).heldSeams).toEqual([
      [0, 1],
      [1, 2],
    ]);
    const { project } = history;
    history.run(holdSeams([[0, 1]]));
    expect(history.project).toBe(project);
    history.run(letSeamsGo([[2, 1]]));
    expect(partOf(history).heldSeams).toEqual([[0, 1]]);
    history.run(letSeamsGo([[0, 1]]));
    expect('heldSeams' in partOf(history)).toBe(false);
    history.undo();
    expect(partOf(history).heldSeams).toEqual([[0, 1]]);
  });

  it('are forgotten with their seam', () => {
    const history = begun();
    history.run(
      holdSeams([
        [0, 1],
        [1, 2],
      ]),
    );
    history.run(removeSeamEdges([[1, 0]]));
    expect(partOf(history).heldSeams).toEqual([[1, 2]]);
    history.run(clearSeams());
    expect('heldSeams' in partOf(history)).toBe(false);
  });

  it('stay held where a hand moves them, and other moves leave them', () => {
    const history = begun();
    history.run(holdSeams([[1, 2]]));
    const { seams, seamSettings: settings, edgeWishes, heldSeams } = partOf(history);
    const before = { seams, settings, edgeWishes, heldSeams };
    for (const corner of [8, 9]) {
      history.run(
        moveSeam(
          before,
          [[1, 2]],
          [
            [1, corner],
            [corner, 2],
          ],
          'drag',
        ),
      );
      expect(partOf(history).heldSeams).toEqual([
        [1, corner],
        [corner, 2],
      ]);
    }
    history.run(moveSeam(before, [[2, 3]], [[2, 4]], 'other'));
    expect(partOf(history).heldSeams).toEqual([[1, 2]]);
  });
});

it('holds a piece beside other wishes for it, and lets it go again', () => {
  const history = begun();
  history.run(setPieceSetting(7, { name: 'brow' }));
  history.run(holdPiece([7, 8]));
  expect(partOf(history).pieceSettings).toEqual([{ face: 7, name: 'brow', held: true }]);
  expect(isHeld(partOf(history), [9, 7])).toBe(true);
  const { project } = history;
  history.run(holdPiece([8, 7]));
  expect(history.project).toBe(project);
  history.run(letPieceGo([8, 7]));
  expect(partOf(history).pieceSettings).toEqual([{ face: 7, name: 'brow' }]);
  history.run(holdPiece([4]));
  history.run(letPieceGo([4]));
  expect(partOf(history).pieceSettings).toEqual([{ face: 7, name: 'brow' }]);
});

it('says of an area what holds for seams, though it gives as the rest', () => {
  const history = begun();
  history.run(addRegion('Face', [5, 4], 'normal', 'clear'));
  expect(history.undoLabel).toBe('keep an area clear of seams');
  expect(partOf(history).regions).toEqual([
    { id: 'area-1', name: 'Face', faces: [4, 5], give: 'normal', seams: 'clear' },
  ]);
  history.run(setRegionGive('area-1', 'soft'));
  history.run(setRegionSeams('area-1', 'prefer'));
  expect(partOf(history).regions).toEqual([
    { id: 'area-1', name: 'Face', faces: [4, 5], give: 'soft', seams: 'prefer' },
  ]);
  const { project } = history;
  history.run(setRegionSeams('area-1', 'prefer'));
  expect(history.project).toBe(project);
  history.run(setRegionSeams('area-1', null));
  expect(partOf(history).regions).toEqual([{ id: 'area-1', name: 'Face', faces: [4, 5], give: 'soft' }]);
});

it('sets a mirror, puts it away and finds it again', () => {
  const history = begun();
  const plane = { by: 'plane', pointInFile: [1, 0, 0], normal: [1, 0, 0] } as const;
  history.run(setMirror(plane));
  expect(partOf(history).mirror).toEqual(plane);
  const { project } = history;
  history.run(setMirror({ ...plane }));
  expect(history.project).toBe(project);
  history.run(setMirror({ ...plane, pointInFile: [2, 0, 0] }));
  expect(history.project).not.toBe(project);
  history.run(setMirror({ by: 'off' }));
  history.run(setMirror(null));
  expect('mirror' in partOf(history)).toBe(false);
  history.undo();
  expect(partOf(history).mirror).toEqual({ by: 'off' });
});

it('marks on both sides, each edge once, where there is one on the other side', () => {
  const partnerOfFile = [1, 0, 2, 4, 3, -1];
  const marks = onBothSides(
    [
      [0, 2],
      [2, 1],
      [3, 0],
      [5, 3],
    ],
    partnerOfFile,
    ([a, b]) => a + b !== 5 || a !== 4,
  );
  // 0-2 and 1-2 are each other's images; 4-1 is no edge of the sculpt; corner 5 has no partner.
  expect(marks).toEqual([
    [0, 2],
    [2, 1],
    [3, 0],
    [5, 3],
  ]);
  expect(onBothSides([[0, 3]], partnerOfFile, () => true)).toEqual([
    [0, 3],
    [1, 4],
  ]);
});
