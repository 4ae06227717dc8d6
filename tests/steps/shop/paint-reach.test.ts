import { describe, expect, it } from 'vitest';
import { BRUSH_MM, shutInPieces } from '../../../src/steps/shop/paint-reach.ts';
import { areasOfCorners, type PaintSkin } from '../../../src/steps/shop/paint-skin.ts';

/** Square plates of 200 mm in tiles of 10, each a piece: at a height, facing up (1) or down (-1). */
function plates(...list: readonly (readonly [number, 1 | -1])[]): PaintSkin {
  const corners: number[] = [];
  const pieceOf: number[] = [];
  list.forEach(([z, way], piece) => {
    for (let x = 0; x < 200; x += 10) {
      for (let y = 0; y < 200; y += 10) {
        const [a, b, c, d] = [
          [x, y, z],
          [x + 10, y, z],
          [x + 10, y + 10, z],
          [x, y + 10, z],
        ];
        const tiles = way === 1 ? [a, b, c, a, c, d] : [a, c, b, a, d, c];
        corners.push(...tiles.flat());
        pieceOf.push(piece, piece);
      }
    }
  });
  const packed = Float64Array.from(corners);
  return {
    corners: packed,
    areaMm2: areasOfCorners(packed),
    pieceOf: Int32Array.from(pieceOf),
    colourOf: new Int32Array(pieceOf.length),
    edges: [],
  };
}

describe('where no brush reaches', () => {
  it('is deep in a slit, from both its sides, but not on a plate beside it', () => {
    expect(shutInPieces(plates([0, 1], [30, -1], [600, 1]), 3)).toEqual([true, true, false]);
  });

  it('is nowhere where there is as much room as a brush is long', () => {
    expect(shutInPieces(plates([0, 1], [BRUSH_MM + 1, -1]), 2)).toEqual([false, false]);
    expect(shutInPieces(plates([0, 1]), 1)).toEqual([false]);
  });
});
