import { describe, expect, it } from 'vitest';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { triangleCentre } from '../../../src/mesh/measure.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { FIRST_CLAY } from '../../../src/model/clay.ts';
import type { ClayCoreWish } from '../../../src/model/clay-core.ts';
import { clayCoreOf, facesThatStay, meshWithout, type ClayCoreMade } from '../../../src/pipeline/clay-core.ts';
import { areaSolid } from '../../../src/steps/clay-core/area-solid.ts';
import { rimCap } from '../../../src/steps/clay-core/rim-cap.ts';
import { COVER_SPREAD } from '../../../src/steps/stack/cover.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { boxMesh, meshOf } from '../../support/meshes.ts';
import { readTestObj } from '../../support/read-test-obj.ts';

const facesOf = (mesh: Mesh): number[] => [...new Set(mesh.faceOfTriangle)];
const made = (mesh: Mesh, faces: readonly number[], wish: Partial<ClayCoreWish> = {}, wallMm = 0): ClayCoreMade =>
  expectOk(clayCoreOf(mesh, faces, { coverMm: 4, sheetsMm: [6], ...wish }, FIRST_CLAY, wallMm));
const areClosed = ({ twin }: { twin: Int32Array }): boolean => twin.every((h) => h >= 0);

/** The cap of a ball round the origin down to a polar angle: `n` rows of 4 n flat sides, corners on the ball. */
function capMesh(radius: number, polar: number, n: number): Mesh {
  const points: [number, number, number][] = [[0, 0, radius]];
  const faces: number[][] = [];
  const sides = 4 * n;
  for (let j = 1; j <= n; j += 1) {
    const [r, z] = [radius * Math.sin((polar * j) / n), radius * Math.cos((polar * j) / n)];
    for (let i = 0; i < sides; i += 1) {
      const angle = (2 * Math.PI * i) / sides;
      points.push([r * Math.cos(angle), r * Math.sin(angle), z]);
      const [at, next] = [1 + (j - 1) * sides + i, 1 + (j - 1) * sides + ((i + 1) % sides)];
      if (j === 1) faces.push([0, at, next]);
      else faces.push([at - sides, at, next, next - sides]);
    }
  }
  return meshOf(points, faces);
}

/** Radii of the core of a ball's cap in sheets, of a cover exactly so thick, from its base up. */
function coreRadii(radius: number, base: number, cover: number, sheet: number): number[] {
  const radii: number[] = [];
  for (let top = base + sheet; top < radius - cover; top += sheet)
    radii.push(Math.sqrt((radius - cover) ** 2 - top ** 2));
  return radii;
}

