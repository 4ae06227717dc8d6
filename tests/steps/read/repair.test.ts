import { describe, expect, it } from 'vitest';
import { signedVolume } from './signed-volume.ts';
import { checkMesh } from '../../../src/mesh/check-mesh.ts';
import type { SourceModel } from '../../../src/model/source-model.ts';
import { factsOf } from '../../../src/steps/read/facts.ts';
import { applyRepairs } from '../../../src/steps/read/repair.ts';
import { meshFromModel } from '../../../src/steps/read/size.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { facesOf, modelOf, objOf, TETRA_FACES, TETRA_POINTS } from './text-model.ts';

const BOX_POINTS = Array.from({ length: 8 }, (_, i) => [(i & 1) * 10, ((i >> 1) & 1) * 10, (i >> 2) * 10]);
const BOX_FACES = [
  [0, 2, 3, 1],
  [4, 5, 7, 6],
  [0, 1, 5, 4],
  [2, 6, 7, 3],
  [0, 4, 6, 2],
  [1, 3, 7, 5],
];

const repaired = (model: SourceModel, ...repairs: Parameters<typeof applyRepairs>[1]): SourceModel => {
  const result = expectOk(applyRepairs(model, repairs));
  checkMesh(meshFromModel(result, 1));
  return result;
};

const turned = (face: readonly number[]): number[] => [face[0], ...face.slice(1).reverse()];

describe('no repairs', () => {
  it('gives the very same model', async () => {
    const model = await modelOf(objOf(BOX_POINTS, BOX_FACES));
    expect(repaired(model)).toBe(model);
    expect(
      repaired(
        model,
        { kind: 'turn-faces' },
        { kind: 'drop-doubled' },
        { kind: 'drop-empty' },
        { kind: 'keep-shell', vertex: 3 },
      ),
    ).toBe(model);
  });
});

describe('turn-faces', () => {
  it('turns single faces back, and a closed surface outward', async () => {
    for (const which of [[0], [1, 4], [0, 1, 2, 3], [0, 1, 2, 3, 4, 5]]) {
      const faces = BOX_FACES.map((face, f) => (which.includes(f) ? turned(face) : face));
      const model = repaired(await modelOf(objOf(BOX_POINTS, faces)), { kind: 'turn-faces' });
      expect(factsOf(model).turnedEdges).toBe(0);
      expect(signedVolume(model)).toBeCloseTo(1000, 9);
      expect(facesOf(model)).toEqual(BOX_FACES);
    }
  });

  it('keeps the way most of an open surface looks', async () => {
    const open = BOX_FACES.slice(1);
    for (const which of [[0], [0, 1, 2]]) {
      const model = await modelOf(
        objOf(
          BOX_POINTS,
          open.map((face, f) => (which.includes(f) ? turned(face) : face)),
        ),
      );
      const result = repaired(model, { kind: 'turn-faces' });
      expect(factsOf(result).turnedEdges).toBe(0);
      expect(facesOf(result)).toEqual(which.length === 1 ? open : open.map(turned));
    }
  });

  it('turns each surface by itself', async () => {
    const points = [...BOX_POINTS, ...BOX_POINTS.map(([x, y, z]) => [x + 50, y, z])];
    const second = BOX_FACES.map((face) => turned(face).map((v) => v + 8));
    const model = repaired(await modelOf(objOf(points, [...BOX_FACES, ...second])), { kind: 'turn-faces' });
    expect(signedVolume(model)).toBeCloseTo(2000, 9);
  });

  it('leaves a surface with one side alone and says so', async () => {
    const count = 7;
    const points = Array.from({ length: 2 * count }, (_, i) => {
      const [u, half] = [(2 * Math.PI * Math.floor(i / 2)) / count, i % 2 === 0 ? 1 : -1];
      const radius = 10 + half * Math.cos(u / 2) * 3;
      return [radius * Math.cos(u), radius * Math.sin(u), half * Math.sin(u / 2) * 3];
    });
    const faces = Array.from({ length: count }, (_, i) =>
      i + 1 < count ? [2 * i, 2 * i + 2, 2 * i + 3, 2 * i + 1] : [2 * i, 1, 0, 2 * i + 1],
    );
    const model = await modelOf(objOf(points, faces));
    const result = applyRepairs(model, [{ kind: 'turn-faces' }]);
    expect(expectOk(result)).toBe(model);
    expect(result.ok && result.notes.map((note) => note.code)).toEqual(['read/one-sided']);
    expect(factsOf(model).genus).toBeNull();
  });
});

describe('drop-doubled and drop-empty', () => {
  it('drops later faces with the same corners, whichever way they run', async () => {
    const model = await modelOf(objOf(TETRA_POINTS, [...TETRA_FACES, [1, 2, 0], [3, 2, 1], [0, 1, 3]]));
    expect(factsOf(model).doubledFaces).toBe(3);
    const result = repaired(model, { kind: 'drop-doubled' });
    expect(facesOf(result)).toEqual(TETRA_FACES);
    expect(factsOf(result)).toMatchObject({ doubledFaces: 0, euler: 2, nonManifoldEdges: 0 });
    expect(result.fileFaceCount).toBe(7);
  });

  it('drops faces without area and the vertices only they used, and keeps numbers of the file', async () => {
    const points = [[5, 5, 5], ...TETRA_POINTS, [2.5, 2.5, 2.5], [7.5, 7.5, 7.5]];
    const model = await modelOf(objOf(points, [[0, 5, 6], ...TETRA_FACES.map((face) => face.map((v) => v + 1))]));
    expect(factsOf(model)).toMatchObject({ emptyFaces: 1, vertices: 7 });
    const result = repaired(model, { kind: 'drop-empty' });
    expect(factsOf(result)).toMatchObject({ emptyFaces: 0, vertices: 4, faces: 4, euler: 2 });
    expect(Array.from(result.fileVertex)).toEqual([1, 2, 3, 4]);
    expect(Array.from(result.vertexOfFile)).toEqual([-1, 0, 1, 2, 3, -1, -1]);
    expect(Array.from(result.faceNumber)).toEqual([1, 2, 3, 4]);
    expect(Array.from(meshFromModel(result, 1).faceOfTriangle)).toEqual([1, 2, 3, 4]);
  });

  it('refuses to drop everything', async () => {
    const model = await modelOf(`${objOf(TETRA_POINTS, TETRA_FACES)}v 90 0 0\nv 91 0 0\nv 92 0 0\nf 5 6 7\n`);
    expectProblem(
      applyRepairs(model, [{ kind: 'keep-shell', vertex: 4 }, { kind: 'drop-empty' }]),
      'read/nothing-left',
    );
  });
});

