import { describe, expect, it } from 'vitest';
import { rad, vec2, type Vec2 } from '../../../src/geom/vec.ts';
import { cutEdges } from '../../../src/steps/dryfit/cut-edge.ts';
import { endedAtFolds } from '../../../src/steps/dryfit/groove-walls.ts';
import type { FitSide } from '../../../src/steps/dryfit/fit-side.ts';
import { squareSide } from './square-side.ts';

const HINGE_MM = 2;
const THICK_MM = 10;

/** The bottom edge of the square with 5 mm off its back, and a groove for a fold that leaves its left corner. */
function grooved(to: Vec2, foldDeg: number): FitSide {
  const side = squareSide({ backOutMm: -5 });
  const isConvex = foldDeg > 0;
  const groove = {
    includedDeg: Math.abs(foldDeg),
    widthMm: 2 * (THICK_MM - HINGE_MM) * Math.tan(rad(Math.abs(foldDeg)) / 2),
    depthMm: THICK_MM - HINGE_MM,
    hingeMm: HINGE_MM,
    side: isConvex ? ('back' as const) : ('face' as const),
  };
  const folds = [{ from: vec2(0, 0), to, angleDeg: foldDeg, groove }];
  return { ...side, neutralFraction: 0.9, piece: { ...side.piece, bendStyle: 'grooved', folds } };
}

// The plane that halves a fold stands z tan(fold / 2) beyond the fold line at height z over the hinge.
const TAN = Math.tan(rad(30));

describe('a cut that ends at a fold', () => {
  it('ends with its panel: at the wall of the groove, and at the skin that is stretched round', () => {
    const side = grooved(vec2(0, 100), 60);
    const [back] = cutEdges(side, 'back');
    expect(back.f0 * 100).toBeCloseTo(9 * TAN, 9);
    expect(back).toMatchObject({ o0: -5, f1: 0.95, o1: -5 });
    const [face] = cutEdges(side, 'face');
    expect(face.f0 * 100).toBeCloseTo(-1 * TAN, 9);
  });

  it('counts a concave fold from the hinge at its back', () => {
    const side = grooved(vec2(0, 100), -60);
    // 1 mm over the hinge's middle lies the back, 9 mm over it the face, which the groove takes away.
    expect(cutEdges(side, 'back')[0].f0 * 100).toBeCloseTo(-1 * TAN, 9);
    expect(cutEdges(side, 'face')[0].f0 * 100).toBeCloseTo(9 * TAN, 9);
  });

  it('follows a fold that leaves the edge aslant', () => {
    const [back] = cutEdges(grooved(vec2(100, 100), 60), 'back');
    expect(back.f0 * 100).toBeCloseTo(5 + 9 * TAN * Math.SQRT2, 9);
  });

  it('ends at the first fold inward of the edge', () => {
    const side = grooved(vec2(100, 100), 60);
    const [fold] = side.piece.folds;
    const folds = [{ ...fold, to: vec2(0, 100), angleDeg: 90 }, fold, { ...fold, to: vec2(-100, 100), angleDeg: 20 }];
    expect(cutEdges({ ...side, piece: { ...side.piece, folds } }, 'back')).toEqual(cutEdges(side, 'back'));
  });

  it('is seen alike from the other end of the seam', () => {
    const side = grooved(vec2(0, 100), 60);
    const [back] = cutEdges({ ...side, edge: { ...side.edge, side: 1, reversed: true } }, 'back');
    expect(back.f1 * 100).toBeCloseTo(100 - 9 * TAN, 9);
  });

  it('leaves a cut of one point as it is, where all beside the edge was cleaned away', () => {
    const side = grooved(vec2(0, 100), 60);
    const point = { f0: 0.5, o0: -4, f1: 0.5, o1: -4 };
    expect(endedAtFolds(side, 'back', 0, point)).toEqual(point);
  });

  it('leaves a rolled piece as it is', () => {
    const side = grooved(vec2(0, 100), 60);
    const rolled = { ...side, piece: { ...side.piece, bendStyle: 'rolled' as const } };
    expect(cutEdges(rolled, 'back')).toEqual([{ f0: 0.05, o0: -5, f1: 0.95, o1: -5 }]);
  });
});
