import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { triangleArea } from '../../../src/mesh/measure.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { cutPatches } from '../../../src/steps/cut/cut-patches.ts';
import { seamChains } from '../../../src/steps/cut/seam-chains.ts';
import { staggerSteps, type StaggeredSeams } from '../../../src/steps/cut/stagger-seams.ts';
import { boxMesh, meshOf, tubeMesh } from '../../support/meshes.ts';

const CREASE = (20 * Math.PI) / 180;

/** mm. */
const LEAST_WIDTH = 18;

/** A mesh parted along edges for which a rule holds, and the same staggered. */
function staggered(mesh: Mesh, isCut: (v: number, w: number) => boolean, staggerMm: number) {
  const { edgeCount, edgeVertices, twin, halfedgeOfEdge } = topologyOf(mesh);
  const isSeam = new Uint8Array(edgeCount);
  for (let e = 0; e < edgeCount; e += 1)
    if (twin[halfedgeOfEdge[e]] >= 0 && isCut(edgeVertices[2 * e], edgeVertices[2 * e + 1])) isSeam[e] = 1;
  const seams = { isSeam, count: isSeam.reduce((sum, one) => sum + one, 0) };
  const cut = cutPatches(mesh, seams, mesh.positions);
  const chains = seamChains(mesh, seams, cut, []);
  const moved = runAtOnce(
    staggerSteps({ mesh, ...cut, chains, staggerMm, creaseRad: CREASE, leastWidthMm: LEAST_WIDTH }),
  );
  return { moved, chains, cut };
}

/** Area of each owner. */
function areas({ mesh, ownerOfTriangle }: StaggeredSeams): number[] {
  const sums: number[] = [];
  ownerOfTriangle.forEach((owner, t) => {
    sums[owner] = (sums[owner] ?? 0) + triangleArea(mesh.positions, mesh.triangles, t);
  });
  return sums;
}

/** Vertices on seams. */
const seamVertices = ({ mesh, seams }: StaggeredSeams): number[] => {
  const { edgeVertices } = topologyOf(mesh);
  const found = new Set<number>();
  seams.isSeam.forEach((one, e) => {
    if (one === 1) found.add(edgeVertices[2 * e]).add(edgeVertices[2 * e + 1]);
  });
  return [...found];
};

const at = ({ positions }: Mesh, v: number) => [positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]] as const;

/** A ball of gores as a mesh: `n` columns, `m` rows, poles on z. */
function ballMesh(n: number, m: number, r: number): Mesh {
  const points: [number, number, number][] = [[0, 0, r]];
  for (let j = 1; j < m; j += 1)
    for (let i = 0; i < n; i += 1) {
      const [along, down] = [(2 * Math.PI * i) / n, (Math.PI * j) / m];
      points.push([r * Math.sin(down) * Math.cos(along), r * Math.sin(down) * Math.sin(along), r * Math.cos(down)]);
    }
  points.push([0, 0, -r]);
  const number = (j: number, i: number): number =>
    j === 0 ? 0 : j === m ? points.length - 1 : 1 + (j - 1) * n + (i % n);
  const faces: number[][] = [];
  for (let j = 0; j < m; j += 1)
    for (let i = 0; i < n; i += 1)
      faces.push([...new Set([number(j, i), number(j + 1, i), number(j + 1, i + 1), number(j, i + 1)])]);
  return meshOf(points, faces);
}

/** A flat plate of squares in the plane z = 0, corner numbers i + (n + 1) j. */
function plateMesh(n: number, side: number): Mesh {
  const points: [number, number, number][] = [];
  for (let j = 0; j <= n; j += 1) for (let i = 0; i <= n; i += 1) points.push([i * side, j * side, 0]);
  const faces: number[][] = [];
  for (let j = 0; j < n; j += 1)
    for (let i = 0; i < n; i += 1) {
      const v = i + (n + 1) * j;
      faces.push([v, v + 1, v + n + 2, v + n + 1]);
    }
  return meshOf(points, faces);
}

const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);

