import { describe, expect, it } from 'vitest';
import { movePoint } from '../../../src/geom/turn-and-move.ts';
import type { Patch } from '../../../src/model/patch.ts';
import type { Twin } from '../../../src/steps/foam/mirror-twins.ts';
import type { PieceShape } from '../../../src/steps/foam/piece-shape.ts';
import { twinMoves } from '../../../src/steps/foam/twin-moves.ts';

const patchOf = (loop: readonly number[], meshVertices: readonly number[]): Patch =>
  ({ loops: [Uint32Array.from(loop)], meshVertices: Uint32Array.from(meshVertices) }) as unknown as Patch;
const shapeOf = (...uv: readonly number[]): PieceShape => ({ uv: Float64Array.from(uv) }) as unknown as PieceShape;
const twinOf = (patch: number, ...pairs: readonly (readonly [number, number])[]): Twin => ({
  patch,
  partners: new Map(pairs),
});

/** A right triangle, and its mirror image turned by 90 degrees and moved by 50, 7. */
const OWN = shapeOf(0, 0, 30, 0, 30, 40);
// Mirrored: 0, 0; -30, 0; -30, 40. Turned left: 0, 0; 0, -30; -40, -30.
const TWIN = shapeOf(50, 7, 50, -23, 10, -23);
const PATCHES = [patchOf([0, 1, 2], [5, 6, 7]), patchOf([0, 1, 2], [15, 16, 17])];
const PARTNERS: readonly (readonly [number, number])[] = [
  [5, 15],
  [6, 16],
  [7, 17],
];

describe('how a piece comes to lie on its twin', () => {
  it('is turned round, then turned and moved until corners lie on their partners', () => {
    const [move, none] = twinMoves(PATCHES, [OWN, TWIN], [twinOf(1, ...PARTNERS), null]);
    expect(none).toBeNull();
    expect(move?.turnRad).toBeCloseTo(Math.PI / 2, 12);
    expect(move?.x).toBeCloseTo(50, 9);
    expect(move?.y).toBeCloseTo(7, 9);
    if (!move) return;
    for (let i = 0; i < 3; i += 1) {
      const { x, y } = movePoint({ x: -OWN.uv[2 * i], y: OWN.uv[2 * i + 1] }, move);
      expect(x).toBeCloseTo(TWIN.uv[2 * i], 9);
      expect(y).toBeCloseTo(TWIN.uv[2 * i + 1], 9);
    }
  });

  it('lies as near as can be where both were laid flat a little unlike', () => {
    // A segment of 30 mm on one of 32: the middles meet.
    const [move] = twinMoves(
      PATCHES,
      [shapeOf(0, 0, 30, 0, 0, 0), shapeOf(4, 5, -28, 5, 0, 0)],
      [twinOf(1, [5, 15], [6, 16]), null],
    );
    expect(move?.turnRad).toBeCloseTo(0, 12);
    expect(move?.x).toBeCloseTo(3, 9);
    expect(move?.y).toBeCloseTo(5, 9);
  });

  it('is not known with fewer than two corners that stand for one place each', () => {
    expect(twinMoves(PATCHES, [OWN, TWIN], [twinOf(1, [5, 15]), null])).toEqual([null, null]);
    // Along a slit vertex 6 stands in the ring twice.
    const slit = [patchOf([0, 1, 2], [5, 6, 6]), PATCHES[1]];
    expect(twinMoves(slit, [OWN, TWIN], [twinOf(1, ...PARTNERS), null])).toEqual([null, null]);
    expect(twinMoves(PATCHES, [null, TWIN], [twinOf(1, ...PARTNERS), null])).toEqual([null, null]);
    expect(twinMoves(PATCHES, [OWN, null], [twinOf(1, ...PARTNERS), null])).toEqual([null, null]);
  });
});
