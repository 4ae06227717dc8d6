import { expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { readModel } from '../../../src/steps/read/read-model.ts';
import { expectGolden } from '../../support/golden.ts';
import { asciiStl, binaryStl, bytesOf, objOf, TETRA_FACES, TETRA_FACETS, TETRA_POINTS } from './text-model.ts';

const TETRA = objOf(TETRA_POINTS, TETRA_FACES);
const STL = binaryStl(TETRA_FACETS);

const joined = (...parts: readonly (Uint8Array | readonly number[])[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((part) => Array.from(part)));

const withTail = (tail: string): Uint8Array => bytesOf(TETRA + tail);

const wide = (text: string): Uint8Array =>
  Uint8Array.from([0xff, 0xfe, ...Array.from(text).flatMap((letter) => [letter.charCodeAt(0), 0])]);

/** A binary STL whose header promises `count` facets, followed by `bytes` zeros. */
const promising = (count: number, bytes: number): Uint8Array => {
  const file = new Uint8Array(84 + bytes);
  file.set(bytesOf('binary'));
  new DataView(file.buffer).setUint32(80, count, true);
  return file;
};

interface Broken {
  readonly what: string;
  readonly name: string;
  readonly bytes: Uint8Array;
}

const obj = (what: string, text: string): Broken => ({ what, name: 'sculpt.obj', bytes: bytesOf(text) });
const stl = (what: string, bytes: Uint8Array): Broken => ({ what, name: 'sculpt.stl', bytes });

const CORNERS = 'v 0 0 0\nv 1 0 0\nv 0 1 0\n';

/** Files that cannot be used. */
const BROKEN: readonly Broken[] = [
  obj('no bytes', ''),
  stl('no bytes', new Uint8Array(0)),
  obj('only blanks', ' \n\n\t\n'),
  obj('only remarks', '# exported\n# nothing\n'),
  obj('points without faces', CORNERS),
  obj('lines without faces', `${CORNERS}l 1 2 3\n`),
  obj('a curved surface', `${CORNERS}cstype bspline\nsurf 0 1 0 1 1 2 3\nend\n`),
  obj('a word for a coordinate', `v 0 0 0\nv 1 zero 0\n`),
  obj('a decimal comma', 'v 0,5 1,0 2,25\n'),
  obj('two coordinates', 'v 0 0 0\nv 1 2\n'),
  obj('two coordinates over two lines', 'v 0 0 0\nv 1 \\\n2\nf 1 2 3\n'),
  obj('NaN', `v 0 0 0\nv 1 nan 0\n`),
  obj('infinity', 'v -inf 0 0\n'),
  obj('a number over all doubles', `${CORNERS}v 1e999 0 0\nf 1 2 4\n`),
  obj('a coordinate out of reach', `${CORNERS}v 3e30 0 0\nf 1 2 4\n`),
  obj('a vertex that is not there', `${CORNERS}f 1 2 4\n`),
  obj('a vertex far beyond counting', `${CORNERS}f 1 2 99999999999999999999\n`),
  obj('vertex 0', `${CORNERS}f 0 1 2\n`),
  obj('counting back too far', `${CORNERS}f -1 -2 -4\n`),
  obj('a face with two corners', `${CORNERS}f 1 2 3\nf 1 2\n`),
  obj('a face with one corner', `${CORNERS}f 3\n`),
  obj('a face without corners', `${CORNERS}f \n`),
  obj('a fraction for a vertex', `${CORNERS}f 1 2.5 3\n`),
  obj('a word for a vertex', `${CORNERS}f 1 2 left\n`),
  obj('a slash without a vertex', `${CORNERS}f 1 2 /3\n`),
  obj('faces without area only', `${CORNERS}f 1 1 2\nf 2 3 2\n`),
  obj('all corners on one spot', 'v 1 1 1\nv 1 1 1\nv 1 1 1\nf 1 2 3\n'),
  obj('corners on one line', 'v 0 0 0\nv 1 1 0\nv 2 2 0\nv 3 3 0\nf 1 2 3\nf 2 3 4 1\n'),
  obj('a sculpt of no size', 'v 0 0 0\nv 1e-50 0 0\nv 0 1e-50 0\nf 1 2 3\n'),
  obj(
    'a face of 20 001 corners',
    `${CORNERS.repeat(6667)}f ${Array.from({ length: 20_001 }, (_, i) => i + 1).join(' ')}\n`,
  ),
  { what: 'text in UTF-16', name: 'sculpt.obj', bytes: wide(TETRA) },
  { what: 'text in UTF-16 without a mark', name: 'sculpt.obj', bytes: wide(TETRA).subarray(2) },
  { what: 'only zeros', name: 'sculpt.obj', bytes: new Uint8Array(4096) },
  stl('a binary STL cut short', STL.subarray(0, STL.length - 30)),
  stl('a binary STL with half its facets', promising(1000, 50 * 500)),
  stl('a binary STL that ends in the header', binaryStl(TETRA_FACETS, 'binary').subarray(0, 60)),
  stl('a binary STL that promises too few', joined(STL.subarray(0, 80), [2, 0, 0, 0], STL.subarray(84))),
  stl('a binary STL that promises 4 294 967 295 facets', promising(0xffffffff, 500)),
  stl('a binary STL without facets', promising(0, 0)),
  stl(
    'a binary STL with NaN',
    binaryStl([
      [0, 0, 0, 1, 0, 0, 0, 1, 0],
      [0, 0, 0, NaN, 0, 0, 0, 1, 0],
    ]),
  ),
  stl('a binary STL with infinity', binaryStl([[0, 0, 0, 1, 0, 0, 0, -Infinity, 0]])),
  stl('a binary STL out of reach', binaryStl([[0, 0, 0, 1, 0, 0, 0, 3e38, 0]])),
  stl('an ASCII STL cut short', bytesOf(asciiStl(TETRA_FACETS).slice(0, 330))),
  stl('an ASCII STL cut short in a number', bytesOf(asciiStl(TETRA_FACETS).slice(0, 255))),
  stl('an ASCII STL without facets', bytesOf('solid nothing\nendsolid nothing\n')),
  stl('an ASCII facet with two corners', bytesOf(asciiStl(TETRA_FACETS).replace(/ {3}vertex.*\n/, ''))),
  stl('an ASCII facet with four corners', bytesOf(asciiStl(TETRA_FACETS).replace(/( {3}vertex.*\n)/, '$1$1'))),
  stl('an ASCII facet that is not closed', bytesOf(asciiStl(TETRA_FACETS).replace(' endfacet\n', ''))),
  stl('an ASCII vertex outside of facets', bytesOf('solid a\nvertex 0 0 0\nfacet normal 0 0 1\n')),
  stl('an ASCII coordinate that is a word', bytesOf(asciiStl(TETRA_FACETS).replace('vertex 0', 'vertex left'))),
  stl('an ASCII coordinate that is no place', bytesOf(asciiStl(TETRA_FACETS).replace('vertex 0', 'vertex nan'))),
  { what: 'a PNG picture', name: 'sculpt.stl', bytes: joined([0x89], bytesOf('PNG\r\n\u001a\n'), new Uint8Array(200)) },
  { what: 'a JPEG picture', name: 'sculpt.jpg', bytes: joined([0xff, 0xd8, 0xff, 0xe0], new Uint8Array(200)) },
  { what: 'a zip archive', name: 'sculpt.zip', bytes: joined(bytesOf('PK\u0003\u0004'), new Uint8Array(200)) },
  {
    what: 'a 3MF package',
    name: 'sculpt.3mf',
    bytes: joined(bytesOf('PK\u0003\u0004'), bytesOf('3D/3dmodel.model'), new Uint8Array(200)),
  },
  { what: 'a gzip archive', name: 'sculpt.stl.gz', bytes: joined([0x1f, 0x8b, 8], new Uint8Array(200)) },
  { what: 'a binary glTF', name: 'sculpt.glb', bytes: joined(bytesOf('glTF'), [2, 0, 0, 0], new Uint8Array(200)) },
  { what: 'a glTF', name: 'sculpt.gltf', bytes: bytesOf('{\n "asset": { "version": "2.0" }, "meshes": []\n}') },
  { what: 'JSON', name: 'sculpt.obj', bytes: bytesOf('{"points": [[0, 0, 0]]}') },
  { what: 'a PDF', name: 'sculpt.pdf', bytes: joined(bytesOf('%PDF-1.7\n'), [0xe2, 0xe3, 0xcf], new Uint8Array(50)) },
  { what: 'an SVG drawing', name: 'sculpt.svg', bytes: bytesOf('<?xml version="1.0"?>\n<svg width="3"/>') },
  { what: 'a web page', name: 'sculpt.stl', bytes: bytesOf('<!DOCTYPE html>\n<html><body>404</body></html>') },
  { what: 'a PLY mesh', name: 'sculpt.ply', bytes: bytesOf('ply\nformat ascii 1.0\nelement vertex 3\n') },
  { what: 'an OFF mesh', name: 'sculpt.off', bytes: bytesOf('OFF\n3 1 0\n0 0 0\n') },
  { what: 'a STEP model', name: 'sculpt.step', bytes: bytesOf('ISO-10303-21;\nHEADER;\n') },
  { what: 'the material file', name: 'sculpt.mtl', bytes: bytesOf('# materials\nnewmtl foam\nKd 1 1 1\n') },
  { what: 'a letter', name: 'sculpt.txt', bytes: bytesOf('Dear maker,\nvery soon I shall send you the sculpt.\n') },
  { what: 'noise', name: 'sculpt.bin', bytes: Uint8Array.from({ length: 5000 }, (_, i) => (i * i * 31 + i * 7) % 251) },
];

/** Files with a fault that can be set aside: read, and told of. */
const FAULTY: readonly Broken[] = [
  { what: 'a face that names one corner twice', name: 'sculpt.obj', bytes: withTail('f 1 2 2\n') },
  { what: 'a triangle written as four corners', name: 'sculpt.obj', bytes: withTail('f 1 2 3 3\n') },
  { what: 'a face that comes back to a corner', name: 'sculpt.obj', bytes: withTail('f 1 2 3 1 4\n') },
  { what: 'OBJ named .stl', name: 'sculpt.stl', bytes: bytesOf(TETRA) },
  { what: 'binary STL named .obj', name: 'sculpt.obj', bytes: STL },
  {
    what: 'an ASCII STL without its closing word',
    name: 'sculpt.stl',
    bytes: bytesOf(asciiStl(TETRA_FACETS).replace('endsolid test\n', '')),
  },
  {
    what: 'a sculpt far from the origin',
    name: 'sculpt.obj',
    bytes: bytesOf(
      objOf(
        TETRA_POINTS.map(([x, y, z]) => [x + 1e7, y, z]),
        TETRA_FACES,
      ),
    ),
  },
];

it('holds at least 25 broken files', () => expect(BROKEN.length).toBeGreaterThanOrEqual(25));

it('answers each broken file with one sentence', async () => {
  const rows = ['Files that cannot be used', ''];
  for (const { what, name, bytes } of BROKEN) {
    const result = await readModel(bytes, name, QUIET_WORK);
    if (result.ok) throw new Error(`${what}: was read`);
    const { code, text } = result.problem;
    expect(code).toMatch(/^read\/[a-z0-9-]+$/);
    expect(text, what).toMatch(/^[A-Z].*[^.]\.$/s);
    expect(text.match(/[.!?](\s|$)/g)?.length, `${what}: one sentence`).toBe(1);
    rows.push(`${what} (${name})`, `  ${code}`, `  ${text}`);
  }
  rows.push('', 'Files that are read, and what is told of them', '');
  for (const { what, name, bytes } of FAULTY) {
    const result = await readModel(bytes, name, QUIET_WORK);
    if (!result.ok) throw new Error(`${what}: ${result.problem.text}`);
    expect(result.value.findings.length, what).toBe(1);
    const [{ code, severity, text }] = result.value.findings;
    rows.push(`${what} (${name})`, `  ${severity} ${code}`, `  ${text}`);
  }
  expectGolden('broken-inputs.txt', `${rows.join('\n')}\n`);
});
