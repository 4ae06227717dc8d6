import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { modelClearanceSteps } from '../../../src/steps/wear/model-clearance.ts';
import { moveForModel, sizeForModel } from '../../../src/steps/wear/model-size.ts';
import { placeCoreSteps, placedPositions, type CorePlace } from '../../../src/steps/wear/place-core.ts';
import { rodClearance } from '../../../src/steps/wear/rod-clearance.ts';
import { boxMesh, meshOf, tubeMesh } from '../../support/meshes.ts';

const HERE: CorePlace = { point: { x: 0, y: 0, z: 0 }, turnDeg: [0, 0, 0] };
const at = (x: number, y: number, z: number): CorePlace => ({ ...HERE, point: { x, y, z } });
const surface = (mesh: Mesh) => ({ ...mesh, topology: topologyOf(mesh) });
const clearance = (back: Mesh, core: Mesh, place = HERE) =>
  runAtOnce(modelClearanceSteps(surface(back), runAtOnce(placeCoreSteps(core, place)).core));

/** A ball of rings and poles about 0. */
function ball(radius: number, around = 24, rings = 12): Mesh {
  const points: [number, number, number][] = [
    [0, 0, radius],
    [0, 0, -radius],
  ];
  for (let i = 1; i < rings; i += 1) {
    const a = (Math.PI * i) / rings;
    for (let j = 0; j < around; j += 1) {
      const b = (2 * Math.PI * j) / around;
      points.push([radius * Math.sin(a) * Math.cos(b), radius * Math.sin(a) * Math.sin(b), radius * Math.cos(a)]);
    }
  }
  const v = (i: number, j: number): number => 2 + (i - 1) * around + (j % around);
  const faces: number[][] = [];
  for (let j = 0; j < around; j += 1) {
    faces.push([0, v(1, j), v(1, j + 1)], [1, v(rings - 1, j + 1), v(rings - 1, j)]);
    for (let i = 1; i < rings - 1; i += 1)
      faces.push([v(i, j), v(i + 1, j), v(i + 1, j + 1)], [v(i, j), v(i + 1, j + 1), v(i, j + 1)]);
  }
  return meshOf(points, faces);
}

