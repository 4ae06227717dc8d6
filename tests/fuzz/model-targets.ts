import { QUIET_WORK } from '../../src/base/work.ts';
import { checkMesh } from '../../src/mesh/check-mesh.ts';
import type { SourceModel } from '../../src/model/source-model.ts';
import { factsOf } from '../../src/steps/read/facts.ts';
import { findFaults } from '../../src/steps/read/faults.ts';
import { readModel } from '../../src/steps/read/read-model.ts';
import { applyRepairs } from '../../src/steps/read/repair.ts';
import { meshFromModel, mmPerUnitOf } from '../../src/steps/read/size.ts';
import { about, answerTo, expectFindings, expectFinite } from './expect-answer.ts';
import { numbersIn } from './json-targets.ts';
import { wildAsciiStl, wildBinaryStl, wildObj } from './model-grammar.ts';
import { seedFiles } from './seed-files.ts';
import { bytesOf, type Answer, type Random, type Target } from './target.ts';

const TETRAHEDRON = 'v 0 0 0\nv 10 0 0\nv 0 10 0\nv 0 0 10\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 3 1 4\n';

const CUBE = `mtllib a.mtl\no box\nv -1 -1 -1 1 0 0\nv 1 -1 -1 0 1 0\nv 1 1 -1 0 0 1\nv -1 1 -1 1 1 1\nv -1 -1 1 0 0 0\nv 1 -1 1 255 0 0\nv 1 1 1 0 0 0\nv -1 1 1 0 0 0
vt 0 0\nvn 0 0 1\ng side\nusemtl red\ns 1\nf 1/1/1 4/1/1 3/1/1 2/1/1\nf 5//1 6//1 7//1 8//1\nf -8 -7 -3 -4\ng top \\\n two\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n`;

const FACETS = [
  [
    [0, 0, 0],
    [0, 10, 0],
    [10, 0, 0],
  ],
  [
    [0, 0, 0],
    [10, 0, 0],
    [0, 0, 10],
  ],
  [
    [10, 0, 0],
    [0, 10, 0],
    [0, 0, 10],
  ],
  [
    [0, 10, 0],
    [0, 0, 0],
    [0, 0, 10],
  ],
];

const ASCII = `solid part one\n${FACETS.map((corners) => `facet normal 0 0 1\nouter loop\n${corners.map((p) => `vertex ${p.join(' ')}`).join('\n')}\nendloop\nendfacet`).join('\n')}\nendsolid\n`;

function binary(): Uint8Array {
  const view = new DataView(new ArrayBuffer(84 + 50 * FACETS.length));
  view.setUint32(80, FACETS.length, true);
  for (const [i, corners] of FACETS.entries())
    for (const [k, point] of corners.entries())
      for (const [axis, value] of point.entries()) view.setFloat32(84 + 50 * i + 12 + 12 * k + 4 * axis, value, true);
  return new Uint8Array(view.buffer);
}

const OBJ_WORDS = [
  'v ',
  'f ',
  '\nf 1 2 3\n',
  '\nv 0 0 0\n',
  'o ',
  'g ',
  'usemtl ',
  's off',
  '\\\n',
  '#',
  '//',
  '/1/1',
  '-1',
  '\nl 1 2\n',
  'curv ',
  '\r',
  '\t',
  'vt ',
  'vp ',
  '\u2028',
  'call x',
  'end',
];
const STL_WORDS = [
  'solid ',
  'facet normal 0 0 0\n',
  'outer loop\n',
  'vertex ',
  'vertex 1 2 3\n',
  'endloop\n',
  'endfacet\n',
  'endsolid\n',
  '\r',
  'FACET',
  'color',
];

/** Larger ones are only read: what follows grows faster than the file does. */
const MOST_FACES = 400;