describe('close-hole', () => {
  it('adds one polygon with the next number, against its neighbours', async () => {
    const model = await modelOf(objOf(BOX_POINTS, BOX_FACES.slice(1)));
    for (const edge of [
      [0, 1],
      [1, 0],
      [2, 3],
      [0, 2],
    ] as const) {
      const result = repaired(model, { kind: 'close-hole', edge });
      expect(factsOf(result)).toMatchObject({ openEdges: 0, turnedEdges: 0, euler: 2, faces: 6, vertices: 8 });
      expect(signedVolume(result)).toBeCloseTo(1000, 9);
      expect(Array.from(result.faceNumber)).toEqual([0, 1, 2, 3, 4, 5]);
      expect(result.fileFaceCount).toBe(6);
    }
  });

  it('closes only the hole that was meant', async () => {
    const model = await modelOf(objOf(BOX_POINTS, BOX_FACES.slice(2)));
    const one = repaired(model, { kind: 'close-hole', edge: [4, 5] });
    expect(factsOf(one)).toMatchObject({ openLoops: 1, openEdges: 4 });
    const both = repaired(one, { kind: 'close-hole', edge: [0, 1] });
    expect(factsOf(both)).toMatchObject({ openLoops: 0, euler: 2 });
    expect(Array.from(both.faceNumber)).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('lays no edge where there is one already', async () => {
    // Two triangles folded along 0-2: the lid must be cut along 1-3, or it would lie on them.
    const points = [
      [0, 0, 0],
      [4, 0, 3],
      [4, 4, 0],
      [0, 4, 3],
    ];
    const model = await modelOf(
      objOf(points, [
        [0, 1, 2],
        [0, 2, 3],
      ]),
    );
    const result = repaired(model, { kind: 'close-hole', edge: [0, 1] });
    expect(factsOf(result)).toMatchObject({ openEdges: 0, nonManifoldEdges: 0, triangles: 4, triangleEdges: 6 });
    expect(Math.abs(signedVolume(result))).toBeCloseTo(16, 9);
  });

  it('says why it cannot close what is no hole', async () => {
    const model = await modelOf(objOf(BOX_POINTS, BOX_FACES.slice(1)));
    expectProblem(applyRepairs(model, [{ kind: 'close-hole', edge: [4, 5] }]), 'read/no-open-edge');
    expectProblem(applyRepairs(model, [{ kind: 'close-hole', edge: [0, 99] }]), 'read/no-open-edge');
    const single = await modelOf(objOf(TETRA_POINTS, [[0, 1, 2]]));
    expect(
      expectProblem(applyRepairs(single, [{ kind: 'close-hole', edge: [0, 1] }]), 'read/hole-stays').text,
    ).toContain('on the old ones');
  });
});

describe('keep-shell', () => {
  it('keeps what hangs together with the vertex, numbers of the file and all', async () => {
    const points = [...TETRA_POINTS, ...BOX_POINTS.map(([x, y, z]) => [x + 50, y, z])];
    const model = await modelOf(objOf(points, [...TETRA_FACES, ...BOX_FACES.map((face) => face.map((v) => v + 4))]));
    expect(factsOf(model).shells).toBe(2);
    const box = repaired(model, { kind: 'keep-shell', vertex: 7 });
    expect(factsOf(box)).toMatchObject({ shells: 1, faces: 6, vertices: 8 });
    expect(Array.from(box.fileVertex)).toEqual([4, 5, 6, 7, 8, 9, 10, 11]);
    expect(Array.from(box.faceNumber)).toEqual([4, 5, 6, 7, 8, 9]);
    expect(factsOf(repaired(model, { kind: 'keep-shell', vertex: 0 })).faces).toBe(4);
    expectProblem(applyRepairs(box, [{ kind: 'keep-shell', vertex: 0 }]), 'read/no-vertex');
  });

  it('keeps colours and names beside what they belong to', async () => {
    const text = `${TETRA_POINTS.map((p, i) => `v ${p.join(' ')} ${i / 4} 0 0`).join('\n')}\nv 90 0 0 0 1 0\nv 95 0 0 0 1 0\nv 90 5 0 0 1 0\no left\nf 5 6 7\no right\n${TETRA_FACES.map((f) => `f ${f.map((v) => v + 1).join(' ')}`).join('\n')}\n`;
    const kept = repaired(await modelOf(text), { kind: 'keep-shell', vertex: 0 });
    expect(kept.colours).toEqual(Float64Array.from([0, 0, 0, 0.25, 0, 0, 0.5, 0, 0, 0.75, 0, 0]));
    expect(Array.from(kept.groupOfFace, (g) => kept.groupNames[g])).toEqual(['right', 'right', 'right', 'right']);
    expect(meshFromModel(kept, 1).groupOfFace[0]).toBe(-1);
  });
});
