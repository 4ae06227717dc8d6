import { readFileSync } from 'node:fs';
import { strToU8, zipSync } from 'fflate';
import { base64FromBytes } from '../../src/base/base64.ts';
import { contentHash } from '../../src/base/hash.ts';
import { newProject } from '../../src/project/new-project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { PROJECT_SUFFIX } from '../../src/project/project-suffix.ts';
import { fileFromZip, isZip } from '../../src/steps/write/from-zip.ts';
import { about, answerTo } from './expect-answer.ts';
import { wildJson } from './json-grammar.ts';
import { JSON_WORDS } from './json-targets.ts';
import { below, bytesOf, oneOf, textOf, type Answer, type Random, type Target } from './target.ts';

/** Reads a project, writes it and reads it again: what is written the second time is what was written the first time. */
async function look(bytes: Uint8Array): Promise<Answer> {
  const read = await readProjectFile(textOf(bytes), 'Fuzz.foamloft.json');
  return await answerTo(read, bytes, async ({ project, sources }) => {
    const written = writeProjectFile(project, sources);
    const again = await readProjectFile(written, 'Fuzz.foamloft.json');
    if (!again.ok) throw new Error(`what was written is not read: ${again.problem.text}`);
    if (writeProjectFile(again.value.project, again.value.sources) !== written)
      throw new Error('what is written twice differs');
    return `${about(project.parts.length)} ${about(project.plain?.length ?? 0)} ${about(project.versions?.length ?? 0)}`;
  });
}

const OBJ = 'v 0 0 0\nv 10 0 0\nv 0 10 0\nv 0 0 10\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 3 1 4\n';

/** A part of which everything is said that can be said. */
const FULL = {
  copies: 2,
  scale: { by: 'size', axis: 'longest', mm: 300 },
  repairs: [{ kind: 'turn-faces' }, { kind: 'close-hole', edge: [0, 1] }],
  simplify: { triangles: 500, keep: [1, 2] },
  seams: {
    edges: [
      [0, 1],
      [1, 2],
    ],
    paths: [],
  },
  heldSeams: [[0, 1]],
  mirror: { by: 'plane', pointInFile: [0, 0, 0], normal: [1, 0, 0] },
  pieceSettings: [
    {
      face: 0,
      name: 'front',
      foam: 'eva-6',
      quantity: 2,
      bendStyle: 'rolled',
      tracedSide: 'face',
      held: true,
      grain: { angleDeg: 10, stretch: 'along' },
    },
  ],
  regions: [
    {
      id: 'r',
      name: 'brow',
      faces: [0, 1],
      give: 'stiff',
      seams: 'clear',
      raised: { foam: 'eva-6', thicknessMm: 6, neutralFraction: 0.5 },
    },
  ],
  edgeWishes: [{ edge: [0, 1], holdLength: true, straight: true }],
  scores: [{ id: 's', edges: [[0, 1]], depthMm: 2, openMm: 0 }],
  tipHoles: [{ corner: 1, diameterMm: 4 }],
  offMm: 1,
  tapes: [{ id: 't', name: 'chest', pointInFile: [0, 0, 0], normal: [0, 1, 0], bodyGirthMm: 900, easeMm: 10 }],
  core: [{ id: 'c', name: 'rod', pointInFile: [0, 0, 0], direction: [0, 1, 0], diameterMm: 10, lengthMm: 100 }],
  joints: [{ id: 'j', name: 'elbow', pointInFile: [0, 0, 0], axis: [1, 0, 0], towards: [0, 1, 0], bendDeg: 90 }],
  worn: { girthMm: 900, breadthMm: 300, tape: 't', coversFace: true, openings: [{ vertex: 0, use: 'way-in' }] },
};