describe('a cap of a ball in clay', () => {
  it.each([
    ['a half ball', 60, Math.PI / 2],
    ['a flatter cap', 80, Math.PI / 3],
  ])('has the volumes and depth of closed forms: %s', (_, radius, polar) => {
    const [cover, sheet] = [4, 6];
    const base = radius * Math.cos(polar);
    const height = radius - base;
    const mesh = capMesh(radius, polar, 12);
    const { figures, core } = made(mesh, facesOf(mesh), { coverMm: cover, sheetsMm: [sheet] });
    // Cap of a ball: volume π h² (3 R - h) / 3, face 2 π R h.
    expect(figures.solidMm3 / ((Math.PI * height ** 2 * (3 * radius - height)) / 3)).toBeCloseTo(1, 1.7);
    expect(figures.areaMm2 / (2 * Math.PI * radius * height)).toBeCloseTo(1, 1.7);
    expect(figures.clayMm3 + figures.coreMm3).toBeCloseTo(figures.solidMm3, 6);
    expect(figures.meanMm).toBeCloseTo(figures.clayMm3 / figures.areaMm2, 9);
    // Between a cover just so thick and one 6 per cent thicker on a ball whose sides stand a little inside the round one.
    const inside = radius * Math.cos(Math.PI / 48) ** 2;
    const volume = (c: number, r: number): number =>
      coreRadii(r, base, c, sheet).reduce((sum, own) => sum + Math.PI * own ** 2 * sheet, 0);
    expect(figures.coreMm3).toBeLessThan(volume(cover, radius));
    expect(figures.coreMm3).toBeGreaterThan(volume(cover * COVER_SPREAD, inside) * 0.995);
    expect(figures.leastMm).toBeGreaterThanOrEqual(cover - 1e-3);
    expect(figures.leastMm).toBeLessThan(cover * COVER_SPREAD + 0.2);
    // Deepest in the corner of a step, (r of the sheet, its lower face), or over the last sheet.
    const radii = (core?.layers ?? []).map(({ outlineAreaMm2 }) => Math.sqrt(outlineAreaMm2 / Math.PI));
    const corners = radii.map((own, i) => radius - Math.hypot(own, base + i * sheet));
    const deepest = Math.max(...corners, height - radii.length * sheet);
    expect(figures.depthMm).toBeGreaterThan(deepest - 0.7);
    expect(figures.depthMm).toBeLessThan(deepest + 0.3);
    expect(figures.depthMm + figures.depthBoundMm).toBeGreaterThan(deepest - 0.2);
    expect(figures.depthBoundMm).toBeLessThan(0.8);
  });

  it('comes nearer to the closed form with the square of its sides', () => {
    const half = (2 / 3) * Math.PI * 40 ** 3;
    const off = [6, 12, 24].map((n) => {
      const mesh = capMesh(40, Math.PI / 2, n);
      const { solid } = expectOk(areaSolid(mesh, new Set(facesOf(mesh)), 4));
      expect(areClosed(topologyOf(solid))).toBe(true);
      const volume = made(mesh, facesOf(mesh), { coverMm: 30, sheetsMm: [15] }).figures.solidMm3;
      return half - volume;
    });
    for (const i of [0, 1]) expect(Math.log2(off[i] / off[i + 1])).toBeGreaterThan(1.9);
  });

  it('is all clay where no sheet fits, as deep as it is high', () => {
    const mesh = capMesh(20, Math.PI / 2, 8);
    const { figures, core, work } = made(mesh, facesOf(mesh), { coverMm: 15 });
    expect(core).toBeNull();
    expect(figures.coreMm3).toBe(0);
    // The middle of the base is as far from the polygons' ball as it is from their nearest side.
    expect(figures.depthMm).toBeGreaterThan(19);
    expect(figures.depthMm).toBeLessThan(20);
    expect(figures.findings.map(({ code }) => code)).toEqual(['clay/many-coats', 'clay/no-core']);
    expect(work.steps.map((step) => step.work)).toEqual(['clay', 'sand']);
  });
});

