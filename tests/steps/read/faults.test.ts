import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/base/finding.ts';
import { Cancelled, QUIET_WORK } from '../../../src/base/work.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import type { SourceModel } from '../../../src/model/source-model.ts';
import { findFaults } from '../../../src/steps/read/faults.ts';
import { readModel } from '../../../src/steps/read/read-model.ts';
import { meshFromModel } from '../../../src/steps/read/size.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { IS_LONG } from '../../support/long.ts';
import { torusMesh } from '../../support/meshes.ts';
import { modelOf, objOf, TETRA_FACES, TETRA_POINTS } from './text-model.ts';

const faultsOf = (model: SourceModel): Promise<readonly Finding[]> =>
  findFaults(model, meshFromModel(model, 2), QUIET_WORK);
const codesOf = async (text: string): Promise<string[]> =>
  (await faultsOf(await modelOf(text))).map((finding) => finding.code);
const only = async (text: string, code: string): Promise<Finding> => {
  const found = (await faultsOf(await modelOf(text))).filter((finding) => finding.code === code);
  expect(found.length).toBe(1);
  return found[0];
};

/** A square of `n` by `n` quads, 10 units to a side of each. */
function grid(
  n: number,
  leaveOut: (i: number, j: number) => boolean = () => false,
): { points: number[][]; faces: number[][] } {
  const points: number[][] = [];
  const faces: number[][] = [];
  for (let j = 0; j <= n; j += 1) for (let i = 0; i <= n; i += 1) points.push([10 * i, 10 * j, 0]);
  const at = (i: number, j: number): number => j * (n + 1) + i;
  for (let j = 0; j < n; j += 1) {
    for (let i = 0; i < n; i += 1)
      if (!leaveOut(i, j)) faces.push([at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
  }
  return { points, faces };
}

const TETRA = objOf(TETRA_POINTS, TETRA_FACES);

describe('findFaults', () => {
  it('finds nothing wrong with a clean closed surface', async () => expect(await codesOf(TETRA)).toEqual([]));

  it('calls a rim a note and a small hole a warning, each with its edges', async () => {
    const { points, faces } = grid(60, (i, j) => (i === 20 && j === 30) || (i === 40 && j === 10));
    const findings = await faultsOf(await modelOf(objOf(points, faces)));
    expect(findings.map((finding) => [finding.code, finding.severity, finding.where.edges?.length])).toEqual([
      ['read/hole', 'warning', 4],
      ['read/hole', 'warning', 4],
      ['read/open-rim', 'note', 240],
    ]);
    expect(findings[0].text).toContain('close hole');
  });

  it('gives edges that are open edges of the mesh', async () => {
    const { points, faces } = grid(4, (i, j) => i === 1 && j === 2);
    const model = await modelOf(objOf(points, faces));
    const { edgeBetween, usesOfEdge } = topologyOf(meshFromModel(model, 1));
    const edges = (await faultsOf(model)).flatMap((finding) => finding.where.edges ?? []);
    expect(edges.length).toBe(20);
    for (const [v, w] of edges) expect(usesOfEdge[edgeBetween(v, w)]).toBe(1);
  });

  it('names many holes in one sentence after the first twenty', async () => {
    const { points, faces } = grid(70, (i, j) => i % 10 === 5 && j % 10 === 5);
    const holes = (await faultsOf(await modelOf(objOf(points, faces)))).filter(
      (finding) => finding.code === 'read/hole',
    );
    expect(holes.length).toBe(21);
    expect(holes[20].text).toContain('29 more small holes');
    expect(holes[20].where.edges?.length).toBe(29 * 4);
  });

  it('finds edges of more than two faces and vertices that hold surfaces together', async () => {
    const edge = await only(
      objOf(
        [
          [0, 0, 0],
          [0, 0, 9],
          [9, 0, 0],
          [0, 9, 0],
          [-9, -9, 0],
        ],
        [
          [0, 1, 2],
          [0, 1, 3],
          [0, 1, 4],
        ],
      ),
      'read/non-manifold-edge',
    );
    expect(edge.where.edges).toEqual([[0, 1]]);
    const points = [...TETRA_POINTS, [-10, 0, 0], [0, -10, 0], [0, 0, -10]];
    const vertex = await only(
      objOf(points, [...TETRA_FACES, [0, 4, 5], [0, 5, 6], [0, 6, 4], [4, 6, 5]]),
      'read/non-manifold-vertex',
    );
    expect(vertex.where.vertices).toEqual([0]);
  });

  it('finds the faces that are turned, not their neighbours, and a surface turned inside out', async () => {
    const turnedOne = TETRA_FACES.map((face, f) => (f === 2 ? [...face].reverse() : face));
    expect((await only(objOf(TETRA_POINTS, turnedOne), 'read/turned-faces')).where.triangles).toEqual([2]);
    const inward = TETRA_FACES.map((face) => [...face].reverse());
    expect(await codesOf(objOf(TETRA_POINTS, inward))).toEqual(['read/inside-out']);
  });

  it('finds doubled and empty faces, and separate surfaces by a vertex of each', async () => {
    const points = [...TETRA_POINTS, [30, 0, 0], [31, 0, 0], [32, 0, 0]];
    const text = objOf(points, [...TETRA_FACES, [2, 1, 3], [4, 5, 6]]);
    expect((await only(text, 'read/doubled-faces')).where.triangles).toEqual([4]);
    expect((await only(text, 'read/empty-faces')).where.triangles).toEqual([5]);
    expect((await only(text, 'read/separate-surfaces')).where.vertices).toEqual([0, 4]);
  });

  it('finds surfaces that run through each other', async () => {
    const moved = TETRA_POINTS.map(([x, y, z]) => [x + 1, y + 1, z + 1]);
    const text = objOf(
      [...TETRA_POINTS, ...moved],
      [...TETRA_FACES, ...TETRA_FACES.map((face) => face.map((v) => v + 4))],
    );
    const crossing = await only(text, 'read/self-crossing');
    expect(crossing.value).toBe(3);
    expect(crossing.where.triangles).toEqual([3, 4, 5, 6]);
    const apart = objOf(
      [...TETRA_POINTS, ...TETRA_POINTS.map(([x, y, z]) => [x + 20, y, z])],
      [...TETRA_FACES, ...TETRA_FACES.map((face) => face.map((v) => v + 4))],
    );
    expect(await codesOf(apart)).toEqual(['read/separate-surfaces']);
  });

  it('gives both areas where polygons are not flat', async () => {
    const name = 'spot_control_mesh.obj';
    const bytes = readFileSync(new URL(`../../reference/meshes/${name}`, import.meta.url));
    const findings = await faultsOf(expectOk(await readModel(bytes, name, QUIET_WORK)));
    const bent = findings.find((finding) => finding.code === 'read/bent-faces');
    expect(bent?.severity).toBe('note');
    expect(bent?.text).toContain('cut the other way it would be 0.09 % larger');
    expect(bent?.value).toBeCloseTo(8.242172, 6);
    expect(bent?.limit).toBeCloseTo(8.249578, 6);
    expect(
      await codesOf(
        objOf(
          [
            [0, 0, 0],
            [9, 0, 0],
            [9, 9, 0],
            [0, 9, 0],
          ],
          [[0, 1, 2, 3]],
        ),
      ),
    ).toEqual(['read/open-rim']);
  });

  it.runIf(IS_LONG)('says when there are too many triangles to be pleasant', async () => {
    const { positions, triangles } = torusMesh(400, 260, 100, 40);
    const points = Array.from({ length: positions.length / 3 }, (_, v) =>
      Array.from(positions.subarray(3 * v, 3 * v + 3)),
    );
    const faces = Array.from({ length: triangles.length / 3 }, (_, t) =>
      Array.from(triangles.subarray(3 * t, 3 * t + 3)),
    );
    expect(await codesOf(objOf(points, faces))).toEqual(['read/many-triangles']);
  });

  it('can be called off', async () => {
    const model = await modelOf(TETRA);
    const work = {
      pause: (done: number) => {
        if (done > 0.3) throw new Cancelled();
        return undefined;
      },
    };
    await expect(findFaults(model, meshFromModel(model, 1), work)).rejects.toBeInstanceOf(Cancelled);
  });
});
