import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { readModel } from '../../../src/steps/read/read-model.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { asciiStl, binaryStl, facesOf, modelOf, TETRA_FACETS } from './text-model.ts';

const read = async (bytes: Uint8Array, name = 'test.stl') => expectOk(await readModel(bytes, name, QUIET_WORK));

/** The tetrahedron's corners numbered by first appearance in its facets. */
const NUMBERED = [
  [0, 1, 2],
  [0, 2, 3],
  [0, 3, 1],
  [2, 1, 3],
];

describe('an STL', () => {
  it('numbers corners by first appearance, the same in both forms', async () => {
    for (const model of [await read(binaryStl(TETRA_FACETS)), await modelOf(asciiStl(TETRA_FACETS), 'a.stl')]) {
      expect(model.format).toBe('stl');
      expect(facesOf(model)).toEqual(NUMBERED);
      expect(Array.from(model.positions)).toEqual([0, 0, 0, 0, 10, 0, 10, 0, 0, 0, 0, 10]);
      expect(Array.from(model.fileVertex)).toEqual([0, 1, 2, 3]);
      expect(Array.from(model.vertexOfFile)).toEqual([0, 1, 2, 3]);
      expect(model.joined).toMatchObject({ inFile: 12, afterExact: 4, afterNear: 4 });
    }
  });

  it('is told by size and not by the word solid', async () => {
    const model = await read(binaryStl(TETRA_FACETS, 'solid facet normal but binary all the same'));
    expect(facesOf(model)).toEqual(NUMBERED);
    expect((await read(binaryStl(TETRA_FACETS), 'tetra.obj')).findings[0].code).toBe('read/other-ending');
    expect(facesOf(await modelOf(asciiStl(TETRA_FACETS), 'tetra'))).toEqual(NUMBERED);
  });

  it('passes over a few stray bytes at the end', async () => {
    const bytes = binaryStl(TETRA_FACETS);
    const longer = new Uint8Array(bytes.length + 2);
    longer.set(bytes);
    expect(facesOf(await read(longer))).toEqual(NUMBERED);
  });

  it('reads bytes that begin in the middle of a buffer', async () => {
    const bytes = binaryStl(TETRA_FACETS);
    const larger = new Uint8Array(bytes.length + 13);
    larger.set(bytes, 13);
    expect(facesOf(await read(larger.subarray(13)))).toEqual(NUMBERED);
  });

  it('reads ASCII in any case, spacing and line ending, with any normals and several named solids', async () => {
    const text = `SOLID one\r\nFacet Normal nan -nan(ind) 1e999 outer loop\r\n vertex 0 0 0 VERTEX 1 0 0\r\nvertex 0 1e0 0 endloop ENDFACET\r\nendsolid one\r\nsolid\r\nfacet normal\r\nouter loop\r\nvertex 0 0 5\r\nvertex 1 0 5\r\nvertex 0 1 5\r\nendloop\r\nendfacet\r\nendsolid`;
    const model = await modelOf(text, 'a.stl');
    expect(facesOf(model)).toEqual([
      [0, 1, 2],
      [3, 4, 5],
    ]);
    expect(Array.from(model.groupOfFace, (g) => model.groupNames[g])).toEqual(['one', undefined]);
    expect(model.findings).toEqual([]);
  });

  it('says when the closing word is missing', async () => {
    const text = asciiStl(TETRA_FACETS).replace(/endsolid.*\n/, '');
    expect((await modelOf(text, 'a.stl')).findings.map((finding) => finding.code)).toEqual(['read/stl-no-end']);
  });

  it('takes -0 for 0', async () => {
    const facets = TETRA_FACETS.map((facet, f) => facet.map((value) => (value === 0 && f % 2 === 1 ? -0 : value)));
    const model = await read(binaryStl(facets));
    expect(model.joined.afterExact).toBe(4);
    expect(model.positions.every((value) => !Object.is(value, -0))).toBe(true);
  });

  it('leaves facets without three different corners out', async () => {
    const model = await read(binaryStl([...TETRA_FACETS, [0, 0, 0, 0, 0, 0, 10, 0, 0]]));
    expect(facesOf(model)).toEqual(NUMBERED);
    expect(model.findings[0].text).toContain('facet 5');
  });
});
