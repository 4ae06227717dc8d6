import type { FlatPiece } from '../../model/flat-piece.ts';
import type { Patch } from '../../model/patch.ts';
import { countFlips } from './flips.ts';

/**
 * Throws where a flat piece breaks its own promises: lengths that belong together, finite numbers, no triangle turned over, stretch and
 * squash in order, overlaps that name triangles of the patch. A piece that fails here is our mistake, never the maker's.
 * @throws Error that names the first broken promise.
 */
export function checkFlatPiece(patch: Patch, piece: FlatPiece): void {
  const triangles = patch.triangles.length / 3;
  must(
    piece.uv.length === 2 * patch.meshVertices.length,
    `${piece.uv.length} numbers for ${patch.meshVertices.length} vertices`,
  );
  checkEach(piece.uv, (value) => Number.isFinite(value), 'coordinate');
  for (const list of [piece.major, piece.minor, piece.majorAngle]) {
    must(list.length === triangles, `${list.length} figures for ${triangles} triangles`);
  }
  checkEach(piece.minor, (b, t) => b >= 0 && b <= piece.major[t] * (1 + 1e-12), 'smaller singular value');
  checkEach(piece.major, (a) => a > 0 && a < Infinity, 'larger singular value');
  checkEach(piece.majorAngle, (angle) => Math.abs(angle) <= Math.PI, 'direction');
  for (const { max, p99, mean } of [piece.stretchPct, piece.squashPct]) {
    must(p99 <= max && mean <= max, `spread ${max} ${p99} ${mean} is out of order`);
    must(Number.isFinite(max + p99 + mean), `spread ${max} ${p99} ${mean} is not finite`);
  }
  must(piece.energy >= 4 - 1e-9 && piece.energy < Infinity, `energy ${piece.energy}`);
  const flipped = countFlips(patch.triangles, piece.uv);
  must(flipped === 0, `${flipped} triangles lie on their face`);
  must(piece.flipped === flipped, `${piece.flipped} flips are told of, ${flipped} found`);
  for (const [s, t] of piece.overlaps) must(s >= 0 && s < t && t < triangles, `overlap of ${s} and ${t}`);
}

function checkEach(list: Float64Array, isRight: (value: number, index: number) => boolean, what: string): void {
  for (let i = 0; i < list.length; i += 1)
    if (!isRight(list[i], i)) throw new Error(`flat piece: ${what} ${i} is ${list[i]}`);
}

function must(isSo: boolean, otherwise: string): asserts isSo {
  if (!isSo) throw new Error(`flat piece: ${otherwise}`);
}
