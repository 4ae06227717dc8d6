import { describe, expect, it } from 'vitest';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { solidInFrame, type Solid } from '../../../src/steps/stack/frame.ts';
import { layerOutline } from '../../../src/steps/stack/layer-outline.ts';
import { areaBoundOf, areaOf, fineGrid } from '../../../src/steps/stack/regions.ts';
import { sectionArea, sectionAt, slabBetween } from '../../../src/steps/stack/slab.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { boxMesh, meshOf, torusMesh, tubeMesh } from '../../support/meshes.ts';
import { readTestObj } from '../../support/read-test-obj.ts';
import { ballMesh } from '../../support/round-meshes.ts';

const head = readTestObj(new URL('../../reference/meshes/goathead.obj', import.meta.url));
const scaled = (mesh: Mesh, by: number): Mesh => ({ ...mesh, positions: mesh.positions.map((x) => by * x) });

const solids: readonly (readonly [name: string, mesh: Mesh, axis: [number, number, number]])[] = [
  ['a ball along z', ballMesh(3, 60), [0, 0, 1]],
  ['a ring on edge', torusMesh(24, 16, 50, 20), [1, 0, 0]],
  ['a box on its tip', boxMesh(30, 20, 40), [1, 1, 1]],
  ['a head, upward', scaled(head, 15), [0, 1, 0]],
  ['a head, aslant', scaled(head, 15), [1, 2, 3]],
];
const solidOf = (mesh: Mesh, [x, y, z]: readonly [number, number, number]): Solid =>
  expectOk(solidInFrame(mesh, { x, y, z }));

/** The integral of section areas: they are quadratic between the heights of corners, so that Simpson's rule leaves nothing out. */
function bySections(solid: Solid, from: number, to: number): number {
  const { positions } = solid.surface;
  const heights = [from, to];
  for (let i = 2; i < positions.length; i += 3)
    if (positions[i] > from && positions[i] < to) heights.push(positions[i]);
  const steps = [...new Set(heights)].sort((a, b) => a - b);
  let sum = 0;
  for (let i = 0; i + 1 < steps.length; i += 1) {
    const [a, b] = [steps[i], steps[i + 1]];
    const area = (height: number, side: 'under' | 'over'): number => sectionArea(sectionAt(solid, height, side));
    sum += ((b - a) / 6) * (area(a, 'over') + 4 * area((a + b) / 2, 'under') + area(b, 'under'));
  }
  return sum;
}

describe('the part of a solid between two heights', () => {
  it.each(solids)('has the volume of its sections to 1e-9: %s', (_, mesh, axis) => {
    const solid = solidOf(mesh, axis);
    const { min, max, volumeMm3 } = solid;
    const at = (share: number): number => min.z + share * (max.z - min.z);
    const { volumeMm3: own } = slabBetween(solid, at(0.41), at(0.47));
    expect(Math.abs(own - bySections(solid, at(0.41), at(0.47)))).toBeLessThan(1e-9 * own);
    const cuts = [min.z, at(0.13), at(0.4), at(0.77), max.z];
    const sum = cuts.slice(1).reduce((all, to, i) => all + slabBetween(solid, cuts[i], to).volumeMm3, 0);
    expect(Math.abs(sum - volumeMm3)).toBeLessThan(1e-9 * volumeMm3);
  });

  it.each(solids)('lies within the larger outline and holds the smaller one: %s', (_, mesh, axis) => {
    const solid = solidOf(mesh, axis);
    const { min, max } = solid;
    const grid = fineGrid(Math.max(max.x - min.x, max.y - min.y));
    const [from, to] = [min.z + 0.52 * (max.z - min.z), min.z + 0.6 * (max.z - min.z)];
    const slab = slabBetween(solid, from, to);
    const larger = layerOutline(solid, from, to, 'larger', grid, slab);
    const smaller = layerOutline(solid, from, to, 'smaller', grid, slab);
    expect(areaOf(larger) * (to - from)).toBeGreaterThan(slab.volumeMm3);
    expect(areaOf(smaller) * (to - from)).toBeLessThan(slab.volumeMm3);
    expect(areaBoundOf(larger, grid)).toBeLessThan(1e-6 * areaOf(larger));
    // Every section, at heights between too, lies between the two.
    for (const share of [0, 0.21, 0.5, 0.83, 1]) {
      const side = share === 0 ? 'over' : 'under';
      const rings = sectionAt(solid, from + share * (to - from), side);
      const both = layerOutline(solid, from, to, 'larger', grid, { ...slab, shadow: [...slab.shadow, ...rings] });
      expect(Math.abs(areaOf(both) - areaOf(larger))).toBeLessThan(areaBoundOf(larger, grid));
      const area = sectionArea(rings);
      expect(area).toBeLessThan(areaOf(larger) + areaBoundOf(larger, grid));
      expect(area).toBeGreaterThan(areaOf(smaller) - areaBoundOf(larger, grid));
    }
  });

  it('is told from what lies on either side of a flat face', () => {
    // A step: a slab of 40 x 40 x 10 with a block of 20 x 20 x 10 upon it.
    const solid = solidOf(stepped(), [0, 0, 1]);
    const grid = fineGrid(40);
    expect(sectionArea(sectionAt(solid, 10, 'under'))).toBe(1600);
    expect(sectionArea(sectionAt(solid, 10, 'over'))).toBe(400);
    for (const rule of ['larger', 'middle', 'smaller'] as const) {
      expect(areaOf(layerOutline(solid, 0, 10, rule, grid))).toBe(1600);
      expect(areaOf(layerOutline(solid, 10, 20, rule, grid))).toBe(400);
    }
    expect(areaOf(layerOutline(solid, 5, 15, 'larger', grid))).toBe(1600);
    expect(areaOf(layerOutline(solid, 5, 15, 'smaller', grid))).toBe(400);
    expect(slabBetween(solid, 5, 15).volumeMm3).toBeCloseTo(10_000, 9);
    expect(slabBetween(solid, 0, 10).volumeMm3).toBeCloseTo(16_000, 9);
    expect(slabBetween(solid, 10, 20).volumeMm3).toBeCloseTo(4000, 9);
  });

  it('refuses what is open, empty or without a way', () => {
    const up = { x: 0, y: 0, z: 1 };
    expect(expectProblem(solidInFrame(tubeMesh(8, 10, 20), up), 'stack/open').text).toContain('16 sides');
    expectProblem(solidInFrame(boxMesh(1, 1, 0), up), 'stack/empty');
    expectProblem(solidInFrame(boxMesh(1), { x: 0, y: 0, z: 0 }), 'stack/axis');
    const box = boxMesh(1);
    expectProblem(solidInFrame({ ...box, triangles: box.triangles.slice().reverse() }, up), 'stack/inside-out');
  });
});

/** Rings of four corners from the foot upward, joined by walls and level steps. */
function stepped(): Mesh {
  const square = (half: number, z: number) =>
    [
      [-half, -half, z],
      [half, -half, z],
      [half, half, z],
      [-half, half, z],
    ] as [number, number, number][];
  const points = [...square(20, 0), ...square(20, 10), ...square(10, 10), ...square(10, 20)];
  const faces: number[][] = [
    [3, 2, 1, 0],
    [12, 13, 14, 15],
  ];
  for (let j = 0; j < 3; j += 1)
    for (let i = 0; i < 4; i += 1) {
      const n = (i + 1) % 4;
      faces.push([4 * j + i, 4 * j + n, 4 * j + 4 + n, 4 * j + 4 + i]);
    }
  return meshOf(points, faces);
}
