import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { add3, dot3, pointAt3, scale3, vec3 } from '../../../src/geom/vec.ts';
import { diagonalOf } from '../../../src/mesh/measure.ts';
import { findMirror, mirrorInSteps, type Mirror } from '../../../src/mesh/mirror/mirror.ts';
import { mirroredFaces, withMirrored } from '../../../src/mesh/mirror/mirrored-marks.ts';
import { mirroredLine } from '../../../src/mesh/mirror/mirrored-line.ts';
import { reflect } from '../../../src/mesh/mirror/mirror-plane.ts';
import type { MeshPoint } from '../../../src/mesh/lines/mesh-line.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { bumpyMesh, randomMove, renumbered } from '../../support/bumpy-mesh.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, meshOf, tubeMesh } from '../../support/meshes.ts';
import { readTestObj } from '../../support/read-test-obj.ts';
import { SAMPLE_NAMES } from '../../support/run-sample.ts';

const file = (path: string): Mesh => readTestObj(new URL(`../../../${path}`, import.meta.url));

function found(mesh: Mesh): Mirror {
  const mirror = findMirror(mesh);
  if (mirror === null) throw new Error('no mirror found');
  return mirror;
}

/** Partners are mutual, lie where the mirror image does, and edges and triangles go with their corners. */
function expectPartners(mesh: Mesh, { plane, partners, toleranceMm }: Mirror): void {
  const { edgeVertices } = topologyOf(mesh);
  partners.ofVertex.forEach((w, v) => {
    if (w < 0) return;
    expect(partners.ofVertex[w]).toBe(v);
    const [image, place] = [reflect(plane, pointAt3(mesh.positions, v)), pointAt3(mesh.positions, w)];
    expect(Math.hypot(image.x - place.x, image.y - place.y, image.z - place.z)).toBeLessThanOrEqual(toleranceMm);
  });
  partners.ofEdge.forEach((f, e) => {
    if (f < 0) return;
    const images = [0, 1].map((k) => partners.ofVertex[edgeVertices[2 * e + k]]);
    expect(images.sort((a, b) => a - b)).toEqual([...edgeVertices.subarray(2 * f, 2 * f + 2)]);
  });
  partners.ofTriangle.forEach((s, t) => {
    if (s < 0) return;
    const [a, b, c] = [0, 1, 2].map((k) => partners.ofVertex[mesh.triangles[3 * t + k]]);
    const corners = [...mesh.triangles.subarray(3 * s, 3 * s + 3)];
    const at = corners.indexOf(c);
    expect([0, 1, 2].map((k) => corners[(at + k) % 3])).toEqual([c, b, a]);
  });
}

