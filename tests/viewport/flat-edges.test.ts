import { describe, expect, it } from 'vitest';
import { seamId } from '../../src/base/ids.ts';
import type { PieceEdge } from '../../src/model/foam-piece.ts';
import { flatEdges } from '../../src/viewport/flat-edges.ts';
import { squarePiece } from './piece-records.ts';

const SQUARE = [0, 0, 100, 0, 100, 100, 0, 100];

/** The run of one side of the square, with the same offsets at both its ends. */
function side(from: number, faceOffset: number, backOffset: number): PieceEdge {
  return {
    seam: seamId(`s${from}`),
    letter: 'A',
    side: 0,
    ring: 0,
    from,
    to: (from + 1) % 4,
    reversed: false,
    stationMm: Float64Array.of(0, 100),
    bevelDeg: Float64Array.of(0, 0),
    faceOffsetMm: Float64Array.of(faceOffset, faceOffset),
    backOffsetMm: Float64Array.of(backOffset, backOffset),
    allowanceMm: 0,
  };
}

describe('the edges of a flat piece', () => {
  it('stand off from both sides at a corner', () => {
    const piece = {
      ...squarePiece('p', 1, SQUARE, 10),
      edges: [side(0, 5, -5), side(1, 2, -2), side(2, 0, 0), side(3, 1, -1)],
    };
    const { face, back } = flatEdges(piece);
    // Corner 0 lies between side 3 (left, 1 mm out) and side 0 (below, 5 mm out).
    expect([...face]).toEqual([-1, -5, 2, -5, 2, 0, -1, 0].map((x): unknown => expect.closeTo(x, 5)));
    expect([...back]).toEqual([1, 5, -2, 5, -2, 0, 1, 0].map((x): unknown => expect.closeTo(x, 5)));
  });

  it('leave what is inside where it is', () => {
    const piece = { ...squarePiece('p', 1, SQUARE, 10, 'face', [...SQUARE, 50, 50]), edges: [side(0, 5, -5)] };
    expect([...flatEdges(piece).face.subarray(8)]).toEqual([0, 0]);
  });

  it('do not run away at a sharp corner', () => {
    const needle = [0, 0, 200, 0, 0, 8];
    const edges = [0, 1, 2].map((from) => side(from, 6, -6));
    const { face } = flatEdges({ ...squarePiece('p', 1, needle, 10), edges });
    expect(Math.hypot(face[2], face[3])).toBeLessThan(19);
  });
});
