import { describe, expect, it } from 'vitest';
import { seamId } from '../../../src/base/ids.ts';
import type { FoamPiece, PieceEdge } from '../../../src/model/foam-piece.ts';
import { bevelStepStroke, bevelSteps, type BevelStep } from '../../../src/steps/foam/bevel-steps.ts';
import { onPaper } from '../../../src/steps/foam/template-lines.ts';
import { handMadeTemplate, pieceOf } from '../../support/hand-made-templates.ts';

/** A plate of 100 × 80 mm with points every 20 mm along its lower edge. */
const PLATE = [0, 0, 20, 0, 40, 0, 60, 0, 80, 0, 100, 0, 100, 80, 0, 80];

const lengths = (count: number): Float64Array => Float64Array.from({ length: count }, (_, i) => 20 * i);

/** The lower edge with its bevels; what is traced stands 1 mm out, the other side ever farther in. */
function edgeWith(bevelDeg: readonly number[], change: Partial<PieceEdge> = {}): PieceEdge {
  return {
    seam: seamId('s1'),
    letter: 'A',
    side: 0,
    ring: 0,
    from: 0,
    to: 5,
    reversed: false,
    stationMm: lengths(bevelDeg.length),
    bevelDeg: Float64Array.from(bevelDeg),
    faceOffsetMm: new Float64Array(bevelDeg.length).fill(1),
    backOffsetMm: Float64Array.from(bevelDeg, (_, i) => -i),
    allowanceMm: 0,
    ...change,
  };
}

function stepsOf(edge: PieceEdge, change: Partial<FoamPiece> = {}): readonly BevelStep[] {
  return bevelSteps(onPaper(pieceOf(handMadeTemplate('plate', PLATE), 1, change)), edge);
}

const leansOf = (steps: readonly BevelStep[]): readonly number[] => steps.map(({ leanDeg }) => +leanDeg.toFixed(9));
const placesOf = (steps: readonly BevelStep[]): readonly number[] => steps.map(({ at }) => +at.x.toFixed(9));

describe('where a bevel is told along its edge', () => {
  it('is 4 mm inside its ends, and wherever it has changed by another five degrees', () => {
    // 40 mm: 5.6 degrees more than at 4 mm; 60 mm: 4 more than that; 80 mm: 8 more.
    const steps = stepsOf(edgeWith([0, 2, 6, 10, 14, 15]));
    expect(placesOf(steps)).toEqual([4, 40, 80, 96]);
    expect(leansOf(steps)).toEqual([0.4, 6, 14, 14.8]);
  });

  it('lies on the line to cut and straight across on the other edge', () => {
    const [first, second, third, last] = stepsOf(edgeWith([0, 2, 6, 10, 14, 15]));
    for (const { at, outward } of [first, second, third, last]) {
      expect(at.y).toBeCloseTo(-1, 9);
      expect(outward.x).toBeCloseTo(0, 12);
      expect(outward.y).toBeCloseTo(-1, 12);
    }
    // A millimetre in for every 20 along.
    [first, second, third, last].forEach(({ at, end }) => {
      expect(end.x).toBeCloseTo(at.x, 9);
      expect(end.y).toBeCloseTo(at.x / 20, 9);
    });
  });

  it('is told falling as it is told rising', () => {
    expect(leansOf(stepsOf(edgeWith([0, -2, -6, -10, -14, -15])))).toEqual([-0.4, -6, -14, -14.8]);
  });

  it('is nowhere where it changes by less than five degrees, or on an edge too short for two places', () => {
    expect(stepsOf(edgeWith([20, 22, 24.9, 21, 20, 20]))).toEqual([]);
    expect(placesOf(stepsOf(edgeWith([20, 22, 25, 21, 20, 20])))).toEqual([4, 96]);
    // 23 mm are two ends of 4 mm and 15 between.
    const short = (mm: number): readonly BevelStep[] => {
      const ring = PLATE.map((value, i) => (i % 2 === 0 && value === 20 ? mm : value));
      const edge = edgeWith([0, 12], { to: 1 });
      return bevelSteps(onPaper(pieceOf(handMadeTemplate('plate', ring), 1)), edge);
    };
    expect(short(22.9)).toEqual([]);
    expect(placesOf(short(23))).toEqual([4, 19]);
  });

  it('stays 15 mm from the place told before and from the last', () => {
    const ring = [0, 0, 18.9, 0, 19, 0, 80, 0, 81.1, 0, 100, 0, 100, 80, 0, 80];
    const at = (bevels: readonly number[]): readonly number[] =>
      placesOf(bevelSteps(onPaper(pieceOf(handMadeTemplate('plate', ring), 1)), edgeWith(bevels)));
    // 18.9 is 14.9 from the first, 81.1 is 14.9 from the last.
    expect(at([0, 10, 10, 10, 20, 20])).toEqual([4, 19, 96]);
    expect(at([0, 0, 0, 10, 20, 20])).toEqual([4, 80, 96]);
    // 15 mm from either and five degrees more are enough.
    ring[8] = 81;
    expect(at([0, 0, 0, 0, 5, 5])).toEqual([4, 81, 96]);
    expect(at([0, 0, 0, 0, 4.9, 5])).toEqual([4, 96]);
  });

  it('begins on an edge without ends at its first point, and leaves room where it comes round again', () => {
    const whole = edgeWith([0, 2, 6, 10, 14, 15, 8, 2, 0], { from: 0, to: 0 });
    const places = stepsOf(whole).map(({ at }) => [+at.x.toFixed(6), +at.y.toFixed(6)]);
    expect(places[0]).toEqual([4, -1]);
    // Down the left side, 20 mm long on from the corner at 0, 80: no place within 15 mm of the beginning.
    expect(places.every(([x, y]) => !(x < 3 && y < 15))).toBe(true);
    // It has no place at its end, which is its beginning.
    expect(leansOf(stepsOf(whole))).toEqual([expect.closeTo(0.4, 1), 6, 14, 8, 2]);
  });

  it('is mirrored and leans the other way on a template that is traced on the back', () => {
    const edge = edgeWith([0, 2, 6, 10, 14, 15]);
    const steps = stepsOf(edge, { tracedSide: 'back' });
    // The line there slants by 1 in 20, so its ends are told a hair farther on.
    [-0.4, -6, -14, -14.8].forEach((lean, i) => expect(steps[i].leanDeg).toBeCloseTo(lean, 2));
    const [, second] = steps;
    expect(second.at.x).toBeCloseTo(-40, 9);
    expect(second.at.y).toBeCloseTo(2, 9);
    expect(second.end.x).toBeCloseTo(-40, 9);
    expect(second.end.y).toBeCloseTo(-1, 9);
    expect(second.outward.y).toBeLessThan(-0.99);
  });

  it('is drawn as a thin line from one edge to the other', () => {
    const step = { at: { x: 1, y: 2 }, end: { x: 3, y: 5 }, outward: { x: 0, y: -1 }, leanDeg: 12 };
    const stroke = bevelStepStroke(step);
    expect(stroke).toMatchObject({ role: 'bevel', closed: false });
    expect([...stroke.points]).toEqual([1, 2, 3, 5]);
  });
});
