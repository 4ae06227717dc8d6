import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { foamId } from '../../src/base/ids.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { IN_PLACE } from '../../src/geom/matrix4.ts';
import { USUAL_WEIGHTS } from '../../src/model/build-up.ts';
import { USUAL_ARTWORK } from '../../src/pipeline/artwork.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { USUAL_PICTURE } from '../../src/pipeline/picture-artwork.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { PlainStage } from '../../src/pipeline/plain/plain-stage.ts';
import type { PartCraft } from '../../src/project/artwork-part.ts';
import { newProject } from '../../src/project/new-project.ts';
import { addPlain, changePlain, type NewPlain } from '../../src/project/plain-commands.ts';
import type { ArtworkPart, PlainSource } from '../../src/project/plain-part.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { Project } from '../../src/project/project.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { greyPng } from '../support/png-of.ts';

const SCHEMA = JSON.parse(readFileSync('shared/project.schema.json', 'utf8')) as Schema;

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A ring of 40 mm with a hole of 20 mm, drawn in mm. */
const RING = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">
<path id="ring" fill-rule="evenodd" d="M10 30a20 20 0 1 0 40 0a20 20 0 1 0 -40 0zM20 30a10 10 0 1 0 20 0a10 10 0 1 0 -20 0z"/></svg>`;
const LINE = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="20mm" viewBox="0 0 200 20"><path d="M0 10H180" fill="none" stroke="#000"/></svg>`;
/** A box of 20 x 20 x 16 mm. */
const BOX = `v 0 0 0\nv 20 0 0\nv 20 20 0\nv 0 20 0\nv 0 0 16\nv 20 0 16\nv 20 20 16\nv 0 20 16
f 4 3 2 1\nf 5 6 7 8\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n`;

const files = new Map<string, { fileName: string; bytes: Uint8Array }>();
async function filed(fileName: string, bytes: Uint8Array): Promise<PlainSource> {
  const hash = await contentHash(bytes);
  files.set(hash, { fileName, bytes });
  return { hash, fileName };
}

const common = { transform: IN_PLACE, copies: 1 };
const drawing = { from: 'svg', choice: USUAL_ARTWORK } as const;
const bare: Project = { ...newProject('kit', { hash: '', fileName: 'x.obj', format: 'obj' }), parts: [] };
const with_ = (parts: readonly NewPlain[]): Project =>
  parts.reduce<Project>((project, part) => addPlain(part).apply(project), bare);

function pipelineOf(): Pipeline {
  const pipeline = new Pipeline();
  for (const [hash, source] of files) pipeline.putSource(hash, source);
  return pipeline;
}
const errors = ({ findings }: Outcome): readonly string[] =>
  findings.filter(({ severity }) => severity === 'error').map(({ text }) => text);

