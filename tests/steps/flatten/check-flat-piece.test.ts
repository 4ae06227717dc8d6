import { describe, expect, it } from 'vitest';
import type { FlatPiece } from '../../../src/model/flat-piece.ts';
import { checkFlatPiece } from '../../../src/steps/flatten/check-flat-piece.ts';
import { flatten, onePatch, referencePatch } from './flatten-support.ts';

describe('checkFlatPiece', () => {
  it('passes a flattened patch and throws at each broken promise', async () => {
    const mesh = referencePatch('hemisphere-500');
    const patch = onePatch(mesh);
    const piece = await flatten(mesh);
    checkFlatPiece(patch, piece);
    const [a, b, c] = patch.triangles;
    const swapped = piece.uv.slice();
    for (const axis of [0, 1])
      [swapped[2 * a + axis], swapped[2 * b + axis]] = [piece.uv[2 * b + axis], piece.uv[2 * a + axis]];
    const broken: readonly (readonly [string, Partial<FlatPiece>])[] = [
      ['540 numbers for 271 vertices', { uv: piece.uv.slice(2) }],
      ['coordinate 7 is NaN', { uv: piece.uv.with(7, NaN) }],
      ['485 figures for 486 triangles', { minor: piece.minor.slice(1) }],
      ['smaller singular value 3 is 9', { minor: piece.minor.with(3, 9) }],
      ['larger singular value 2 is Infinity', { major: piece.major.with(2, Infinity) }],
      ['direction 1 is 4', { majorAngle: piece.majorAngle.with(1, 4) }],
      ['spread 1 2 0 is out of order', { stretchPct: { max: 1, p99: 2, mean: 0 } }],
      ['energy 3', { energy: 3 }],
      ['lie on their face', { uv: swapped }],
      ['1 flips are told of, 0 found', { flipped: 1 }],
      ['overlap of 2 and 2', { overlaps: [[2, 2]] }],
    ];
    for (const [text, change] of broken) expect(() => checkFlatPiece(patch, { ...piece, ...change })).toThrow(text);
    expect(c).toBeLessThan(271);
  });
});
