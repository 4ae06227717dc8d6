import { expect, it } from 'vitest';
import { arc, line } from '../../src/geom/outline.ts';
import { leaningEdge, squareEdge } from '../../src/model/plain-edge.ts';

it('an edge is as long as its parts, and as long on the finished shape unless that is said', () => {
  const chain = [line({ x: 0, y: 0 }, { x: 3, y: 4 }), arc({ x: 3, y: 5 }, 1, -Math.PI / 2, Math.PI)];
  const square = squareEdge('rim', chain, { seam: 'a' });
  expect(square).toEqual({
    name: 'rim',
    segments: chain,
    lengthMm: 5 + Math.PI,
    trueLengthMm: 5 + Math.PI,
    bevelDeg: { from: 0, middle: 0, to: 0 },
    seam: 'a',
  });
  expect(leaningEdge('rim', chain, [1, 2, 3], { trueLengthMm: 8 })).toMatchObject({
    trueLengthMm: 8,
    bevelDeg: { from: 1, middle: 2, to: 3 },
  });
});
