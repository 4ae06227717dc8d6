import { describe, expect, it } from 'vitest';
import { move4, turnRound4 } from '../../../src/geom/matrix4.ts';
import { length3, sub3, vec3 } from '../../../src/geom/vec.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { surfaceOf } from '../../../src/mesh/surface.ts';
import { surfaceTreeOf } from '../../../src/mesh/surface-tree.ts';
import type { StandingSurface } from '../../../src/steps/assembly/meeting-curves.ts';
import { meetParts } from '../../../src/steps/assembly/part-meeting.ts';
import { placedMesh } from '../../../src/steps/assembly/placing.ts';
import { boxMesh, meshOf } from '../../support/meshes.ts';
import { rodMesh } from '../../support/rod-meshes.ts';
import { ballMesh } from '../../support/round-meshes.ts';

const standing = (mesh: Mesh): StandingSurface => ({ surface: surfaceOf(mesh), tree: surfaceTreeOf(mesh) });
const moved = (mesh: Mesh, x: number, y: number, z: number): Mesh =>
  placedMesh(mesh, { matrix: move4(vec3(x, y, z)), isMirrored: false });

describe('meetParts', () => {
  it('tells how far parts are apart, edge to edge as well', () => {
    const met = meetParts(standing(boxMesh(10)), standing(moved(boxMesh(10), 13, 14, 3)));
    expect(met).toMatchObject({ stand: 'apart', depth: null, isOpen: false });
    expect(met.gap?.mm).toBeCloseTo(5, 12); // corner lines 3 and 4 apart
    // Two boxes turned by 45 degrees, edges crossing square at a distance of 2: no corner is near.
    const ridge = placedMesh(moved(boxMesh(10, 10, 40), -5, -5, -20), {
      matrix: turnRound4(vec3(0, 0, 0), vec3(0, 0, 1), 45),
      isMirrored: false,
    });
    const across = placedMesh(ridge, { matrix: turnRound4(vec3(0, 0, 0), vec3(1, 0, 0), 90), isMirrored: false });
    const tip = 5 * Math.SQRT2;
    const other = moved(across, 2 * tip + 2, 0, 0);
    const edges = meetParts(standing(ridge), standing(other));
    expect(edges.gap?.mm).toBeCloseTo(2, 9);
    expect(length3(sub3(edges.gap?.onFirst ?? vec3(0, 0, 0), vec3(tip, 0, 0)))).toBeLessThan(1e-6);
    expect(length3(sub3(edges.gap?.onSecond ?? vec3(0, 0, 0), vec3(tip + 2, 0, 0)))).toBeLessThan(1e-6);
  });
  it('tells what touches, by a face, an edge or a corner', () => {
    for (const at of [
      [10, 0, 0],
      [0, 0, 10],
      [-10, 3, 2],
      [10, 10, 0],
      [10, 10, 10],
      [-10, -10, -10],
    ] as const)
      expect(meetParts(standing(boxMesh(10)), standing(moved(boxMesh(10), at[0], at[1], at[2])))).toMatchObject({
        stand: 'touch',
        depth: null,
        gap: { mm: 0 },
      });
  });
  it('tells what lies within the other, and with how much room', () => {
    const [small, large] = [standing(moved(boxMesh(2), 3, 4, 4.5)), standing(boxMesh(10))];
    expect(meetParts(small, large)).toMatchObject({ stand: 'first-within', gap: { mm: 3 } });
    expect(meetParts(large, small)).toMatchObject({ stand: 'second-within', gap: { mm: 3 } });
  });
  it('tells how deep a rod goes into a block: as far as its end, not its corners, stands from the walls', () => {
    // The rod's end is a plate of corners on radius 3 and one in the middle, 4 deep.
    const rod = moved(rodMesh(24, 3, -4, 20), 10, 10, 20);
    const met = meetParts(standing(boxMesh(20)), standing(rod));
    expect(met.stand).toBe('cross');
    expect(met.curves.length).toBe(1);
    expect(met.depth?.mm).toBeCloseTo(4, 2);
    // Deepest between corners: the middle of a long edge of a ridge in a block.
    const ridge = placedMesh(moved(boxMesh(10, 10, 60), -5, -5, -30), {
      matrix: turnRound4(vec3(0, 0, 0), vec3(0, 0, 1), 45),
      isMirrored: false,
    });
    const deep = meetParts(standing(moved(boxMesh(20), 0, -10, -10)), standing(moved(ridge, 3 - 5 * Math.SQRT2, 0, 0)));
    expect(deep.stand).toBe('cross');
    expect(deep.depth?.mm ?? 0).toBeGreaterThan(2.9);
    expect(deep.depth?.mm ?? 0).toBeLessThanOrEqual(3 + 1e-9);
    expect(deep.depth?.atMostMm ?? 0).toBeGreaterThanOrEqual(3 - 1e-9);
    expect(deep.depth?.atMostMm ?? 0).toBeLessThan(3.2);
  });
  it('finds the depth of two balls by closed form: radii less distance', () => {
    // 10 + 6 - 13 along the line of the middles; the polyhedra are smaller by up to 0.5 % of their radius.
    const met = meetParts(standing(ballMesh(3, 10)), standing(moved(ballMesh(3, 6), 13, 0, 0)));
    expect(met.depth?.mm ?? 0).toBeGreaterThan(2.8);
    expect(met.depth?.mm ?? 0).toBeLessThan(3.0001);
  });
  it('takes open and empty surfaces', () => {
    const none = meshOf([], []);
    expect(meetParts(standing(none), standing(boxMesh(1)))).toMatchObject({ stand: 'apart', gap: null, depth: null });
    const sheet = meshOf(
      [
        [0, 0, 0],
        [9, 0, 0],
        [9, 9, 0],
        [0, 9, 0],
      ],
      [[0, 1, 2, 3]],
    );
    expect(meetParts(standing(sheet), standing(moved(boxMesh(2), 3, 3, -1)))).toMatchObject({
      stand: 'cross',
      isOpen: true,
    });
  });
});
