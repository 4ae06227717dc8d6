import { describe, expect, it } from 'vitest';
import { HingeBending, plateStiffness } from '../../../src/steps/dryfit/hinge-bending.ts';
import { addMembrane } from '../../../src/steps/dryfit/membrane-energy.ts';
import { heldShell } from '../../../src/steps/dryfit/shell-energy.ts';
import { stripSheet, type Strip } from './strip-sheet.ts';

const FOAM = { youngNPerMm2: 1.5, poisson: 0.3 };
const [LENGTH, WIDTH, THICKNESS] = [100, 20, 6];

/** The strip on a cylinder of radius `radius` whose axis is turned by `turn` from the strip's y. */
function onCylinder({ uv }: Strip, radius: number, turn: number): Float64Array {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const positions = new Float64Array((uv.length / 2) * 3);
  for (let v = 0; v < uv.length / 2; v += 1) {
    const round = c * uv[2 * v] + s * uv[2 * v + 1];
    const along = c * uv[2 * v + 1] - s * uv[2 * v];
    positions.set([radius * Math.sin(round / radius), along, radius * Math.cos(round / radius)], 3 * v);
  }
  return positions;
}

describe('energy of a strip held in an arc', () => {
  const wanted = (radius: number): number => (plateStiffness(FOAM, THICKNESS) * LENGTH * WIDTH) / (2 * radius ** 2);
  for (const turn of [0, 0.4, 1, Math.PI / 2])
    it(`is D L w / 2 R² whatever way the mesh runs, turned by ${turn.toFixed(1)}`, () => {
      for (const radius of [40, 300])
        for (const [shear, wobble] of [
          [0, 0],
          [20, 0],
          [10, 0.2],
        ]) {
          const strip = stripSheet(LENGTH, WIDTH, 40, 8, shear, wobble);
          const held = heldShell(strip.sheet.triangles, strip.uv, onCylinder(strip, radius, turn), FOAM, THICKNESS);
          expect(Math.abs(held.bendingMj / wanted(radius) - 1)).toBeLessThan(0.01);
        }
    });

  it('arrives at the border as the moment D / R', () => {
    const strip = stripSheet(LENGTH, WIDTH, 40, 8);
    const { sheet, momentsN } = heldShell(strip.sheet.triangles, strip.uv, onCylinder(strip, 40, 0), FOAM, THICKNESS);
    const moment = plateStiffness(FOAM, THICKNESS) / 40;
    for (let e = 0; e < momentsN.length; e += 1) {
      const [a, b] = [sheet.edgeVertices[2 * e], sheet.edgeVertices[2 * e + 1]];
      if (sheet.edgeTriangles[2 * e + 1] >= 0) continue;
      const isEnd = strip.uv[2 * a] === strip.uv[2 * b];
      expect(Math.abs(momentsN[e] / (isEnd ? moment : FOAM.poisson * moment) - 1)).toBeLessThan(0.01);
    }
  });
});

describe('forces', () => {
  it('are the slope of the energy', () => {
    const strip = stripSheet(LENGTH, WIDTH, 5, 2, 5, 0.2);
    const positions = onCylinder(strip, 30, 0.5).map((x, i) => x + 0.8 * Math.sin(3 * i));
    const bending = new HingeBending(strip.sheet, FOAM, THICKNESS);
    const energyAt = (place: Float64Array): number => {
      bending.moveTo(place);
      bending.settle();
      return bending.measure() + addMembrane(strip.sheet, FOAM, THICKNESS, place, new Float64Array(place.length));
    };
    energyAt(positions);
    const gradient = new Float64Array(positions.length);
    bending.addGradient(gradient);
    addMembrane(strip.sheet, FOAM, THICKNESS, positions, gradient);
    const size = Math.hypot(...gradient);
    for (let i = 0; i < positions.length; i += 1) {
      const step = (by: number): number => energyAt(positions.map((x, j) => (i === j ? x + by : x)));
      expect(Math.abs((step(1e-4) - step(-1e-4)) / 2e-4 - gradient[i]) / size).toBeLessThan(1e-6);
    }
  });

  it('are noughts for a flat sheet moved and turned', () => {
    const strip = stripSheet(LENGTH, WIDTH, 10, 4, 10, 0.2);
    const flat = new Float64Array(strip.sheet.vertexCount * 3);
    for (let v = 0; v < strip.sheet.vertexCount; v += 1) {
      const [u, w] = [strip.uv[2 * v], strip.uv[2 * v + 1]];
      flat.set([5, 0.6 * u - 0.8 * w, 0.8 * u + 0.6 * w], 3 * v);
    }
    const held = heldShell(strip.sheet.triangles, strip.uv, flat, FOAM, THICKNESS);
    expect(Math.max(...held.forces.map(Math.abs))).toBeLessThan(1e-9);
    expect(held.bendingMj + held.membraneMj).toBeLessThan(1e-12);
  });
});
