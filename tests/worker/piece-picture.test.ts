import { describe, expect, it } from 'vitest';
import type { Proposal } from '../../src/pipeline/propose/proposal.ts';
import { picturePieces } from '../../src/worker/piece-picture.ts';
import { forAll } from '../support/for-all.ts';

/** Rectangles as flat pieces. */
function rectangles(sizes: readonly (readonly [number, number])[]): Pick<Proposal, 'perPiece'> {
  const perPiece = sizes.map(([w, h]) => ({
    patch: { loops: [Uint32Array.of(0, 1, 2, 3)] },
    flat: { uv: Float64Array.of(-3, 5, w - 3, 5, w - 3, h + 5, -3, h + 5) },
  }));
  return { perPiece } as unknown as Pick<Proposal, 'perPiece'>;
}

function boxOf(ring: Float32Array): { left: number; right: number; low: number; top: number } {
  const [xs, ys] = [0, 1].map((k) => [...ring].filter((_, i) => i % 2 === k));
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), top: Math.max(...ys) };
}

describe('pieces in a small picture', () => {
  it('lie across, beside each other and inside it, in their true size', async () => {
    await forAll(
      (rand) => Array.from({ length: 1 + Math.floor(rand() * 12) }, () => [1 + 99 * rand(), 1 + 99 * rand()] as const),
      (sizes) => {
        const { outlines, size } = picturePieces(rectangles(sizes));
        const boxes = outlines.map(boxOf);
        expect(boxes).toHaveLength(sizes.length);
        boxes.forEach((box, i) => {
          expect(box.right - box.left).toBeGreaterThanOrEqual(box.top - box.low - 1e-3);
          expect(Math.min(box.left, box.low)).toBeGreaterThanOrEqual(-1e-3);
          expect(box.right).toBeLessThanOrEqual(size[0] + 1e-3);
          expect(box.top).toBeLessThanOrEqual(size[1] + 1e-3);
          for (const other of boxes.slice(i + 1)) {
            const isApart =
              box.right <= other.left || other.right <= box.left || box.top <= other.low || other.top <= box.low;
            expect(isApart).toBe(true);
          }
        });
        const area = boxes.reduce((sum, b) => sum + (b.right - b.left) * (b.top - b.low), 0);
        expect(area / sizes.reduce((sum, [w, h]) => sum + w * h, 0)).toBeCloseTo(1, 4);
      },
    );
  });

  it('leave out what cannot be laid flat', () => {
    const flatless = { perPiece: [{ patch: { loops: [] }, flat: null }] } as unknown as Pick<Proposal, 'perPiece'>;
    expect(picturePieces(flatless).outlines).toEqual([]);
  });
});
