import { describe, expect, it } from 'vitest';
import { expectProblem } from '../../support/expect-ok.ts';
import { readText, facesOf, modelOf, objOf, TETRA_FACES, TETRA_POINTS } from './text-model.ts';

const SQUARE = 'v 0 0 0\nv 2 0 0\nv 2 2 0\nv 0 2 0\n';

describe('an OBJ', () => {
  it('keeps vertices, faces and numbers in the order of the file', async () => {
    const model = await modelOf(objOf(TETRA_POINTS, TETRA_FACES));
    expect(model.format).toBe('obj');
    expect(Array.from(model.positions)).toEqual(TETRA_POINTS.flat());
    expect(facesOf(model)).toEqual(TETRA_FACES);
    expect(Array.from(model.fileVertex)).toEqual([0, 1, 2, 3]);
    expect(Array.from(model.faceNumber)).toEqual([0, 1, 2, 3]);
    expect(model.fileFaceCount).toBe(4);
    expect(model.colours).toBeNull();
    expect(model.hash).toMatch(/^[0-9a-f]{64}$/);
    expect(model.findings).toEqual([]);
  });

  it('takes all forms of corners', async () => {
    for (const face of [
      '1 2 3 4',
      '1/1 2/2 3/3 4/4',
      '1//1 2//2 3//3 4//4',
      '1/1/1 2/2/2 3/3/3 4/4/4',
      '-4 -3 -2 -1',
      '-4/-1/-1 2// -2/7 4',
      '+1 +2 +3 +4',
    ]) {
      expect(facesOf(await modelOf(`${SQUARE}vt 0 0\nvn 0 0 1\nf ${face}\n`))).toEqual([[0, 1, 2, 3]]);
    }
  });

  it('counts negative corners back from the place where the face stands', async () => {
    const text = 'v 0 0 0\nv 1 0 0\nv 0 1 0\nf -3 -2 -1\nv 0 0 5\nv 1 0 5\nv 0 1 5\nf -3 -2 -1\n';
    expect(facesOf(await modelOf(text))).toEqual([
      [0, 1, 2],
      [3, 4, 5],
    ]);
  });

  it('lets a face name vertices that come later', async () => {
    expect(facesOf(await modelOf(`f 1 2 3 4\n${SQUARE}`))).toEqual([[0, 1, 2, 3]]);
  });

  it('reads every way in which lines end, go on, and carry remarks', async () => {
    const text = [
      '\ufeff# a remark \\',
      '  v 0 0 0 # beside the numbers',
      'v\t2  0 \\',
      '   0',
      'v 2 2 0  ',
      'v 0 2 \\  ',
      '0',
      '',
      '# f 9 9 9',
      'f 1 2 \\',
      '3 4 # the face',
    ];
    for (const end of ['\n', '\r\n', '\r']) {
      const model = await modelOf(text.join(end));
      expect(Array.from(model.positions)).toEqual([0, 0, 0, 2, 0, 0, 2, 2, 0, 0, 2, 0]);
      expect(facesOf(model)).toEqual([[0, 1, 2, 3]]);
    }
  });

  it('passes over what it does not need', async () => {
    const text = `mtllib no such file.mtl\no\n${SQUARE}vt 0.5\nvn x y z\nvp 1\ns off\nl 1 2\np 3\nusemap x\ncstype bezier\n\u0000\u0001odd\nf 1 2 3 4\nend\n`;
    expect(facesOf(await modelOf(text))).toEqual([[0, 1, 2, 3]]);
  });

  it('keeps names of objects, groups and materials', async () => {
    const model = await modelOf(
      `f 1 2 3\n${SQUARE}o helm\nf 1 2 3\ng brow ridge\nusemtl Größe 2\nf 1 2 3\nusemtl\no\nf 1 2 3\ng\nf 2 3 4\no helm\nf 3 4 1\n`,
    );
    expect(model.groupNames).toEqual(['helm', 'helm / brow ridge / Größe 2', 'brow ridge']);
    expect(Array.from(model.groupOfFace, (g) => model.groupNames[g])).toEqual([
      undefined,
      'helm',
      'helm / brow ridge / Größe 2',
      'brow ridge',
      undefined,
      'helm',
    ]);
  });

  it('takes r g b after x y z, up to 1 or up to 255, and no weight for a colour', async () => {
    const tail = 'v 0 1 0\nf 1 2 3\n';
    expect((await modelOf(`v 0 0 0 1 0.5 0\nv 1 0 0 0 0.25 1 0.5\n${tail}`)).colours).toEqual(
      Float64Array.from([1, 0.5, 0, 0, 0.25, 1, 1, 1, 1]),
    );
    expect((await modelOf(`v 0 0 0 255 51 0\nv 1 0 0 0 0 102\n${tail}`)).colours).toEqual(
      Float64Array.from([1, 0.2, 0, 0, 0, 0.4, 1, 1, 1]),
    );
    expect((await modelOf(`v 0 0 0 1\nv 1 0 0 2 3\n${tail}`)).colours).toBeNull();
    expect((await modelOf(`v 0 0 0 no colour\nv 1 0 0\n${tail}`)).colours).toBeNull();
  });

  it('cuts large and hollow polygons into triangles within the polygon', async () => {
    const hollow = [
      [0, 0, 0],
      [4, 0, 0],
      [4, 3, 0],
      [3, 3, 0],
      [3, 1, 0],
      [1, 1, 0],
      [1, 3, 0],
      [0, 3, 0],
    ];
    const model = await modelOf(objOf(hollow, [[0, 1, 2, 3, 4, 5, 6, 7]]));
    expect(model.triangles.length / 3).toBe(6);
    expect(Array.from(model.faceOfTriangle)).toEqual([0, 0, 0, 0, 0, 0]);
    expect(facesOf(model).length).toBe(1);
  });

  it('reads a corner named twice in a row as if it stood there once, and says so', async () => {
    const model = await modelOf(`${SQUARE}f 1 2 3 3\nf 1 1 3 4 1\n`);
    expect(facesOf(model)).toEqual([
      [0, 1, 2],
      [0, 2, 3],
    ]);
    expect(model.findings.map((finding) => finding.code)).toEqual(['read/corner-twice']);
    expect(model.findings[0].text).toBe(
      '2 faces have the same corner twice in a row (the first on line 5), which was read as if it stood there once.',
    );
  });

  it('leaves out faces that come back to a corner, and keeps the numbers of the others', async () => {
    const model = await modelOf(`${SQUARE}f 1 2 1\nf 1 2 3 4\nf 1 2 3 1 4 2\n`);
    expect(facesOf(model)).toEqual([[0, 1, 2, 3]]);
    expect(Array.from(model.faceNumber)).toEqual([1]);
    expect(model.fileFaceCount).toBe(3);
    expect(model.findings[0]).toMatchObject({ code: 'read/face-left-out', severity: 'warning', value: 2 });
    expect(model.findings[0].text).toContain('the first on line 5');
  });

  it('leaves unused vertices out, and numbers the others as the file does', async () => {
    const model = await modelOf('v 9 9 9\nv 0 0 0\nv 1 0 0\nv 8 8 8\nv 0 1 0\nf 2 3 5\n');
    expect(Array.from(model.fileVertex)).toEqual([1, 2, 4]);
    expect(Array.from(model.vertexOfFile)).toEqual([-1, 0, 1, -1, 2]);
    expect(model.joined.inFile).toBe(5);
  });

  it('names the line a statement begins on, and quotes no more than a few letters', async () => {
    const problem = expectProblem(await readText(`v 0 0 0\nv 1 \\\n2 ${'x'.repeat(100)}\n`), 'read/bad-number');
    expect(problem.text).toContain('line 2');
    expect(problem.text.length).toBeLessThan(150);
  });

  it('reads STL under the name .obj, and OBJ under another, and says so', async () => {
    const model = await modelOf(objOf(TETRA_POINTS, TETRA_FACES), 'tetra.STL');
    expect(model.format).toBe('obj');
    expect(model.findings.map((finding) => finding.code)).toEqual(['read/other-ending']);
    expect((await modelOf(objOf(TETRA_POINTS, TETRA_FACES), 'tetra.txt')).findings).toEqual([]);
  });
});
