import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { foamId } from '../../src/base/ids.ts';
import {
  addRegion,
  addSeamEdges,
  forgetWish,
  freeFaces,
  raiseRegion,
  removeRegion,
  removeSeamEdges,
  renameProject,
  renameRegion,
  setAllowForShrinkage,
  setEdgeWish,
  setFlattenWishes,
  setFoam,
  setPieceSetting,
  setRegionGive,
  setScale,
  setSeams,
  setShrinkage,
  setThickness,
} from '../../src/project/commands.ts';
import { setGrain, setPieceFoam } from '../../src/project/piece-commands.ts';
import { setSeamJoin } from '../../src/project/seam-commands.ts';
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

describe('wishes for laying flat', () => {
  it('change one by one, and a slider undoes as one', async () => {
    const history = new History(await project());
    const before = history.project.parts[0].flatten;
    history.run(setFlattenWishes({ evenOut: true }));
    for (const squashPrice of [2, 3, 4]) history.run(setFlattenWishes({ squashPrice }));
    expect(history.project.parts[0].flatten).toEqual({ ...before, evenOut: true, squashPrice: 4 });
    history.run(setFlattenWishes({ squashPrice: 4 }));
    history.undo();
    expect(history.project.parts[0].flatten).toEqual({ ...before, evenOut: true });
    history.undo();
    expect(history.project.parts[0].flatten).toBe(before);
    expect(history.canUndo).toBe(false);
  });

  it('name areas by polygons that lie in one area each', async () => {
    const history = new History(await project());
    history.run(addRegion('badge', [7, 3, 3, 5], 'stiff'));
    history.run(addRegion('brow', [5, 9], 'soft'));
    expect(history.project.parts[0].regions).toEqual([
      { id: 'area-1', name: 'badge', faces: [3, 7], give: 'stiff' },
      { id: 'area-2', name: 'brow', faces: [5, 9], give: 'soft' },
    ]);
    history.run(freeFaces([3, 7, 9]));
    history.run(addRegion('cheek', [1], 'stiff'));
    history.run(renameRegion('area-2', ' brow ridge '));
    history.run(setRegionGive('area-2', 'stiff'));
    expect(history.project.parts[0].regions).toEqual([
      { id: 'area-2', name: 'brow ridge', faces: [5], give: 'stiff' },
      { id: 'area-1', name: 'cheek', faces: [1], give: 'stiff' },
    ]);
    history.run(removeRegion('area-2'));
    expect(history.project.parts[0].regions.map(({ id }) => id)).toEqual(['area-1']);
  });

  it('raise a sheet on an area, in another foam, and take it off again', async () => {
    const history = new History(await project());
    history.run(addRegion('badge', [3, 7], 'stiff'));
    const [bare] = history.project.parts[0].regions;
    const [thin, other] = history.project.foams;
    const raised = () => history.project.parts[0].regions[0].raised;
    history.run(raiseRegion('area-1', thin));
    const { thicknessMm, neutralFraction } = thin;
    expect(raised()).toEqual({ foam: thin.id, thicknessMm, neutralFraction });
    const before = history.project;
    expect(history.run(raiseRegion('area-1', thin))).toBe(before);
    history.run(raiseRegion('area-1', other));
    expect(raised()?.foam).toBe(other.id);
    history.undo();
    expect(raised()?.foam).toBe(thin.id);
    history.run(raiseRegion('area-1', null));
    expect(history.project.parts[0].regions).toEqual([bare]);
    history.undo();
    // An area that is removed takes its sheet with it.
    history.run(removeRegion('area-1'));
    expect(history.project.parts[0].regions).toEqual([]);
  });

  it('leave no trace of a change to an area that is none', async () => {
    const history = new History(await project());
    history.run(addRegion('badge', [1, 2], 'stiff'));
    const before = history.project;
    for (const command of [
      addRegion('nothing', [], 'soft'),
      freeFaces([3]),
      removeRegion('area-9'),
      renameRegion('area-1', '  '),
      renameRegion('area-1', 'badge'),
      setRegionGive('area-1', 'stiff'),
      setRegionGive('area-9', 'soft'),
    ])
      expect(history.run(command)).toBe(before);
  });

  it('speak for a whole edge of the foam, wherever on it they were made', async () => {
    const history = new History(await project());
    const along = [
      [1, 2],
      [2, 3],
      [3, 4],
    ] as const;
    const wishes = () => history.project.parts[0].edgeWishes;
    history.run(setEdgeWish([[3, 2]], { holdLength: true }));
    history.run(setEdgeWish([[8, 9]], { straight: true }));
    history.run(setEdgeWish(along, { straight: true }));
    expect(wishes()).toEqual([
      { edge: [8, 9], straight: true },
      { edge: [3, 2], holdLength: true, straight: true },
    ]);
    const before = history.project;
    expect(history.run(setEdgeWish(along, { straight: true }))).toBe(before);
    expect(history.run(setEdgeWish([[5, 6]], { straight: false }))).toBe(before);
    history.run(setEdgeWish(along, { holdLength: false }));
    expect(wishes()[1]).toEqual({ edge: [3, 2], straight: true });
    history.run(setEdgeWish(along, { straight: false }));
    expect(wishes()).toEqual([{ edge: [8, 9], straight: true }]);
  });

  it('lay one grain on a piece and take it off again', async () => {
    const history = new History(await project());
    const settings = () => history.project.parts[0].pieceSettings;
    history.run(setPieceSetting(4, { name: 'crown', grain: { angleDeg: 10, stretch: 'any' } }));
    history.run(setGrain([2, 4, 6], { angleDeg: 30, stretch: 'across' }));
    expect(settings()).toEqual([
      { face: 4, name: 'crown' },
      { face: 2, grain: { angleDeg: 30, stretch: 'across' } },
    ]);
    history.run(setGrain([6, 4, 2], null));
    expect(settings()).toEqual([{ face: 4, name: 'crown' }]);
    const before = history.project;
    expect(history.run(setGrain([6, 4, 2], null))).toBe(before);
  });

  it('cut one piece from another foam and from that of its sheet again, beside what else was wished of it', async () => {
    const history = new History(await project());
    const settings = () => history.project.parts[0].pieceSettings;
    history.run(setPieceSetting(4, { name: 'crown' }));
    history.run(setPieceFoam([4, 6], foamId('eva-10')));
    expect(settings()).toEqual([{ face: 4, name: 'crown', foam: 'eva-10' }]);
    const before = history.project;
    expect(history.run(setPieceFoam([4, 6], foamId('eva-10')))).toBe(before);
    history.run(setPieceFoam([6, 4], null));
    expect(settings()).toEqual([{ face: 4, name: 'crown' }]);
    history.undo();
    expect(history.project).toBe(before);
  });

  it('take the seams of a file, and how it joins them where it says so', async () => {
    const history = new History(await project());
    const read = readSeamFile(
      '{"version":1,"edges":[[1,2]],"joins":[{"edge":[1,2],"kind":"rebate","allowanceMm":0}]}',
      'a.json',
    );
    if (!read.ok) throw new Error(read.problem.text);
    history.run(setSeams(read.value.marks, read.value.joins));
    const [part] = history.project.parts;
    expect(part.seams.edges).toEqual([[1, 2]]);
    expect(part.seamSettings).toEqual([{ edge: [1, 2], kind: 'rebate', allowanceMm: 0 }]);
    history.run(setSeams({ edges: [[3, 4]], paths: [] }));
    expect(history.project.parts[0].seamSettings).toBe(part.seamSettings);
  });

  it('join a seam in one way at a time, wherever on it that was said', async () => {
    const history = new History(await project());
    const settings = () => history.project.parts[0].seamSettings;
    const along = [
      [1, 2],
      [2, 3],
    ] as const;
    history.run(setSeamJoin([[3, 2]], { kind: 'lap', allowanceMm: 8, lapFace: 4, lapUnder: true }));
    history.run(setSeamJoin([[8, 9]], { kind: 'rebate', allowanceMm: 0 }));
    history.run(setSeamJoin(along, { kind: 'rebate', allowanceMm: 0, standFace: 5 }));
    expect(settings()).toEqual([
      { edge: [8, 9], kind: 'rebate', allowanceMm: 0 },
      { edge: [3, 2], kind: 'rebate', allowanceMm: 0, standFace: 5 },
    ]);
    const before = history.project;
    expect(history.run(setSeamJoin(along, { kind: 'rebate', allowanceMm: 0, standFace: 5 }))).toBe(before);
    expect(history.run(setSeamJoin([[6, 7]], { kind: 'butt', allowanceMm: 0 }))).toBe(before);
    history.run(setSeamJoin(along, { kind: 'butt', allowanceMm: 0 }));
    expect(settings()).toEqual([{ edge: [8, 9], kind: 'rebate', allowanceMm: 0 }]);
    history.undo();
    expect(history.project).toBe(before);
  });

  it('keep what a foam was measured to lose', async () => {
    const history = new History(await project());
    const [foam] = history.project.foams;
    history.run(setShrinkage(foam.id, { alongPct: 2, acrossPct: 1 }));
    const before = history.project;
    expect(before.foams[0].shrinkage).toEqual({ alongPct: 2, acrossPct: 1 });
    expect(before.foams[1]).not.toHaveProperty('shrinkage');
    expect(history.run(setShrinkage(foam.id, { alongPct: 2, acrossPct: 1 }))).toBe(before);
    history.run(setAllowForShrinkage(true));
    expect(history.project.parts[0].layers[0].allowForShrinkage).toBe(true);
    history.run(setShrinkage(foam.id, null));
    expect(history.project.foams[0]).toEqual(foam);
  });
});

