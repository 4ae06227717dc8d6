import { SEAM_PRICE } from '../../../src/base/tolerance.ts';
import { QUIET_WORK } from '../../../src/base/work.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import type { FlatPiece } from '../../../src/model/flat-piece.ts';
import type { Patch } from '../../../src/model/patch.ts';
import { checkFlatPiece } from '../../../src/steps/flatten/check-flat-piece.ts';
import type { FlattenOptions } from '../../../src/steps/flatten/flatten-options.ts';
import { flattenPatch } from '../../../src/steps/flatten/flatten-patch.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { onePatch, rimEdges } from './flatten-support.ts';
import type { Remade } from './remade-mesh.ts';
import { mirrorFlat, worstAfterFit } from './rigid-fit.ts';

/** What is asked of a piece besides lying flat, in its own numbers. */
export type Wish = (patch: Patch) => FlattenOptions;

export const plain: Wish = () => ({});
/** All borders held as seams. */
export const held: Wish = (patch) => ({ heldEdges: rimEdges(patch), seamPrice: SEAM_PRICE });
/** The worst spot evened out, and squash dearer than stretch. */
export const evened: Wish = () => ({ evenOut: true, squashPrice: 2 });

export const WISHES: readonly (readonly [string, Wish])[] = [
  ['plain', plain],
  ['seams held', held],
  ['evened out', evened],
];

export interface Laid {
  readonly patch: Patch;
  readonly piece: FlatPiece;
  /** Greatest distance of a corner from the middle, twice: mm. */
  readonly size: number;
}

/** A mesh of one patch laid flat; the piece keeps its promises. */
export async function lay(mesh: Mesh, wish: Wish): Promise<Laid> {
  const patch = onePatch(mesh);
  const piece = expectOk(await flattenPatch(patch, mesh.positions, wish(patch), QUIET_WORK));
  checkFlatPiece(patch, piece);
  let size = 0;
  for (let i = 0; i < piece.uv.length; i += 2) size = Math.max(size, 2 * Math.hypot(piece.uv[i], piece.uv[i + 1]));
  return { patch, piece, size };
}

/**
 * Greatest distance between like corners of two outlines after the best move and turn, as it would be on a piece 300 mm across, mm.
 * @param again   the first mesh made again otherwise, laid flat.
 * @param factor  how much larger it is.
 */
export function outlineGap(
  first: Laid,
  again: Laid,
  { numberNow }: Remade,
  { factor = 1, isMirrored = false }: { readonly factor?: number; readonly isMirrored?: boolean } = {},
): number {
  const localAgain = new Map(Array.from(again.patch.meshVertices, (v, local) => [v, local]));
  const border = first.patch.loops.flatMap((loop) => [...loop]);
  const like = border.map((v) => localAgain.get(numberNow[first.patch.meshVertices[v]]) ?? -1);
  const before = pointsOf(first.piece.uv, border);
  const after = pointsOf(again.piece.uv, like).map((x) => x / factor);
  return (worstAfterFit(before, isMirrored ? mirrorFlat(after) : after) * 300) / first.size;
}

const pointsOf = (uv: Float64Array, locals: readonly number[]): Float64Array =>
  Float64Array.from(locals.flatMap((v) => [uv[2 * v], uv[2 * v + 1]]));