/** The mesh stays a surface of the same area, each part of a triangle on the side it was. */
function expectSameSurface(before: Mesh, { mesh, ownerOfTriangle, sourceOfTriangle }: StaggeredSeams): void {
  const area = (one: Mesh): number =>
    sum(Array.from({ length: one.triangles.length / 3 }, (_, t) => triangleArea(one.positions, one.triangles, t)));
  expect(area(mesh) / area(before)).toBeCloseTo(1, 12);
  expect(ownerOfTriangle.length).toBe(mesh.triangles.length / 3);
  expect(Array.from(mesh.positions.subarray(0, before.positions.length))).toEqual(Array.from(before.positions));
  const open = (one: Mesh): number => {
    const { twin } = topologyOf(one);
    return sum(
      Array.from(twin, (across, h) => {
        if (across >= 0) return 0;
        const [v, w] = [3 * one.triangles[h], 3 * one.triangles[h % 3 === 2 ? h - 2 : h + 1]];
        const { positions } = one;
        return Math.hypot(
          positions[v] - positions[w],
          positions[v + 1] - positions[w + 1],
          positions[v + 2] - positions[w + 2],
        );
      }),
    );
  };
  // No side was torn open: the border is as long as it was.
  expect(Math.abs(open(mesh) - open(before))).toBeLessThan(1e-9 * (1 + open(before)));
  sourceOfTriangle.forEach((t, i) => {
    expect(mesh.faceOfTriangle[i]).toBe(before.faceOfTriangle[t]);
    expect(triangleArea(mesh.positions, mesh.triangles, i)).toBeGreaterThan(0);
  });
}