describe('forgetWish', () => {
  it('takes back the one wish and leaves those beside it', async () => {
    const history = new History(await project());
    const part = () => history.project.parts[0];
    history.run(setEdgeWish([[1, 2]], { straight: true, holdLength: true }));
    history.run(forgetWish({ about: 'edge', edges: [[2, 1]], asks: 'straight' }));
    expect(part().edgeWishes).toEqual([{ edge: [1, 2], holdLength: true }]);
    history.run(forgetWish({ about: 'edge', edges: [[1, 2]], asks: 'anything' }));
    expect(part().edgeWishes).toEqual([]);
    history.run(setSeamJoin([[1, 2]], { kind: 'lap', allowanceMm: 8 }));
    history.run(setSeamJoin([[3, 4]], { kind: 'lap', allowanceMm: 8 }));
    history.run(forgetWish({ about: 'seam', edge: [2, 1] }));
    expect(part().seamSettings.map(({ edge }) => edge)).toEqual([[3, 4]]);
    history.run(setPieceSetting(5, { name: 'cheek' }));
    history.run(setPieceSetting(6, { name: 'brow' }));
    history.run(forgetWish({ about: 'piece', face: 5 }));
    expect(part().pieceSettings).toEqual([{ face: 6, name: 'brow' }]);
    history.run(addRegion('badge', [1, 2], 'stiff'));
    history.run(addRegion('rim', [3], 'soft'));
    history.run(forgetWish({ about: 'faces', faces: [2] }));
    history.run(forgetWish({ about: 'area', id: 'area-2' }));
    expect(part().regions.map(({ faces }) => faces)).toEqual([[1]]);
    history.run(setAllowForShrinkage(true));
    history.run(forgetWish({ about: 'shrinkage' }));
    expect(part().layers[0].allowForShrinkage).toBe(false);
    expect(history.undoLabel).toBe('forget a wish');
    history.undo();
    expect(part().layers[0].allowForShrinkage).toBe(true);
  });

  it('changes nothing where the wish is gone already', async () => {
    const before = await project();
    for (const wish of [
      { about: 'edge', edges: [[1, 2]], asks: 'anything' },
      { about: 'seam', edge: [1, 2] },
      { about: 'piece', face: 5 },
      { about: 'area', id: 'area-1' },
      { about: 'faces', faces: [1] },
      { about: 'shrinkage' },
    ] as const)
      expect(forgetWish(wish).apply(before)).toBe(before);
  });
});

