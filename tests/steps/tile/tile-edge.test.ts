import { expect, it } from 'vitest';
import type { PieceId } from '../../../src/base/ids.ts';
import { findPaper } from '../../../src/model/papers.ts';
import { oneTile } from '../../../src/steps/tile/lattice.ts';
import { paperFrame } from '../../../src/steps/tile/paper-frame.ts';
import { tileContent } from '../../../src/steps/tile/tile-page.ts';
import { expectOk } from '../../support/expect-ok.ts';

const FRAME = expectOk(paperFrame(expectOk(findPaper('A4')), 'portrait', 10, 10));

/** A square of 50 mm whose lower left corner lies there. */
const square = (x: number, y: number): Float64Array => Float64Array.of(x, y, x + 50, y, x + 50, y + 50, x, y + 50);

it('shows a piece whole that lies along the edge of a tile, and off it by rounding', () => {
  // So far a piece was laid under the edge of its page: a step of the nester's grid and the rounding of a sum.
  const under = -1.0000036354540498e-9;
  for (const [x, y] of [
    [20, under],
    [under, 20],
    [20, FRAME.tileHeightMm - 50 - under],
    [FRAME.tileWidthMm - 50 - under, 20],
  ]) {
    const drawing = { strokes: [{ role: 'cut' as const, points: square(x, y), closed: true }], words: [] };
    const placed = { piece: 'p' as PieceId, move: { x: 0, y: 0, turnRad: 0 }, drawing };
    const block = { lattice: oneTile(FRAME.tileWidthMm, FRAME.tileHeightMm), templates: [placed], isPrinted: [true] };
    const { strokes } = tileContent(block, 0, FRAME);
    expect(strokes).toHaveLength(1);
    expect(strokes[0]).toMatchObject({ closed: true });
    expect(strokes[0].points).toHaveLength(8);
  }
});
