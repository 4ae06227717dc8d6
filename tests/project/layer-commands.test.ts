import { describe, expect, it } from 'vitest';
import { foamId, layerId } from '../../src/base/ids.ts';
import { setFoam, setNeutral, setThickness } from '../../src/project/commands.ts';
import { History } from '../../src/project/history.ts';
import { addLayer, moveLayer, removeLayer } from '../../src/project/layer-commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import { MOST_LAYERS } from '../../src/project/project-file.ts';

const begun = (): History =>
  new History(newProject('wall', { hash: '0'.repeat(64), fileName: 'wall.obj', format: 'obj' }));
const wallOf = ({ project }: History): string[] =>
  project.parts[0].layers.map(({ id, thicknessMm, foam }) => `${id} ${foam} ${thicknessMm}`);
const [FIRST, SECOND, THIRD] = ['layer-1', 'layer-2', 'layer-3'].map(layerId);

describe('sheets of a wall', () => {
  it('are added on either side, changed one by one, moved and taken away, and all of it undone', () => {
    const history = begun();
    const first = history.project;
    history.run(addLayer('outside'));
    history.run(setFoam(foamId('eva-2'), 2, SECOND));
    history.run(addLayer('inside'));
    history.run(setFoam(foamId('eva-10'), 10, THIRD));
    expect(wallOf(history)).toEqual(['layer-3 eva-10 10', 'layer-1 eva-6 6', 'layer-2 eva-2 2']);
    history.run(moveLayer(THIRD, 'outside'));
    expect(wallOf(history)).toEqual(['layer-1 eva-6 6', 'layer-3 eva-10 10', 'layer-2 eva-2 2']);
    history.run(moveLayer(SECOND, 'inside'));
    history.run(removeLayer(FIRST));
    expect(wallOf(history)).toEqual(['layer-2 eva-2 2', 'layer-3 eva-10 10']);
    // The id that is free again names the new sheet.
    history.run(addLayer('inside'));
    expect(wallOf(history)).toEqual(['layer-1 eva-2 2', 'layer-2 eva-2 2', 'layer-3 eva-10 10']);
    while (history.canUndo) history.undo();
    expect(history.project).toBe(first);
  });

  it('keep the thickness and neutral fraction of the others, and undo as one only for one sheet', () => {
    const history = begun();
    history.run(addLayer('outside'));
    for (const mm of [5, 5.5]) history.run(setThickness(mm, FIRST));
    history.run(setThickness(2.5, SECOND));
    history.run(setNeutral(0.4, SECOND));
    expect(history.project.parts[0].layers.map(({ neutralFraction }) => neutralFraction)).toEqual([0.5, 0.4]);
    history.undo();
    history.undo();
    expect(wallOf(history)).toEqual(['layer-1 eva-6 5.5', 'layer-2 eva-6 6']);
    history.undo();
    expect(wallOf(history)).toEqual(['layer-1 eva-6 6', 'layer-2 eva-6 6']);
    history.run(setThickness(4));
    expect(wallOf(history)).toEqual(['layer-1 eva-6 4', 'layer-2 eva-6 4']);
  });

  it('stay as they are where there is nothing to do', () => {
    const history = begun();
    const first = history.project;
    history.run(removeLayer(FIRST));
    history.run(removeLayer(SECOND));
    history.run(moveLayer(FIRST, 'outside'));
    history.run(moveLayer(FIRST, 'inside'));
    history.run(moveLayer(SECOND, 'inside'));
    expect(history.project).toBe(first);
    for (let i = 0; i < MOST_LAYERS + 2; i += 1) history.run(addLayer('outside'));
    expect(new Set(wallOf(history)).size).toBe(MOST_LAYERS);
  });
});