describe('project file', () => {
  it('comes back as it was written, with its source', async () => {
    const result = await readProjectFile(await fileText(), 'helm.foamloft.json');
    expect(result.ok && result.value.project).toEqual(await project());
    expect(result.ok && [...result.value.sources.values()][0].bytes).toEqual(bytes);
  });

  it('keeps the sheet that is raised on an area, and refuses one of a foam it has not', async () => {
    const before = await project();
    const [foam] = before.foams;
    const raised = [addRegion('badge', [0], 'stiff'), raiseRegion('area-1', foam)].reduce(
      (now, command) => command.apply(now),
      before,
    );
    const text = (await fileText()).replace('"regions": []', `"regions": ${JSON.stringify(raised.parts[0].regions)}`);
    const read = await readProjectFile(text, 'helm.foamloft.json');
    expect(read.ok && read.value.project).toEqual(raised);
    const broken = await readProjectFile(text.replace(`"raised":{"foam":"${foam.id}"`, '"raised":{"foam":"none"'), 'x');
    expect(broken.ok).toBe(false);
  });

  it.each([
    ['project/not-json', (text: string) => text.slice(0, 400)],
    ['project/not-ours', () => '{"version":1}'],
    ['project/newer', (text: string) => text.replace('"schemaVersion": 1', '"schemaVersion": 9')],
    ['project/broken', (text: string) => text.replace('"thicknessMm": 6', '"thicknessMm": -6')],
    ['project/broken', (text: string) => text.replace(/"squashPrice": \d+/, '"squashPrice": 0')],
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

  it('refuses two areas of one id, by that id', async () => {
    const areas = ['brow', 'badge', 'brow'].map((id) => ({ id, name: 'x', faces: [0], give: 'soft' }));
    const withAreas = async (list: typeof areas) =>
      readProjectFile((await fileText()).replace('"regions": []', `"regions": ${JSON.stringify(list)}`), 'helm.json');
    expect((await withAreas(areas.slice(1))).ok).toBe(true);
    const refused = await withAreas(areas);
    expect(!refused.ok && refused.problem.text).toBe(
      'helm.json cannot be used: two of its areas have the id brow, so that neither can be told from the other; give one of them an id of its own in the file.',
    );
  });
});

describe('readSeamFile', () => {
  it('takes edges alone', () => {
    const result = readSeamFile('{"version":1,"edges":[[0,1]]}', 'a.json');
    expect(result.ok && result.value).toEqual({ modelHash: null, marks: { edges: [[0, 1]], paths: [] }, joins: [] });
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
