import { describe, expect, it } from 'vitest';
import { rad } from '../../../src/geom/vec.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { FOAM_RULES } from '../../../src/model/foam-settings.ts';
import { grooveOf } from '../../../src/steps/foam/grooves.ts';
import { forAll } from '../../support/for-all.ts';
import { meshOf } from '../../support/meshes.ts';
import { foamOf, hingeMesh, partedAlong, type Foam } from './support.ts';

const about = (value: number, digits: number): number => expect.closeTo(value, digits) as number;

/** A strip of panels 100 mm long, of the given widths, each turned against the one before by a fold in degrees, convex > 0, outside up. */
function stripMesh(widths: readonly number[], foldsDeg: readonly number[]): Mesh {
  const points: [number, number, number][] = [[0, 0, 0]];
  let down = 0;
  widths.forEach((width, i) => {
    if (i > 0) down += rad(foldsDeg[i - 1]);
    const [x, , z] = points[points.length - 1];
    points.push([x + width * Math.cos(down), 0, z - width * Math.sin(down)]);
  });
  const count = points.length;
  const far = points.map(([x, , z]): [number, number, number] => [x, 100, z]);
  const faces = widths.map((_, i) => [i, i + 1, count + i + 1, count + i]);
  return meshOf([...points, ...far], faces);
}

/** The sculpt is the neutral surface, so panels are as wide flat as in the sculpt. */
const stripOf = (widths: readonly number[], foldsDeg: readonly number[], foam: Foam = {}, rules = FOAM_RULES) =>
  foamOf(partedAlong(stripMesh(widths, foldsDeg), [], { thicknessMm: 10, modelIs: 'middle', ...foam }), { rules });

const codesOf = (...given: Parameters<typeof stripOf>): readonly string[] =>
  stripOf(...given)
    .findings.map(({ code }) => code)
    .filter((code) => code.startsWith('foam/groove'));

describe('grooves', () => {
  it('of a right angle in 10 mm with a hinge of 1.5 are 17 mm wide and 8.5 deep, from the inside of the bend', () => {
    const { pieces } = stripOf([60, 60], [90]);
    expect(pieces[0].bendStyle).toBe('grooved');
    expect(pieces[0].folds).toHaveLength(1);
    expect(pieces[0].folds[0].groove).toEqual({
      includedDeg: about(90, 9),
      widthMm: about(17, 9),
      depthMm: 8.5,
      hingeMm: 1.5,
      side: 'back',
    });
  });

  it('of a concave fold are cut from the face', () => {
    // 2 * 4.5 * tan 22.5 = 9 * 0.41421356
    expect(stripOf([60, 60], [-45], { thicknessMm: 6 }).pieces[0].folds[0].groove).toEqual({
      includedDeg: about(45, 9),
      widthMm: about(3.727922, 6),
      depthMm: 4.5,
      hingeMm: 1.5,
      side: 'face',
    });
  });

  it('close when the fold is bent: the edges of the mouth come to one point', async () => {
    await forAll(
      (rand) => ({ fold: 5 + 170 * rand(), t: 2 + 13 * rand(), hinge: 0.5 + rand() }),
      ({ fold, t, hinge }) => {
        const groove = grooveOf(fold, t, hinge);
        // The point of the groove is the origin, its mouth at the depth below; each side turns by half the fold towards the other.
        const turned = [1, -1].map((side) => {
          const [x, y] = [(side * (groove?.widthMm ?? NaN)) / 2, -(groove?.depthMm ?? NaN)];
          const angle = (-side * rad(fold)) / 2;
          return [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];
        });
        expect(Math.hypot(turned[0][0] - turned[1][0], turned[0][1] - turned[1][1])).toBeLessThan(1e-9);
      },
    );
  });

  it('are not cut in foam no thicker than a hinge, nor in a rolled piece', () => {
    expect(stripOf([60, 60], [90], { thicknessMm: 1.5 }).pieces[0].folds[0].groove).toBeUndefined();
    const { pieces } = foamOf(partedAlong(hingeMesh(rad(90)), []), {
      pieceSettings: [{ face: 0, bendStyle: 'rolled' }],
    });
    expect(pieces[0].folds).toHaveLength(1);
    expect(pieces[0].folds[0].groove).toBeUndefined();
  });
});

describe('grooves that do not fit', () => {
  it('are none where panels are wide', () => {
    expect(codesOf([60, 40, 60], [90, 90])).toEqual([]);
  });

  it('run into each other from one side where the panel between is narrower than half of both', () => {
    // Two grooves of 17 mm: half of each is 17 together.
    expect(codesOf([60, 16.9, 60], [90, 90])).toEqual(['foam/groove-meet']);
    expect(codesOf([60, 17.1, 60], [90, 90])).toEqual([]);
    const [finding] = stripOf([60, 16.9, 60], [90, 90]).findings.filter(({ code }) => code === 'foam/groove-meet');
    expect(finding).toMatchObject({ value: about(16.9, 9), limit: about(17, 9), unit: 'mm' });
    expect(finding.text).toContain(
      'has 2 folds whose grooves run into the next one: they need 17.0 mm from fold to fold and have 16.9 mm',
    );
    // Corners of the two folds: the strip's ends are 0 1 2 3 and 4 5 6 7.
    expect([...(finding.where.vertices ?? [])].sort()).toEqual([1, 2, 5, 6]);
    expect(finding.where.point?.[1]).toBeCloseTo(50, 9);
  });

  it('run into each other from opposite sides where they pass each other nearer than one reaches', () => {
    // Points 1.5 under one side each, so they pass by 10 - 3 = 7 mm, and a wall of 45 degrees reaches as far aside.
    expect(codesOf([60, 6.9, 60], [90, -90])).toEqual(['foam/groove-meet']);
    expect(codesOf([60, 7.1, 60], [90, -90])).toEqual([]);
  });

  it('are wider than the panel where half of one passes the edge', () => {
    expect(codesOf([60, 8.4], [90])).toEqual(['foam/groove-wide']);
    expect(codesOf([60, 8.6], [90])).toEqual([]);
    const [finding] = stripOf([60, 8.4], [90]).findings.filter(({ code }) => code === 'foam/groove-wide');
    expect(finding).toMatchObject({ value: about(8.4, 9), limit: about(8.5, 9) });
  });

  it('are too deep where the hinge left would tear', () => {
    expect(codesOf([60, 60], [60], {}, { ...FOAM_RULES, hingeMm: 0.8 })).toEqual(['foam/groove-deep']);
    expect(codesOf([60, 60], [60], {}, { ...FOAM_RULES, hingeMm: 1 })).toEqual([]);
  });
});
