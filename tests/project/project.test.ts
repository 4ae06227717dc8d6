import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { foamId } from '../../src/base/ids.ts';
import {
  addSeamEdges,
  removeSeamEdges,
  renameProject,
  setFoam,
  setPieceSetting,
  setScale,
  setThickness,
} from '../../src/project/commands.ts';
import { History } from '../../src/project/history.ts';
import { nameFromFile, newProject } from '../../src/project/new-project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { readSeamFile } from '../../src/project/seam-file.ts';

const bytes = new TextEncoder().encode('v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n');

async function project() {
  return newProject('helm', { hash: await contentHash(bytes), fileName: 'helm.obj', format: 'obj' });
}

async function fileText(): Promise<string> {
  const document = await project();
  return writeProjectFile(document, new Map([[document.parts[0].source.hash, { fileName: 'helm.obj', bytes }]]));
}

describe('History', () => {
  it('puts the very same document back', async () => {
    const first = await project();
    const history = new History(first);
    const second = history.run(setScale({ by: 'unit', unit: 'cm' }));
    expect(history.undo()).toBe(first);
    expect(history.redo()).toBe(second);
    expect(history.undoLabel).toBe('set the size');
  });

  it('undoes a row of commands with one merge key as one', async () => {
    const history = new History(await project());
    for (const mm of [7, 8, 9]) history.run(setThickness(mm));
    expect(history.project.parts[0].layers[0].thicknessMm).toBe(9);
    history.undo();
    expect(history.project.parts[0].layers[0].thicknessMm).toBe(6);
    expect(history.canUndo).toBe(false);
  });

  it('never gives one revision number to two contents', async () => {
    const history = new History(await project());
    const printed = history.run(renameProject('old')).revision;
    history.undo();
    expect(history.run(renameProject('new')).revision).toBeGreaterThan(printed);
  });

  it('leaves no trace of a command that changes nothing', async () => {
    const history = new History(await project());
    history.run(renameProject('helm'));
    expect(history.canUndo).toBe(false);
  });

  it('shares what a command does not touch', async () => {
    const history = new History(await project());
    const before = history.project;
    const after = history.run(setThickness(10));
    expect(after.parts[0].seams).toBe(before.parts[0].seams);
    expect(after.paper).toBe(before.paper);
  });
});

describe('commands', () => {
  it('add and remove seam edges whichever way round they are named', async () => {
    const history = new History(await project());
    history.run(
      addSeamEdges([
        [1, 2],
        [2, 1],
        [3, 3],
        [2, 3],
      ]),
    );
    expect(history.project.parts[0].seams.edges).toEqual([
      [1, 2],
      [2, 3],
    ]);
    history.run(removeSeamEdges([[2, 1]]));
    expect(history.project.parts[0].seams.edges).toEqual([[2, 3]]);
  });

  it('bring the neutral fraction with the foam and extend wishes for a piece', async () => {
    const history = new History(await project());
    history.run(setFoam(foamId('eva-10'), 10));
    expect(history.project.parts[0].layers[0]).toMatchObject({ foam: 'eva-10', thicknessMm: 10, neutralFraction: 0.5 });
    history.run(setPieceSetting(0, { name: 'crown' }));
    history.run(setPieceSetting(0, { quantity: 2 }));
    expect(history.project.parts[0].pieceSettings).toEqual([{ face: 0, name: 'crown', quantity: 2 }]);
  });
});

describe('project file', () => {
  it('comes back as it was written, with its source', async () => {
    const result = await readProjectFile(await fileText(), 'helm.foamloft.json');
    expect(result.ok && result.value.project).toEqual(await project());
    expect(result.ok && [...result.value.sources.values()][0].bytes).toEqual(bytes);
  });

  it.each([
    ['project/not-json', (text: string) => text.slice(0, 400)],
    ['project/not-ours', () => '{"version":1}'],
    ['project/newer', (text: string) => text.replace('"schemaVersion": 1', '"schemaVersion": 9')],
    ['project/broken', (text: string) => text.replace('"thicknessMm": 6', '"thicknessMm": -6')],
    ['project/broken', (text: string) => text.replace('"foam": "eva-6"', '"foam": "eva-77"')],
    ['project/source', (text: string) => text.replace(/"base64": "..../, '"base64": "AAAA')],
    ['project/source', (text: string) => text.replace(/"sources": \{[^]*\}\n\}/, '"sources": {}}')],
  ])('says %s of a file that cannot be used', async (code, spoil) => {
    const text = await fileText();
    expect(spoil(text)).not.toBe(text);
    const result = await readProjectFile(spoil(text), 'helm.foamloft.json');
    expect(!result.ok && result.problem.code).toBe(code);
    expect(!result.ok && result.problem.text).toContain('helm.foamloft.json');
  });
});

describe('readSeamFile', () => {
  it('takes edges alone', () => {
    const result = readSeamFile('{"version":1,"edges":[[0,1]]}', 'a.json');
    expect(result.ok && result.value).toEqual({ modelHash: null, marks: { edges: [[0, 1]], paths: [] } });
  });

  it.each([
    '',
    '[]',
    '{"version":2,"edges":[]}',
    '{"version":1,"edges":[[0]]}',
    '{"version":1,"edges":[[0,-1]]}',
    '{"version":1,"edges":[[0,1.5]]}',
  ])('refuses %j', (text) => {
    const result = readSeamFile(text, 'a.json');
    expect(!result.ok && result.problem.text).toContain('a.json');
  });
});

describe('nameFromFile', () => {
  it.each([
    ['lamplighter_helm.obj', 'lamplighter helm'],
    ['C:\\props\\maul-head.STL', 'maul head'],
    ['.obj', 'prop'],
  ])('%s → %s', (file, name) => expect(nameFromFile(file)).toBe(name));
});
