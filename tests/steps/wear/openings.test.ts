import { describe, expect, it } from 'vitest';
import { seamId } from '../../../src/base/ids.ts';
import { QUIET_WORK } from '../../../src/base/work.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import type { SeamChain } from '../../../src/model/seams.ts';
import { seamsThatOpen } from '../../../src/steps/wear/opening-seams.ts';
import { findOpenings, leastWidth } from '../../../src/steps/wear/openings.ts';
import { boxMesh, meshOf, tubeMesh } from '../../support/meshes.ts';

const surfaceOf = (mesh: Mesh) => ({
  positions: mesh.positions,
  triangles: mesh.triangles,
  topology: topologyOf(mesh),
});

const UP = { x: 0, y: 0, z: 1 };
const unsaid = (): undefined => undefined;

/** A tube of rings of given radii, 20 mm apart, round z. */
function waist(radii: readonly number[], sides: number): Mesh {
  const points = radii.flatMap((r, j) =>
    Array.from({ length: sides }, (_, i) => {
      const angle = (2 * Math.PI * i) / sides;
      return [r * Math.cos(angle), r * Math.sin(angle), 20 * j] as const;
    }),
  );
  const faces = radii.slice(1).flatMap((_, j) =>
    Array.from({ length: sides }, (_, i) => {
      const next = (i + 1) % sides;
      return [j * sides + i, j * sides + next, (j + 1) * sides + next, (j + 1) * sides + i];
    }),
  );
  return meshOf(points, faces);
}

const around = (r: number, sides: number): number => 2 * sides * r * Math.sin(Math.PI / sides);
const chain = (vertices: number[], letter: string): SeamChain => ({
  id: seamId(letter),
  letter,
  kind: 'butt',
  vertices: Uint32Array.from(vertices),
  closed: false,
  sides: [],
  foldRad: new Float64Array(vertices.length - 1),
  allowanceMm: 0,
  lapSide: 0,
});

describe('putting a part on', () => {
  it('finds both rims of a tube and the waist between one of them and the place worn', async () => {
    const mesh = waist([50, 30, 40], 32);
    const worn = { point: { x: 0, y: 0, z: 35 }, normal: { x: 0, y: 0, z: 1 } };
    const [wide, narrow] = await findOpenings(surfaceOf(mesh), worn, { girthMm: 230 }, UP, unsaid, QUIET_WORK);
    expect(wide.girthMm).toBeCloseTo(around(50, 32), 9);
    expect(wide.centre.z).toBe(0);
    expect(wide.areaMm2).toBeCloseTo(16 * 2500 * Math.sin(Math.PI / 16), 6);
    expect(wide.breadthMm).toBeCloseTo(100 * Math.cos(Math.PI / 32), 9);
    expect(wide.narrowest?.girthMm).toBeCloseTo(around(30, 32), 1);
    expect(wide.narrowest?.point.z).toBeCloseTo(20, 1);
    expect(wide.passes).toBe(false);
    expect(narrow.girthMm).toBeCloseTo(around(40, 32), 9);
    expect(narrow.narrowest?.girthMm).toBeCloseTo(around(37.5, 32), 1);
    expect(narrow.passes).toBe(true);
  });

  it('has nothing to say of what was not asked, and no opening where there is none', async () => {
    const tube = await findOpenings(surfaceOf(tubeMesh(6, 20, 30)), null, null, UP, unsaid, QUIET_WORK);
    expect(tube.map(({ passes }) => passes)).toEqual([null, null]);
    expect(await findOpenings(surfaceOf(boxMesh(10)), null, { girthMm: 5 }, UP, unsaid, QUIET_WORK)).toEqual([]);
  });

  it('knows a slit up the side from a window in the wall', async () => {
    const worn = { point: { x: 0, y: 0, z: 30 }, normal: { x: 0, y: 0, z: 1 } };
    const tube = tubeMesh(8, 50, 60, 3);
    const without = (faces: readonly number[]): Mesh => ({
      ...tube,
      triangles: tube.triangles.filter((_, i) => !faces.includes(Math.floor(i / 6))),
    });
    const width = 2 * 50 * Math.sin(Math.PI / 8);
    const [slit] = await findOpenings(surfaceOf(without([0, 8, 16])), worn, null, UP, unsaid, QUIET_WORK);
    expect(slit.slitMm).toBeCloseTo(width, 9);
    const window = await findOpenings(surfaceOf(without([8])), worn, null, UP, unsaid, QUIET_WORK);
    expect(window.map(({ slitMm }) => slitMm > 0)).toEqual([false, false, true]); // its own width
    // One of three rows of the tube's walls, 60 high together; the rims lie level and are as deep as they are broad.
    expect(window[2].acrossMm).toBeCloseTo(width, 9);
    expect(window[2].uprightMm).toBeCloseTo(20, 9);
    expect(window[0].acrossMm).toBeCloseTo(100, 9);
    expect(window[0].uprightMm).toBeCloseTo(100, 9);
  });

  it('knows what an opening is for by any vertex of its rim', async () => {
    const mesh = tubeMesh(6, 20, 30);
    const [a, b] = await findOpenings(surfaceOf(mesh), null, null, UP, unsaid, QUIET_WORK);
    expect([a.use, b.use]).toEqual([null, null]);
    const sight = (v: number): 'sight' | undefined => (v === a.vertices[3] ? 'sight' : undefined);
    const said = await findOpenings(surfaceOf(mesh), null, null, UP, sight, QUIET_WORK);
    expect(said.map(({ use }) => use)).toEqual(['sight', null]);
  });

  it('measures the least width of a ring across its corners too', () => {
    expect(leastWidth(Float64Array.from([0, 0, 10, 0, 10, 4, 0, 4]))).toBe(4);
    expect(leastWidth(Float64Array.from([0, 0, 10, 0, 5, 8.660254037844386]))).toBeCloseTo(8.660254037844386, 12);
  });

  it('names the seams that would open the side, over several of them, and else those that halve it', () => {
    const mesh = waist([50, 30, 40], 8);
    const rims = [Uint32Array.from([0, 1, 2, 3, 4, 5, 6, 7]), Uint32Array.from([16, 17, 18, 19, 20, 21, 22, 23])];
    const [low, high, ring] = [chain([0, 8], 'A'), chain([16, 8], 'B'), chain([8, 9, 10], 'C')];
    const open = seamsThatOpen(mesh.positions, [ring, high, low], rims);
    expect(open).toMatchObject({ kind: 'side', chains: [2, 1] });
    const halves = seamsThatOpen(mesh.positions, [ring, low, chain([10, 2], 'D')], rims);
    expect(halves).toMatchObject({ kind: 'halves', chains: [1, 0, 2] });
    const short = { ...mesh, positions: mesh.positions.map((x, i) => (i >= 3 * 8 && i < 3 * 16 ? x / 10 : x)) };
    expect(seamsThatOpen(short.positions, [low, chain([8, 1], 'E'), high], rims)).toMatchObject({ kind: 'side' });
    expect(seamsThatOpen(mesh.positions, [ring], rims)).toBeNull();
  });
});