async function seeds(): Promise<Uint8Array[]> {
  const bytes = bytesOf(OBJ);
  const hash = await contentHash(bytes);
  const first = newProject('fuzz', { hash, fileName: 'a.obj', format: 'obj' });
  const sources = { [hash]: { fileName: 'a.obj', base64: base64FromBytes(bytes) } };
  const small = {
    format: 'foamloft-project',
    project: { ...first, foams: first.foams.filter(({ id }) => id === 'eva-6') },
    sources,
  };
  const full = {
    ...small,
    project: {
      ...small.project,
      parts: [{ ...small.project.parts[0], ...FULL }],
      done: [{ piece: 'A1', printed: 'x' }],
      doneSteps: [{ id: 'a', as: 'b' }],
      printers: [{ name: 'p', acrossShare: 1, upShare: 1.001, leanRad: 0 }],
      printer: 'p',
      atWork: 'part-1',
    },
  };
  const version = (name: string, changes: unknown[]): unknown => ({
    id: name,
    name,
    keptAt: '2026-01-01T00:00:00.000Z',
    changes,
  });
  const kept = {
    ...small,
    versions: [
      version('a', [{ op: 'replace', path: '/name', value: 'older' }]),
      version('b', [
        { op: 'add', path: '/parts/0/offMm', value: 2 },
        { op: 'remove', path: '/parts/0/seamSettings' },
        { op: 'add', path: '/parts/0/seamSettings', value: [] },
      ]),
    ],
  };
  const kit = JSON.parse(readFileSync('samples/kit.foamloft.json', 'utf8')) as { project: { plain: unknown[] } };
  const parts = {
    ...small,
    project: {
      ...small.project,
      foams: (kit.project as unknown as { foams: unknown }).foams,
      plain: kit.project.plain.slice(0, 3),
    },
  };
  return [...[small, full, kept, parts].map((one) => bytesOf(JSON.stringify(one))), bytesOf(JSON.stringify(kit))];
}

/** Many versions at once, deep values and long lists: what a change at one place does not come to. */
function wildProject(random: Random, known: readonly Uint8Array[]): Uint8Array {
  const made = wildJson(random, oneOf(random, known));
  if (random() > 0.02) return made;
  const text = textOf(made);
  const at = text.indexOf('"value":');
  const depth = oneOf(random, [10, 1000, 5000, 9000]);
  return at < 0
    ? made
    : bytesOf(
        `${text.slice(0, at)}"value":${'['.repeat(depth)}${']'.repeat(depth)}${text.slice(at + 8 + below(random, 2))}`,
      );
}

async function zipSeeds(): Promise<Uint8Array[]> {
  const [small, full] = await seeds();
  return [
    zipSync({ [`a${PROJECT_SUFFIX}`]: small, 'page-1.svg': strToU8('<svg/>') }, { level: 1, mtime: '2026-01-01' }),
    zipSync(
      { 'b.txt': strToU8('b'), [`sub/a${PROJECT_SUFFIX}`]: [full, { level: 0 }] },
      { level: 6, mtime: '2026-01-01' },
    ),
    zipSync({ 'b.txt': strToU8('b') }, { mtime: '2026-01-01' }),
  ];
}

export const PROJECT_TARGETS: readonly Target[] = [
  {
    name: 'project',
    ending: 'foamloft.json',
    seeds,
    words: [
      ...JSON_WORDS,
      '"schemaVersion":1',
      '"versions":',
      '"op":"remove"',
      '"path":"/parts/0"',
      '"plain":',
      '"sources":',
    ],
    grammar: wildProject,
    look,
  },
  {
    name: 'zip',
    ending: 'zip',
    seeds: zipSeeds,
    words: ['PK\u0003\u0004', 'PK\u0001\u0002', 'PK\u0005\u0006', '.foamloft.json'],
    look: async (bytes) => {
      if (!isZip(bytes)) return { isOk: false, code: 'no zip', kind: 'no zip' };
      const inside = fileFromZip(bytes, PROJECT_SUFFIX);
      if (inside === null) return { isOk: false, code: 'not in zip', kind: 'not in zip' };
      return await look(inside);
    },
  },
];