describe('a project of parts of all kinds', async () => {
  const [ring, line, box] = [
    await filed('badge.svg', bytesOf(RING)),
    await filed('line.svg', bytesOf(LINE)),
    await filed('box.obj', bytesOf(BOX)),
  ];
  const px = 40;
  const square = await filed(
    'square.png',
    greyPng(px, px, (x, y) => (x >= 10 && x < 30 && y >= 10 && y < 30 ? 0 : 1)),
  );
  const eva = (mm: number) => foamId(`eva-${mm}`);
  const badge = (name: string, craft: PartCraft): NewPlain => ({
    kind: 'artwork',
    ...{ ...common, name, foams: [eva(2)], source: ring, drawing, craft },
  });
  const wish = { axis: { x: 0, y: 0, z: 1 }, rule: 'larger', seat: 'bottom' } as const;
  const project = with_([
    {
      kind: 'stack',
      ...common,
      name: 'Block',
      foams: [eva(10), eva(6)],
      source: box,
      scale: { by: 'unit', unit: 'mm' },
      wish,
    },
    {
      kind: 'stack',
      ...{ ...common, name: 'Pommel', foams: [eva(10)], wish: { ...wish, rule: 'middle' as const } },
      turned: [
        { lengthMm: 0, radiusMm: 30 },
        { lengthMm: 20, radiusMm: 30 },
      ],
    },
    badge('Badge', { kind: 'cut', quantity: 2 }),
    badge('Raised', { kind: 'raised', layers: 2, edge: { kind: 'square' }, rule: 'edge' }),
    badge('Inlay', { kind: 'inlay', clearanceMm: 0.4, from: 'pocket', kerfMm: 0, corners: 'round' }),
    badge('Wider', { kind: 'offset', distanceMm: 2, corners: 'round' }),
    badge('Band', { kind: 'round', repeat: { count: 4 }, spacedOn: 'outside', barrelMm: 110, as: 'engrave' }),
    {
      ...badge('Row', { kind: 'along', repeat: { count: 3 }, startMm: 0, endMm: 0, ends: 'none', stand: 'along' }),
      other: line,
    } as NewPlain,
    {
      kind: 'artwork',
      ...{ ...common, name: 'Tile', foams: [eva(2)], source: square, craft: { kind: 'cut' as const } },
      drawing: { from: 'picture', choice: { ...USUAL_PICTURE, size: { by: 'width', mm: 20 } } },
    },
    {
      kind: 'build-up',
      ...{ ...common, name: 'Handle', foams: [eva(6)] },
      wish: {
        core: { diameterMm: 32, overallMm: 200, glueRoomMm: 0.3, places: [] },
        profile: [
          { atMm: 0, radiusMm: 22 },
          { atMm: 100, radiusMm: 22 },
        ],
        rule: 'sand',
        weights: USUAL_WEIGHTS,
        seamTurnDeg: 137.5,
        staves: [],
        windings: [],
      },
    },
  ]);
  const pipeline = pipelineOf();
  const outcome = await pipeline.run(project, QUIET_WORK);
  const of = (name: string) => outcome.plain.find(({ part }) => part.name === name)!;

  it('makes each of them, numbered on and without an error', () => {
    expect(errors(outcome)).toEqual([]);
    expect(outcome.plain.map(({ pieces }) => pieces.length > 0)).not.toContain(false);
    const numbers = outcome.plain.flatMap(({ pieces }) => pieces.map(({ number }) => number));
    expect(numbers).toEqual(numbers.map((_, i) => i + 1));
    expect(outcome.templates).toHaveLength(numbers.length);
  });

  it('stacks of more models than are kept are all made', async () => {
    const models = await Promise.all(
      [...Array(17).keys()].map((i) => filed(`box-${i}.obj`, bytesOf(`# ${i}\n${BOX}`))),
    );
    const many = with_(
      models.map((source) => ({ kind: 'stack', ...common, name: 'Box', foams: [eva(10)], source, wish })),
    );
    const stage = new PlainStage((hash) => files.get(hash));
    await stage.read(many, QUIET_WORK);
    expect(stage.make(many, 1, [], () => null, []).filter(({ work }) => work === null)).toEqual([]);
  });

  it('stacks take the sheets of their foams: their heights make up the solid', () => {
    const layers = of('Block').pieces.map(({ thicknessMm, quantity, areaMm2 }) => [thicknessMm, quantity, areaMm2]);
    expect(layers.reduce((sum, [mm, count]) => sum + mm * count, 0)).toBeCloseTo(16, 9);
    for (const [, , area] of layers) expect(area).toBeCloseTo(400, 2);
    const [disc] = of('Pommel').pieces;
    expect(disc.quantity).toBe(2);
    // Euclid XII.2: pi r².
    expect(disc.areaMm2 / (Math.PI * 900)).toBeCloseTo(1, 3);
  });

  it('artwork is cut from its foam as its craft says', () => {
    const area = Math.PI * (400 - 100);
    expect(of('Badge').pieces).toMatchObject([{ quantity: 2, thicknessMm: 2 }]);
    expect(of('Badge').pieces[0].areaMm2 / area).toBeCloseTo(1, 2);
    expect(of('Raised').pieces.map(({ name }) => name)).toEqual(['Raised ring, layer 1', 'Raised ring, layer 2']);
    expect(of('Inlay').pieces[0].draft.notes).toContain('Cut its pocket 0.40 mm outside of this line.');
    expect(of('Wider').pieces[0].areaMm2 / (Math.PI * (22 ** 2 - 8 ** 2))).toBeCloseTo(1, 2);
    // Foam model 2: round the neutral surface, pi (D + 2 k t).
    const [strip] = of('Band').pieces;
    expect(strip.areaMm2).toBeCloseTo(Math.PI * (110 + 2) * 80, 6);
    expect(of('Row').pieces).toMatchObject([{ quantity: 3 }]);
    expect(of('Tile').pieces[0].areaMm2).toBeCloseTo(400, -1);
    // What is found is told once, with the name of its part.
    const told = outcome.findings.map(({ text }) => text);
    expect(told.filter((text) => text.startsWith('Inlay: The gap all round is 0.40 mm'))).toHaveLength(1);
  });

  it('a core is built up with wraps of the foam', () => {
    const [wrap] = of('Handle').pieces;
    // Foam model 2 again.
    expect(wrap.draft.areaMm2).toBeCloseTo(Math.PI * (32 + 6) * 100, 3);
  });

  it('is found again by identity, and only what changed is made anew', async () => {
    const again = await pipeline.run(project, QUIET_WORK);
    expect(again.plain).toBe(outcome.plain);
    const { id } = of('Badge').part;
    const wider = changePlain<ArtworkPart>(id, { craft: { kind: 'cut', quantity: 1 } }).apply(project);
    const changed = await pipeline.run(wider, QUIET_WORK);
    const isSame = changed.plain.map(({ work }, i) => work === outcome.plain[i].work);
    expect(isSame.filter((same) => !same)).toHaveLength(1);
  });

  it('is kept in its file with its sources, which the schema describes', async () => {
    const text = writeProjectFile(project, files);
    expect(schemaFaults(SCHEMA, JSON.parse(text))).toEqual([]);
    const opened = expectOk(await readProjectFile(text, 'kit.json'));
    expect(opened.project).toEqual(project);
    expect([...opened.sources.keys()].sort()).toEqual([ring, line, box, square].map(({ hash }) => hash).sort());
    const broken = JSON.parse(text) as { project: { plain: { craft: { quantity: number } }[] } };
    broken.project.plain[2].craft.quantity = 0;
    expect(schemaFaults(SCHEMA, broken)).not.toEqual([]);
    expect(await readProjectFile(JSON.stringify(broken), 'kit.json')).toMatchObject({
      ok: false,
      problem: { code: 'project/broken' },
    });
  });

  it('a file that is missing or cannot be read is told on its part, and the others stand; it may come later', async () => {
    const late = new Pipeline();
    const torn = await filed('torn.svg', bytesOf('<svg'));
    for (const hash of [ring, line, torn].map((one) => one.hash)) late.putSource(hash, files.get(hash)!);
    const some = { ...project, plain: project.plain?.filter(({ name }) => ['Block', 'Badge', 'Wider'].includes(name)) };
    const withTorn = changePlain<ArtworkPart>(of('Wider').part.id, { source: torn }).apply(some);
    const told = await late.run(withTorn, QUIET_WORK);
    const [block, wider] = ['Block', 'Wider'].map((name) => told.plain.find(({ part }) => part.name === name)!);
    expect([block.work, wider.work]).toEqual([null, null]);
    expect(errors(told)).toHaveLength(2);
    expect(errors(told)[0]).toBe('Block cannot be made: The file box.obj is not here: choose it again.');
    expect(told.plain.map(({ pieces }) => pieces.length)).toEqual([0, 1, 0]);
    expect(told.paper?.pages.length).toBeGreaterThan(1);
    // Such a project can be kept, and opened again.
    expectOk(await readProjectFile(writeProjectFile(withTorn, new Map()), 'kit.json'));
    late.putSource(box.hash, files.get(box.hash)!);
    expect(errors(await late.run(some, QUIET_WORK))).toEqual([]);
  });
});
