import { describe, expect, it } from 'vitest';
import { cutEdges, offsetAt } from '../../../src/steps/dryfit/cut-edge.ts';
import { squareSide } from './square-side.ts';

describe('where the finished cut runs beside the neutral line', () => {
  it('reaches past both ends where it stands outside, to the corners', () => {
    const [cut] = cutEdges(squareSide({ faceOutMm: 3 }), 'face');
    expect(cut).toEqual({ f0: -0.03, o0: 3, f1: 1.03, o1: 3 });
  });

  it('ends before both ends where it stands inside', () => {
    const [cut] = cutEdges(squareSide({ backOutMm: -5 }), 'back');
    expect(cut).toEqual({ f0: 0.05, o0: -5, f1: 0.95, o1: -5 });
  });

  it('is looked for on the skin that is asked for, whichever is traced', () => {
    const side = squareSide({ faceOutMm: 3, backOutMm: -5 });
    const turned = { ...side.piece, tracedSide: 'back', outline: side.piece.otherOutline } as const;
    const other = { ...side, piece: { ...turned, otherOutline: side.piece.outline } };
    expect(cutEdges(other, 'face')).toEqual(cutEdges(side, 'face'));
    expect(cutEdges(other, 'back')).toEqual(cutEdges(side, 'back'));
  });

  it('is seen in the direction of the seam', () => {
    const side = squareSide({ faceOutMm: 3 });
    const { outline } = side.piece;
    // The far end of the bottom edge is cut 1 mm short.
    const slanted = Float64Array.from(outline, (x, i) => (i === 3 ? x + 1 : x));
    const piece = { ...side.piece, outline: slanted };
    const [forth] = cutEdges({ ...side, piece }, 'face');
    const [back] = cutEdges({ ...side, piece, edge: { ...side.edge, side: 1, reversed: true } }, 'face');
    expect(offsetAt(forth, 0)).toBeCloseTo(3 - 3 / 106, 12);
    expect(offsetAt(forth, 1)).toBeCloseTo(2 + 3 / 106, 12);
    expect(offsetAt(back, 1)).toBeCloseTo(offsetAt(forth, 0), 12);
    expect(offsetAt(back, 0)).toBeCloseTo(offsetAt(forth, 1), 12);
  });

  it('is one point where the cut beside the edge was cleaned away: the nearest that is left', () => {
    const side = squareSide({});
    // What is left is a wedge that comes nearest in its middle.
    const piece = { ...side.piece, outline: Float64Array.from([50, 4, 100, 100, 0, 100]) };
    const [cut] = cutEdges({ ...side, piece }, 'face');
    expect(cut).toEqual({ f0: 0.5, o0: -4, f1: 0.5, o1: -4 });
  });

  it('is not taken from another edge that runs the same way, farther in than any blade leans', () => {
    const side = squareSide({});
    // Nothing is left below a line 19 mm in, as where a slit closes under its bevels: that line belongs to another edge.
    const piece = { ...side.piece, outline: Float64Array.from([10, 19, 90, 19, 100, 100, 0, 100]) };
    const [cut] = cutEdges({ ...side, piece }, 'face');
    expect(cut).toEqual({ f0: 0.5, o0: -19, f1: 0.5, o1: -19 });
    // Where the edge is meant to stand so far in, it is the edge's own.
    const edge = { ...side.edge, faceOffsetMm: Float64Array.of(-19, -19) };
    expect(cutEdges({ ...side, piece, edge }, 'face')[0]).toEqual({ f0: 0.1, o0: -19, f1: 0.9, o1: -19 });
  });

  it('has no more length than its middle where the nearest that is left lies beyond its end', () => {
    const side = squareSide({});
    const piece = { ...side.piece, outline: Float64Array.from([160, 3, 300, 100, 200, 100]) };
    expect(cutEdges({ ...side, piece }, 'face')[0]).toEqual({ f0: 0.5, o0: -3, f1: 0.5, o1: -3 });
  });
});