describe('seams beside those of the sheet above', () => {
  it.each([20, -20, 3.3])('moves the slit of a tube by %d mm along its sides', (mm) => {
    const mesh = tubeMesh(64, 60, 100, 10);
    const { moved } = staggered(mesh, (v, w) => v % 64 === 0 && w % 64 === 0, mm);
    expect(moved.findings).toEqual([]);
    expectSameSurface(mesh, moved);
    // Closed form: a polygon of 64 sides, each 2 R sin(pi / 64) long; the slit goes round so many of them and a share of one.
    const side = 120 * Math.sin(Math.PI / 64);
    const [whole, share] = [Math.floor(Math.abs(mm) / side), (Math.abs(mm) / side) % 1];
    const corner = (i: number) => [60 * Math.cos((2 * Math.PI * i) / 64), 60 * Math.sin((2 * Math.PI * i) / 64)];
    const [[x0, y0], [x1, y1]] = [corner(whole), corner(whole + 1)];
    const place = [x0 + share * (x1 - x0), y0 + share * (y1 - y0)];
    const ys = seamVertices(moved).map((v) => {
      const [x, y] = at(moved.mesh, v);
      expect(x).toBeCloseTo(place[0], 9);
      expect(Math.abs(y)).toBeCloseTo(place[1], 9);
      return Math.sign(y);
    });
    expect(new Set(ys).size).toBe(1);
    expect(seamVertices(moved).length).toBe(21);
  });

  it('takes the slit to the other side where the distance is negative', () => {
    const mesh = tubeMesh(64, 60, 100, 10);
    const [one, other] = [20, -20].map((mm) => {
      const { moved } = staggered(mesh, (v, w) => v % 64 === 0 && w % 64 === 0, mm);
      return at(moved.mesh, seamVertices(moved)[0])[1];
    });
    expect(one).toBeCloseTo(-other, 9);
  });

  it('moves a straight line across a flat plate by the distance, through whatever it crosses', () => {
    const mesh = plateMesh(12, 10);
    const { moved } = staggered(mesh, (v, w) => v % 13 === 6 && w % 13 === 6, 17);
    expect(moved.findings).toEqual([]);
    expectSameSurface(mesh, moved);
    const xs = seamVertices(moved).map((v) => at(moved.mesh, v)[0]);
    xs.forEach((x) => expect(Math.abs(Math.abs(x - 60) - 17)).toBeLessThan(1e-9));
    expect(
      areas(moved)
        .map((area) => Math.round(area))
        .sort((a, b) => a - b),
    ).toEqual([43 * 120, 77 * 120]);
  });

  it('moves the halves of a tube on together, so that both keep their size', () => {
    const mesh = tubeMesh(64, 60, 100, 10);
    const isHalf = (v: number, w: number): boolean => v % 32 === 0 && w % 32 === 0 && v % 64 === w % 64;
    const { moved } = staggered(mesh, isHalf, 20);
    expect(moved.findings).toEqual([]);
    const [one, other] = areas(moved);
    expect(one).toBeCloseTo(other, 6);
  });

  it('leaves the seams of a box on its edges, and says so', () => {
    const { moved } = staggered(boxMesh(100), (v, w) => [1, 2, 4].includes(v ^ w), 10);
    expect(moved.findings.map(({ code, value }) => [code, value])).toEqual([['cut/stagger-crease', 12]]);
    expect(moved.seams.count).toBe(12);
    expect(moved.mesh.triangles.length).toBe(36);
  });

  it('turns the gores of a ball on together: each meets both neighbours, and keeps its size to a hundredth', () => {
    const mesh = ballMesh(48, 24, 100);
    const column = (v: number): number => (v === 0 || v === mesh.positions.length / 3 - 1 ? -1 : (v - 1) % 48);
    const isMeridian = (v: number, w: number): boolean => {
      const [a, b] = [column(v), column(w)];
      return (a < 0 || b < 0 || a === b) && Math.max(a, b) % 8 === 0;
    };
    const { moved, cut } = staggered(mesh, isMeridian, 20);
    expect(moved.findings).toEqual([]);
    expectSameSurface(mesh, moved);
    expect(cut.patches.length).toBe(6);
    const mean = sum(areas(moved)) / 6;
    areas(moved).forEach((area) => expect(Math.abs(area / mean - 1)).toBeLessThan(0.01));
    // On the equator the plane field is exact but for the turn of the meridian: 20 mm from it along a ball of 100 mm.
    const equator = seamVertices(moved)
      .map((v) => at(moved.mesh, v))
      .filter(([, , z]) => Math.abs(z) < 1);
    expect(equator.length).toBeGreaterThanOrEqual(6);
    for (const [x, y] of equator) {
      const turn = ((Math.atan2(y, x) * 180) / Math.PI + 360) % 60;
      const mm = (Math.min(turn, 60 - turn) * Math.PI) / 1.8;
      expect(Math.abs(mm - 20)).toBeLessThan(0.2);
    }
  });

  it('leaves a seam where the piece beside it is too narrow, and says what would work', () => {
    const mesh = plateMesh(12, 10);
    const { moved } = staggered(mesh, (v, w) => v % 13 === 6 && w % 13 === 6, 55);
    expect(moved.seams.count).toBe(12);
    const [{ code, value, limit }] = moved.findings;
    expect([code, limit]).toEqual(['cut/stagger-narrow', 55]);
    // Of 60 mm the least width must be left.
    expect(value).toBe(60 - LEAST_WIDTH);
    const closer = staggered(mesh, (v, w) => v % 13 === 6 && w % 13 === 6, value ?? NaN);
    expect(closer.moved.findings).toEqual([]);
    expectSameSurface(mesh, closer.moved);
  });

  it('leaves a dart where it is', () => {
    const mesh = plateMesh(12, 10);
    const { moved } = staggered(mesh, (v, w) => v % 13 === 6 && w % 13 === 6 && Math.max(v, w) < 13 * 6, 10);
    expect(moved.findings.map(({ code }) => code)).toEqual(['cut/stagger-dart']);
    expect(moved.mesh.triangles.length).toBe(mesh.triangles.length);
  });

  it('keeps a wall of crossing seams whole: as many pieces, none with another form', () => {
    const mesh = plateMesh(24, 10);
    const isCut = (v: number, w: number): boolean => {
      const [a, b, c, d] = [v % 25, Math.floor(v / 25), w % 25, Math.floor(w / 25)];
      return (a === c && a % 8 === 0) || (b === d && b % 8 === 0);
    };
    for (const mm of [5, -12, 25]) {
      const { moved, cut } = staggered(mesh, isCut, mm);
      expectSameSurface(mesh, moved);
      const after = cutPatches(moved.mesh, moved.seams, moved.mesh.positions);
      expect(after.patches.map(({ kind }) => kind)).toEqual(cut.patches.map(() => 'disc'));
      expect(moved.findings.every(({ text }) => text.length > 20)).toBe(true);
    }
  });
});