async function look(bytes: Uint8Array, fileName: string): Promise<Answer> {
  return await answerTo(await readModel(bytes, fileName, QUIET_WORK), bytes, async (model) => {
    checkModel(model);
    expectFindings(model.findings, bytes);
    if (model.faceNumber.length > MOST_FACES) return 'large';
    const facts = factsOf(model);
    expectFinite(numbersIn(facts), 'what is told of the model');
    const perUnit = mmPerUnitOf(model, { by: 'size', axis: 'longest', mm: 300 });
    if (!perUnit.ok) return `not sized ${perUnit.problem.code}`;
    const mesh = meshFromModel(model, perUnit.value);
    checkMesh(mesh);
    const faults = await findFaults(model, mesh, QUIET_WORK);
    expectFindings(faults, bytes);
    const repaired = applyRepairs(model, [{ kind: 'drop-empty' }, { kind: 'drop-doubled' }, { kind: 'turn-faces' }]);
    if (repaired.ok) {
      checkModel(repaired.value);
      checkMesh(meshFromModel(repaired.value, perUnit.value));
    }
    const codes = [...new Set([...model.findings, ...faults].map(({ code }) => code))].sort();
    return `${codes.join(' ')} ${about(model.triangles.length / 3)} ${about(model.groupNames.length)} ${repaired.ok}`;
  });
}

function checkModel(model: SourceModel): void {
  const vertices = model.positions.length / 3;
  const faces = model.faceStarts.length - 1;
  expectFinite(model.positions, 'a place');
  if (model.colours !== null) expectFinite(model.colours, 'a colour');
  const isInside = (list: Iterable<number>, count: number, what: string): void => {
    for (const one of list) if (!(one < count)) throw new Error(`${what} ${one} of ${count}`);
  };
  isInside(model.faceVertices, vertices, 'corner');
  isInside(model.triangles, vertices, 'corner of a triangle');
  isInside(model.faceOfTriangle, faces, 'face of a triangle');
  isInside(model.vertexOfFile, vertices, 'vertex of a number');
  isInside(model.groupOfFace, model.groupNames.length, 'group');
  isInside(model.faceNumber, model.fileFaceCount, 'number of a face');
  if (model.faceNumber.length !== faces || model.groupOfFace.length !== faces)
    throw new Error('lists of faces differ in length');
  if (model.triangles.length !== 3 * (model.faceVertices.length - 2 * faces)) throw new Error('triangles are missing');
  for (const name of model.groupNames) if (name.length > 700) throw new Error(`a name of ${name.length} letters`);
}

const objSeeds = (): Uint8Array[] => [bytesOf(TETRAHEDRON), bytesOf(CUBE), ...seedFiles('.obj')];
const asciiSeeds = (): Uint8Array[] => [bytesOf(ASCII), ...seedFiles('moon_ascii.stl')];
const binarySeeds = (): Uint8Array[] => [binary(), ...seedFiles('angle_block.stl', 'plate_holes.stl')];

const GRAMMARS = [wildObj, wildAsciiStl, wildBinaryStl];

export const MODEL_TARGETS: readonly Target[] = [
  {
    name: 'obj',
    ending: 'obj',
    seeds: objSeeds,
    words: OBJ_WORDS,
    grammar: wildObj,
    look: (bytes) => look(bytes, 'Fuzz.obj'),
  },
  {
    name: 'stl-ascii',
    ending: 'stl',
    seeds: asciiSeeds,
    words: STL_WORDS,
    grammar: wildAsciiStl,
    look: (bytes) => look(bytes, 'Fuzz.stl'),
  },
  {
    name: 'stl-binary',
    ending: 'stl',
    seeds: binarySeeds,
    words: [],
    grammar: wildBinaryStl,
    look: (bytes) => look(bytes, 'Fuzz.stl'),
  },
  {
    name: 'model',
    ending: 'bin',
    seeds: () => [
      ...objSeeds(),
      ...asciiSeeds(),
      ...binarySeeds(),
      ...['%PDF-1', 'PK\u0003\u0004', '{"asset":{}}', '<svg/>', 'glTF', 'OFF\n', 'ply\n', '\uFEFFv 0 0 0'].map(bytesOf),
    ],
    words: [...OBJ_WORDS, ...STL_WORDS, 'solid', '\u00ef\u00bb\u00bf', '<?xml', '{', 'newmtl a'],
    grammar: (random: Random) => GRAMMARS[Math.floor(random() * GRAMMARS.length)](random),
    look: (bytes) => look(bytes, 'Fuzz'),
  },
];
