import type { Proposal } from '../pipeline/propose/proposal.ts';
import type { ProposalAnswer } from './proposing-api.ts';

/** Space between pieces, as a share of the root of their area. */
const GAP_SHARE = 0.05;
/** Width of the picture over its height, about. */
const WIDE = 1.6;

interface Drawn {
  readonly outlines: readonly Float64Array[];
  readonly wide: number;
  readonly high: number;
}

/** Flat pieces in rows, the highest first, only to be looked at. Pieces that cannot be laid flat are left out. */
export function picturePieces({ perPiece }: Pick<Proposal, 'perPiece'>): ProposalAnswer['picture'] {
  const drawn = perPiece
    .flatMap(({ patch, flat }) => (flat === null ? [] : [drawnOf(patch.loops, flat.uv)]))
    .sort((a, b) => b.high - a.high);
  const area = drawn.reduce((sum, { wide, high }) => sum + wide * high, 0);
  const gap = GAP_SHARE * Math.sqrt(area);
  const width = Math.max(Math.sqrt(WIDE * area) + gap, ...drawn.map(({ wide }) => wide));
  const outlines: Float32Array[] = [];
  let [x, y, row, used] = [0, 0, 0, 0];
  for (const piece of drawn) {
    if (x > 0 && x + piece.wide > width) {
      y += row + gap;
      [x, row] = [0, 0];
    }
    for (const ring of piece.outlines)
      outlines.push(Float32Array.from(ring, (value, i) => value + (i % 2 === 0 ? x : y)));
    row = Math.max(row, piece.high);
    x += piece.wide;
    used = Math.max(used, x);
    x += gap;
  }
  return { outlines, size: [used, y + row] };
}

/** A piece with its lower left corner at 0, lying across. */
function drawnOf(loops: readonly Uint32Array[], uv: Float64Array): Drawn {
  const rings = loops.map((loop) =>
    Float64Array.from({ length: 2 * loop.length }, (_, i) => uv[2 * loop[i >> 1] + (i & 1)]),
  );
  let [left, right, low, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      [left, right] = [Math.min(left, ring[i]), Math.max(right, ring[i])];
      [low, top] = [Math.min(low, ring[i + 1]), Math.max(top, ring[i + 1])];
    }
  }
  const [wide, high] = [right - left, top - low];
  const isUpright = high > wide;
  const outlines = rings.map((ring) =>
    ring.map((_, i) => {
      const at = i - (i % 2);
      const [px, py] = [ring[at] - left, ring[at + 1] - low];
      if (isUpright) return i % 2 === 0 ? py : wide - px;
      return i % 2 === 0 ? px : py;
    }),
  );
  return isUpright ? { outlines, wide: high, high: wide } : { outlines, wide, high };
}