describe('a box in clay', () => {
  const [a, b, h] = [80, 60, 40];
  const mesh = boxMesh(a, b, h);
  // All sides but the floor.
  const faces = [1, 2, 3, 4, 5];

  it('keeps its cover to the last digit, and the floor bare', () => {
    const { figures, core } = made(mesh, faces, { coverMm: 5, sheetsMm: [10] }, 10);
    expect(core?.layers.length).toBe(3);
    expect(figures.coreMm3).toBeCloseTo(70 * 50 * 30, 2);
    expect(figures.clayMm3).toBeCloseTo(a * b * h - 70 * 50 * 30, 2);
    expect(figures.areaMm2).toBeCloseTo(a * b + 2 * (a + b) * h, 9);
    expect(figures.leastMm).toBeCloseTo(5, 3);
    expect(figures.borders).toEqual([
      { vertices: expect.any(Array) as unknown, lengthMm: 280, offPlaneMm: expect.closeTo(0, 9) as unknown },
    ]);
    expect(figures.glueMm2).toBeCloseTo(2 * 280 * 10, 6);
    // 10 mm lie over the last sheet.
    expect(figures.depthMm).toBeGreaterThan(9.4);
    expect(figures.depthMm + figures.depthBoundMm).toBeGreaterThanOrEqual(10);
    expect(figures.clay.coats).toEqual([1, 2]);
    expect(figures.clay.dryH).toEqual([48, 96]);
    expect(JSON.parse(JSON.stringify(figures))).toEqual(figures);
  });

  it('has packs and mass by the label alone', () => {
    const label = { gPerCm3: 0.5, packG: 100 };
    const { figures } = made(mesh, faces, { coverMm: 5, sheetsMm: [10], label });
    const wet = (a * b * h - 70 * 50 * 30) / 1000 / 0.98 ** 3;
    expect(figures.clay.massG).toBeCloseTo(wet / 2, 3);
    expect(figures.clay.packs).toBe(Math.ceil(wet / 200));
    expect(made(mesh, faces, { coverMm: 5, sheetsMm: [10] }).figures.clay.packs).toBeNull();
  });

  it('leaves an open edge where it was, and its core may be hollow from below', () => {
    const { figures, core } = made(mesh, faces, { coverMm: 5, sheetsMm: [5], wallMm: 15 });
    expect(core?.layers[0].pieces[0].openings).toHaveLength(1);
    // The hollow is no clay.
    expect(figures.depthMm).toBeLessThan(6);
    expect(facesThatStay(mesh, [figures])).toEqual([0]);
    const left = meshWithout(mesh, [figures]);
    const open = [...topologyOf(left).twin].flatMap((twin, i) => (twin < 0 ? [left.triangles[i]] : []));
    expect(open.sort()).toEqual([...figures.borders[0].vertices].sort());
  });

  it('is refused where the area is no solid', () => {
    expectProblem(clayCoreOf(mesh, [1], { coverMm: 4, sheetsMm: [6] }, FIRST_CLAY, 0), 'clay/hollow');
    expectProblem(clayCoreOf(mesh, [77], { coverMm: 4, sheetsMm: [6] }, FIRST_CLAY, 0), 'clay/no-area');
    const axis = { x: 0, y: 0, z: 0 };
    expectProblem(clayCoreOf(mesh, faces, { coverMm: 4, sheetsMm: [6], axis }, FIRST_CLAY, 0), 'clay/axis');
    // The inside of a bowl.
    const bowl = { ...mesh, triangles: mesh.triangles.map((_, i) => mesh.triangles[i - (i % 3) + 2 - (i % 3)]) };
    expectProblem(clayCoreOf(bowl, faces, { coverMm: 4, sheetsMm: [6] }, FIRST_CLAY, 0), 'clay/hollow');
  });
});

describe('an area of a real model in clay', () => {
  const head = readTestObj(new URL('../../reference/meshes/goathead.obj', import.meta.url));
  const mesh = { ...head, positions: head.positions.map((x) => 15 * x) };
  const ys = [...mesh.faceOfTriangle.keys()].map((t) => triangleCentre(mesh, t)[1]);
  const line = [...ys].sort((p, q) => p - q)[Math.floor(0.8 * ys.length)];
  const faces = [...mesh.faceOfTriangle].filter((_, t) => ys[t] > line);

  it('keeps its cover everywhere and adds up', () => {
    const { figures, work } = made(mesh, faces, { coverMm: 3, sheetsMm: [10], axis: { x: 0, y: 1, z: 0 } });
    expect(figures.leastMm).toBeGreaterThan(3 - 1e-3);
    expect(figures.coreMm3).toBeGreaterThan(0.1 * figures.solidMm3);
    expect(figures.clayMm3).toBeGreaterThan(0.05 * figures.solidMm3);
    expect(figures.depthMm).toBeGreaterThan(figures.leastMm);
    expect(figures.boundMm3).toBeLessThan(1e-5 * figures.solidMm3);
    expect(work.pieces.length).toBeGreaterThan(2);
    const edges = figures.borders.reduce((sum, { vertices }) => sum + vertices.length, 0);
    const left = meshWithout(mesh, [figures]);
    expect([...topologyOf(left).twin].filter((h) => h < 0)).toHaveLength(edges);
  });
});

describe('triangles across a rim', () => {
  it('have no side between two corners of the rim but its own, and its area', () => {
    const square = [0, 0, 0, 4, 0, 0, 4, 4, 0, 0, 4, 0];
    const { middles, triangles } = rimCap(square);
    expect(middles).toHaveLength(1);
    expect(triangles).toHaveLength(12);
    for (let t = 0; t < triangles.length; t += 3) expect(triangles.slice(t, t + 3)).toContain(4);
  });
});