describe('room round a core of any form', () => {
  it('is the difference of the radii of two like balls, least where their corners and faces face each other', () => {
    const { tightest, stand, pierced, atVertices } = clearance(ball(50), ball(40));
    // Both are inscribed: between two like faces the planes keep the difference of their own distances from 0.
    expect(stand).toBe('inside');
    expect(pierced).toBe(0);
    expect(tightest?.clearanceMm).toBeLessThan(10);
    expect(tightest?.clearanceMm).toBeGreaterThan(10 * Math.cos(Math.PI / 12) * Math.cos(Math.PI / 24) - 1e-9);
    expect(Math.min(...atVertices)).toBeGreaterThan(9.7);
  });

  it('is that of the nearest two walls of a box in a box off the middle, to the last digit', () => {
    const { tightest, stand } = clearance(boxMesh(100, 80, 60), boxMesh(40, 30, 20), at(5, 12, 20));
    expect(stand).toBe('inside');
    expect(tightest?.clearanceMm).toBeCloseTo(5, 12);
    expect(tightest?.point.x).toBeCloseTo(0, 12);
  });

  it('agrees with a rod of the same size where the tube has as many sides', () => {
    const back = tubeMesh(24, 30, 100);
    const rod = { point: { x: 0, y: 0, z: 50 }, direction: { x: 0, y: 0, z: 1 }, radiusMm: 20, lengthMm: Infinity };
    const round = rodClearance(back.positions, back.triangles, rod).tightest?.clearanceMm;
    const model = clearance(back, tubeMesh(720, 20, 100)).tightest?.clearanceMm;
    expect(model).toBeGreaterThan(round!);
    // Its own sagitta, 20 (1 - cos 0.25 degrees).
    expect(model! - round!).toBeLessThan(20 * (1 - Math.cos(Math.PI / 720)) + 1e-9);
  });

  it('finds an edge that comes near an edge, far from all corners of both', () => {
    // The square tube stands on its edge over the ridge of the other box, turned by a right angle: only the middles of two edges are near.
    const beam = boxMesh(200, 20, 20);
    const turned = runAtOnce(placeCoreSteps(beam, { point: { x: -100, y: 0, z: 20 }, turnDeg: [45, 0, 0] }));
    const low = boxMesh(20, 200, 20);
    const ridge = {
      ...low,
      positions: placedPositions(low.positions, { point: { x: 0, y: -100, z: 0 }, turnDeg: [0, 45, 0] }),
    };
    const { tightest } = runAtOnce(modelClearanceSteps(surface(ridge), turned.core));
    // The ridge runs at z = 20 / sqrt 2, the beam's lower edge at z = 20, square to it.
    expect(tightest?.clearanceMm).toBeCloseTo(20 - 20 / Math.SQRT2, 9);
  });

  it('tells the depth where a corner of the core comes through the middle of a large triangle', () => {
    // A box on its corner: its lowest corner reaches z = -2 through the floor of the back.
    const core = boxMesh(30, 30, 30);
    const spike = runAtOnce(placeCoreSteps(core, { point: { x: 40, y: 30, z: -2 }, turnDeg: [45, 35, 0] }));
    const back = boxMesh(100, 80, 90);
    const { tightest, stand, pierced } = runAtOnce(modelClearanceSteps(surface(back), spike.core));
    const lowest = Math.min(...spike.core.positions.filter((_, i) => i % 3 === 2));
    expect(stand).toBe('crosses');
    expect(pierced).toBeGreaterThan(0);
    expect(tightest?.clearanceMm).toBeCloseTo(lowest, 9);
    expect(tightest?.point.z).toBeCloseTo(0, 9);
  });

  it('says of two boxes that cross that they do, of one that holds the foam that it does, of one beside it how far off it is', () => {
    expect(clearance(boxMesh(100, 20, 20), boxMesh(10, 60, 10), at(45, -20, 5)).stand).toBe('crosses');
    const held = clearance(boxMesh(20, 20, 20), boxMesh(100, 100, 100), at(-40, -30, -45));
    expect(held.stand).toBe('swallows');
    expect(held.tightest?.clearanceMm).toBeCloseTo(-30, 12);
    const far = clearance(boxMesh(20, 20, 20), boxMesh(10, 10, 10), at(1e5, 0, 0));
    expect(far.stand).toBe('outside');
    expect(far.tightest?.clearanceMm).toBeCloseTo(1e5 - 20, 6);
  });

  it('lets a core stand out of an opening', () => {
    const { tightest, stand } = clearance(tubeMesh(24, 30, 100), boxMesh(20, 20, 400), at(-10, -10, -150));
    expect(stand).toBe('inside');
    const tight = 30 * Math.cos(Math.PI / 24) - 10 * Math.SQRT2;
    expect(tightest?.clearanceMm).toBeGreaterThan(tight - 1e-9);
    expect(tightest?.clearanceMm).toBeLessThan(30 - 10 * Math.SQRT2 + 1e-9);
  });

  it('takes a core that is not closed by its nearest face', () => {
    const box = boxMesh(40, 30, 20);
    const open = meshOf(
      Array.from({ length: 8 }, (_, v) => [0, 1, 2].map((k) => box.positions[3 * v + k]) as [number, number, number]),
      Array.from({ length: 11 }, (_, t) => [...box.triangles.slice(3 * t + 3, 3 * t + 6)]),
    );
    const { core, openEdges } = runAtOnce(placeCoreSteps(open, at(5, 12, 20)));
    expect(openEdges).toBe(3);
    expect(runAtOnce(modelClearanceSteps(surface(boxMesh(100, 80, 60)), core)).tightest?.clearanceMm).toBeCloseTo(
      5,
      12,
    );
  });

  it('turns a core about its zero, about x, then y, then z', () => {
    const turned = placedPositions(Float64Array.of(1, 2, 3), { point: { x: 10, y: 0, z: 0 }, turnDeg: [90, 90, 90] });
    // About x: (1, -3, 2); about y: (2, -3, -1); about z: (3, 2, -1).
    expect([...turned]).toEqual([13, 2, -1]);
  });
});

describe('size and move that give the room wanted', () => {
  const sculpt = boxMesh(100, 80, 60);
  const middle: Mesh = { ...sculpt, positions: sculpt.positions.map((x, i) => x - [50, 40, 30][i % 3]) };
  const core = boxMesh(60, 40, 20);
  const place = at(-30, -20, -10);
  /** The back is the sculpt, its face 10 mm out. */
  const shell = {
    back: surface(middle),
    sculptPositions: middle.positions,
    facePositions: middle.positions.map((x) => x + 10 * Math.sign(x)),
    thicknessMm: 10,
  };

  it('are met by boxes one in the other', () => {
    expect(clearance(middle, core, place).tightest?.clearanceMm).toBeCloseTo(20, 12);
    expect(runAtOnce(moveForModel(shell, core, place, 20, 26))).toBeCloseTo(6, 1);
    // The thinnest side of the room must grow from 20 to 26: half of 60 from 30 to 36, of 80 from 40 to 46, of 100 from 50 to 56.
    const factor = runAtOnce(sizeForModel(shell, core, place, 20, 26))!;
    const larger = { ...middle, positions: middle.positions.map((x) => factor * x) };
    const grown = clearance(larger, core, at(-30 * factor, -20 * factor, -10 * factor));
    expect(grown.tightest?.clearanceMm).toBeCloseTo(26, 1);
  });
});
