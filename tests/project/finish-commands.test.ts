import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { pieceId } from '../../src/base/ids.ts';
import { CLAYS } from '../../src/model/clay.ts';
import { lightnessOf, MOST_COLOURS } from '../../src/model/colours.ts';
import type { SeamOfPieces } from '../../src/model/shop-choices.ts';
import { addRegion, type Command } from '../../src/project/commands.ts';
import {
  addColour,
  canAddColour,
  clayRegion,
  colourRegion,
  newColour,
  paintFaces,
  removeColour,
  setBaseColour,
  setClay,
  setColour,
  setFillet,
} from '../../src/project/finish-commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { Project } from '../../src/project/project.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';

const SCHEMA = JSON.parse(readFileSync('shared/project.schema.json', 'utf8')) as Schema;
const SEAM: SeamOfPieces = { pieces: [pieceId('p1'), pieceId('p2')], nth: 0 };

const bytes = new TextEncoder().encode('v 0 0 0\n');
const done = (project: Project, ...commands: readonly Command[]): Project =>
  commands.reduce((changed, command) => command.apply(changed), project);

async function start(): Promise<{ first: Project; textOf: (project: Project) => string }> {
  const hash = await contentHash(bytes);
  const sources = new Map([[hash, { fileName: 'x.obj', bytes }]]);
  const first = newProject('x', { hash, fileName: 'x.obj', format: 'obj' });
  return { first, textOf: (project) => writeProjectFile(project, sources) };
}

describe('colours and clay in the document', () => {
  it('are kept in the file, read again, and as the schema says', async () => {
    const { first, textOf } = await start();
    const said = done(
      first,
      addColour(newColour('Lamp black', '#1D1D1F')),
      addColour({ ...newColour('Brass', '#b58a3c'), coats: 3 }),
      setBaseColour('colour-1'),
      paintFaces('Visor', [4, 3, 4], 'colour-2'),
      clayRegion('area-1', 5),
      setFillet(SEAM, 8),
      setClay({ ...CLAYS[0], layerMm: 4 }),
    );
    const [{ regions, fillets }] = said.parts;
    expect(regions).toEqual([
      { id: 'area-1', name: 'Visor', faces: [3, 4], give: 'normal', colour: 'colour-2', clay: { heightMm: 5 } },
    ]);
    expect(fillets).toEqual([{ ...SEAM, radiusMm: 8 }]);
    const text = textOf(said);
    expect(schemaFaults(SCHEMA, JSON.parse(text))).toEqual([]);
    expect(expectOk(await readProjectFile(text, 'x')).project).toEqual(JSON.parse(JSON.stringify(said)));
  });

  it('are refused in a file that cannot be painted', async () => {
    const { first, textOf } = await start();
    const text = textOf(done(first, addColour(newColour('Brass', '#b58a3c')), paintFaces('Rim', [1], 'colour-1')));
    const faults: readonly (readonly [string, string, RegExp])[] = [
      ['"colour": "colour-1"', '"colour": "colour-9"', /paints with the colour colour-9/],
      ['"rgb": "#b58a3c"', '"rgb": "brass"', /rgb/],
      ['"coverageM2PerL": 10', '"coverageM2PerL": 0', /coverageM2PerL/],
      ['"coats": 2', '"coats": 2.5', /coats/],
    ];
    for (const [good, bad, said] of faults) {
      const broken = text.replace(good, bad);
      expect(broken).not.toBe(text);
      expect(expectProblem(await readProjectFile(broken, 'x'), 'project/broken').text).toMatch(said);
    }
  });

  it('leave nothing behind when they are taken back', async () => {
    const { first } = await start();
    const listed = done(first, addColour(newColour('Brass', '#b58a3c')), addRegion('Rim', [1, 2], 'stiff'));
    const painted = done(listed, colourRegion('area-1', 'colour-1'), setBaseColour('colour-1'));
    const gone = removeColour('colour-1').apply(painted);
    expect(gone.shop).toBeUndefined();
    expect(gone.parts).toEqual(addRegion('Rim', [1, 2], 'stiff').apply(first).parts);
    const filled = done(first, setFillet(SEAM, 6));
    const [a, b] = SEAM.pieces;
    expect(done(filled, setFillet({ pieces: [b, a], nth: 0 }, null))).toEqual(first);
    expect(setFillet(SEAM, 6).apply(filled)).toBe(filled);
    expect(setClay(CLAYS[0]).apply(first)).toBe(first);
    expect(paintFaces('Rim', [9], null).apply(first)).toBe(first);
    // Part of a stiff area that is painted stays stiff.
    expect(
      paintFaces('Spot', [2], 'colour-1')
        .apply(listed)
        .parts[0].regions.map(({ give }) => give),
    ).toEqual(['stiff', 'stiff']);
  });

  it('say whose figures they are, and keep names apart', async () => {
    const { first } = await start();
    const two = done(first, addColour(newColour('Brass', '#b58a3c')), addColour(newColour('Chalk', '#ffffff')));
    expect(done(two, addColour(newColour(' BRASS ', '#000000')))).toBe(two);
    expect(done(two, setColour('colour-2', { name: 'brass' }))).toBe(two);
    const read = done(two, setColour('colour-2', { coverageM2PerL: 7.5 }));
    expect(read.shop?.colours?.map(({ figures }) => figures)).toEqual(['usual', 'label']);
    expect(() => setColour('colour-2', { coats: 0 }).apply(two)).toThrow(RangeError);
    const many = Array.from({ length: MOST_COLOURS }, (_, i) => addColour(newColour(`c${i}`, '#000000')));
    expect(canAddColour(done(first, ...many).shop?.colours ?? [], 'one more')).toBe(false);
    expect(lightnessOf({ rgb: '#ffffff' })).toBeCloseTo(1, 12);
    expect(lightnessOf({ rgb: '#808080' })).toBeCloseTo(0.2158605, 6);
  });
});