describe('the mirror of a sculpt', () => {
  it.each(SAMPLE_NAMES)('is found in the sample %s', (name) => {
    const mesh = file(`samples/${name}.obj`);
    const mirror = found(mesh);
    expect(Math.abs(mirror.plane.normal.x)).toBeGreaterThan(1 - 1e-9);
    expect(Math.abs(mirror.plane.at)).toBeLessThan(1e-6 * diagonalOf(mesh));
    expect(mirror.share).toBe(1);
    // All but triangles of the maul's panels, which are cut from their polygons the same way on both sides.
    expect(mirror.pairedShare).toBe(name === 'maul-head' ? mirror.pairedShare : 1);
    expect(mirror.partners.ofVertex.every((w) => w >= 0)).toBe(true);
    expectPartners(mesh, mirror);
  });

  // Cut into triangles by chance, so no corner has a partner: the surface alone tells.
  it.each([['tests/reference/meshes/spot_low_resolution.obj', 1e-2]])(
    'is found in %s by its surface',
    (path, tolerance) => {
      const mesh = file(path);
      const mirror = found(mesh);
      expect(Math.abs(mirror.plane.normal.x)).toBeGreaterThan(0.9999);
      expect(mirror.share).toBeGreaterThan(0.95);
      expect(mirror.toleranceMm).toBeCloseTo(tolerance * diagonalOf(mesh), 9);
      expectPartners(mesh, mirror);
    },
  );

  it.each(['meshes/hand_lowres.obj', 'flatten/spot-flank.obj'])('is not found in %s', (path) => {
    expect(findMirror(file(`tests/reference/${path}`))).toBeNull();
  });

  it('stays in its place on a lump that is moved, turned, scaled and numbered otherwise', () =>
    forAll(
      (rand) => ({ lump: bumpyMesh(rand), move: randomMove(rand), rand }),
      ({ lump, move, rand }) => {
        const moved = renumbered(lump, rand, move.point);
        const mirror = found(moved);
        expect(mirror.share).toBe(1);
        expect(mirror.pairedShare).toBe(1);
        expect(Math.abs(dot3(mirror.plane.normal, vec3(...move.direction([1, 0, 0]))))).toBeGreaterThan(1 - 1e-12);
        const onPlane = vec3(...move.point([0, 10, 20]));
        expect(Math.abs(dot3(mirror.plane.normal, onPlane) - mirror.plane.at)).toBeLessThan(1e-9 * diagonalOf(moved));
        expectPartners(moved, mirror);
      },
      { runs: 3 },
    ));

  it('is not found in a lump with one side of its own', () =>
    forAll(
      (rand) => bumpyMesh(rand, 30),
      (lump) => expect(findMirror(lump)).toBeNull(),
      { runs: 2 },
    ));

  it('is found though one side has a badge of its own', () => {
    const helm = file('samples/helm.obj');
    const positions = helm.positions.slice();
    for (let v = 0; v < positions.length / 3; v += 1) {
      const [x, y, z] = [0, 1, 2].map((i) => positions[3 * v + i]);
      if (x > 60 && Math.hypot(y - 150, z) < 60) positions[3 * v] += 8;
    }
    const mirror = found({ ...helm, positions });
    expect(mirror.share).toBeLessThan(1);
    expect(Math.abs(mirror.plane.normal.x)).toBeGreaterThan(1 - 1e-6);
  });

  it('is not the plane a sheet lies in', () => {
    const sheet = meshOf(
      [
        [0, 0, 0],
        [90, 0, 0],
        [70, 40, 0],
        [10, 80, 0],
      ],
      [[0, 1, 2, 3]],
    );
    expect(findMirror(sheet)).toBeNull();
  });

  it('stands between left and right where several planes serve', () => {
    for (const left of [vec3(1, 0, 0), vec3(0, 0, 1), vec3(0, 1, 0)]) {
      const mirror = findMirror(boxMesh(60), left);
      expect(Math.abs(dot3(mirror?.plane.normal ?? vec3(0, 0, 0), left))).toBeGreaterThan(1 - 1e-9);
      expect(mirror?.plane.at).toBeCloseTo(30, 9);
    }
  });

  it('goes through the corners of a tube', () => {
    const mesh = tubeMesh(7, 40, 100, 3);
    const mirror = findMirror(mesh, vec3(0, 0, 1));
    expect(mirror?.partners.ofVertex.every((w) => w >= 0)).toBe(true);
  });

  it('is held against a plane the maker names, which stays as it is said', () => {
    const helm = file('samples/helm.obj');
    const named = runAtOnce(mirrorInSteps(helm, { point: vec3(0, 5, 7), normal: vec3(-2, 0, 0) }));
    expect(named.plane).toEqual({ normal: { x: 1, y: 0, z: 0 }, at: 0 });
    expect(named.share).toBe(1);
    const beside = runAtOnce(mirrorInSteps(helm, { point: vec3(5, 0, 0), normal: vec3(1, 0, 0) }));
    expect(beside.plane.at).toBe(5);
    expect(beside.share).toBeLessThan(0.5);
  });

  it('brings marks in numbers of the file to the other side, each once', () => {
    // Corners are numbered x + 2 y + 4 z: the mirror across x exchanges even and odd ones.
    const mesh = boxMesh(60);
    const { partners } = found(mesh);
    const marks = withMirrored(mesh, partners, [
      [2, 0],
      [0, 1],
      [3, 1],
      [0, 7],
      [4, 99],
    ]);
    // Along y on both sides, once; the edge across the mirror is its own image; a diagonal of the box and an unknown corner stay as told.
    expect(marks).toEqual([
      [2, 0],
      [0, 1],
      [3, 1],
      [0, 7],
      [4, 99],
    ]);
    expect(withMirrored(mesh, partners, [[2, 6]])).toEqual([
      [2, 6],
      [3, 7],
    ]);
  });

  it('brings a line to the other side', () => {
    const helm = file('samples/helm.obj');
    const mirror = found(helm);
    const { edgeVertices } = topologyOf(helm);
    const lineIn = (t: number) =>
      ({
        points: [
          { at: 'vertex', vertex: helm.triangles[3 * t + 2] },
          { at: 'triangle', triangle: t, bary: [0.5, 0.3, 0.2] },
          { at: 'edge', edge: topologyOf(helm).edgeOfHalfedge[3 * t], share: 0.25 },
        ],
        closed: false,
      }) as const;
    const placeOf = (point: MeshPoint) => {
      if (point.at === 'vertex') return pointAt3(helm.positions, point.vertex);
      const weights: [number, number][] =
        point.at === 'edge'
          ? [
              [edgeVertices[2 * point.edge], 1 - point.share],
              [edgeVertices[2 * point.edge + 1], point.share],
            ]
          : point.bary.map((weight, k) => [helm.triangles[3 * point.triangle + k], weight]);
      return weights.reduce(
        (sum, [u, weight]) => add3(sum, scale3(pointAt3(helm.positions, u), weight)),
        vec3(0, 0, 0),
      );
    };
    for (let t = 0; t < helm.triangles.length / 3; t += 7) {
      const line = lineIn(t);
      mirroredLine(helm, mirror.partners, line)?.points.forEach((point, i) => {
        const [is, shall] = [placeOf(point), reflect(mirror.plane, placeOf(line.points[i]))];
        expect(Math.hypot(is.x - shall.x, is.y - shall.y, is.z - shall.z)).toBeLessThan(1e-9);
      });
    }
    expect(mirroredLine(helm, mirror.partners, lineIn(17))?.points).toHaveLength(3);
    const none = { ...mirror.partners, ofTriangle: mirror.partners.ofTriangle.map(() => -1) };
    expect(mirroredLine(helm, none, lineIn(17))).toBeNull();
  });

  it('brings areas to the other side', () => {
    const helm = file('samples/helm.obj');
    const { partners } = found(helm);
    const opposite = mirroredFaces(helm, partners, [3, 4, 5]);
    expect(opposite).toHaveLength(3);
    expect(mirroredFaces(helm, partners, opposite)).toEqual([3, 4, 5]);
  });
});
