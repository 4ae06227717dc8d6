import type { FoamPiece } from '../../model/foam-piece.ts';

/** A seam's letter beside the middle of its edge, in the frame of the template's drawing, mm. */
export interface EdgeLabel {
  readonly letter: string;
  readonly x: number;
  readonly y: number;
}

/**
 * Where the letters of a piece's seams stand; open edges have none.
 * @param inMm     how far inside the edge, mm.
 * @param reversed whether the drawing is the mirror image of the piece.
 */
export function edgeLabels(piece: FoamPiece, inMm: number, reversed: boolean): readonly EdgeLabel[] {
  const rings = [piece.neutralOutline, ...piece.neutralHoles];
  return piece.edges.flatMap(({ letter, ring, from, to }) => {
    if (letter === '') return [];
    const { x, y } = besideMiddle(runOf(rings[ring], from, to), inMm);
    return [{ letter, x: reversed ? -x : x, y }];
  });
}

/** Points of a run along a ring; from a point to itself it is the whole ring. */
function runOf(ring: ArrayLike<number>, from: number, to: number): readonly (readonly [number, number])[] {
  const n = ring.length / 2;
  const steps = (to - from + n) % n || n;
  return Array.from({ length: steps + 1 }, (_, k) => {
    const i = (from + k) % n;
    return [ring[2 * i], ring[2 * i + 1]] as const;
  });
}

/** Foam lies to the left of a ring's own way, whether it is the outer one or a hole. */
function besideMiddle(run: readonly (readonly [number, number])[], inMm: number): { x: number; y: number } {
  const lengths = run.slice(1).map(([x, y], i) => Math.hypot(x - run[i][0], y - run[i][1]));
  let rest = lengths.reduce((sum, length) => sum + length, 0) / 2;
  let i = 0;
  while (i < lengths.length - 1 && rest > lengths[i]) rest -= lengths[i++];
  const [[ax, ay], [bx, by]] = [run[i], run[i + 1]];
  const length = lengths[i] || 1;
  const [dx, dy] = [(bx - ax) / length, (by - ay) / length];
  return { x: ax + rest * dx - inMm * dy, y: ay + rest * dy + inMm * dx };
}
