import { clipPlaces, type Finding } from '../../base/finding.ts';
import type { PartId } from '../../base/ids.ts';
import { pointAt2 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { Patch } from '../../model/patch.ts';
import type { PieceTipHole, TipHole } from '../../model/tip-hole.ts';

/** A hole found again on a patch. */
export interface FoundTip {
  readonly hole: TipHole;
  /** Local vertex the dart ends at. */
  readonly vertex: number;
}

/** One list per patch: holes whose corner is the end of a dart in it. */
export function findTips(
  mesh: Mesh,
  patches: readonly Patch[],
  holes: readonly TipHole[],
): readonly (readonly FoundTip[])[] {
  if (holes.length === 0) return patches.map(() => []);
  const byVertex = new Map(holes.map((hole) => [mesh.vertexOfFile[hole.corner] ?? -1, hole]));
  return patches.map((patch) =>
    dartEnds(patch).flatMap((vertex) => {
      const hole = byVertex.get(patch.meshVertices[vertex]);
      return hole === undefined ? [] : [{ hole, vertex }];
    }),
  );
}

/** Local vertices at which a loop turns back: before and after them it runs along the same edge of the sculpt. */
function dartEnds({ loops, meshVertices }: Patch): number[] {
  return loops.flatMap((loop) =>
    [...loop].filter((_, i) => {
      const [before, after] = [loop[(i + loop.length - 1) % loop.length], loop[(i + 1) % loop.length]];
      return loop.length > 2 && meshVertices[before] === meshVertices[after];
    }),
  );
}

/** @param uv of every local vertex in the piece's frame, mm. */
export const pieceTips = (found: readonly FoundTip[], uv: Float64Array): readonly PieceTipHole[] =>
  found.map(({ hole, vertex }) => ({ ...hole, at: pointAt2(uv, vertex) }));

/** Holes whose dart is gone. */
export function lostTipFindings(
  part: PartId,
  mesh: Mesh,
  holes: readonly TipHole[],
  found: readonly (readonly FoundTip[])[],
): readonly Finding[] {
  const kept = new Set(found.flat().map(({ hole }) => hole));
  const lost = holes.filter((hole) => !kept.has(hole));
  if (lost.length === 0) return [];
  const vertices = lost.map(({ corner }) => mesh.vertexOfFile[corner] ?? -1).filter((v) => v >= 0);
  const what = lost.length === 1 ? 'A round hole is' : `${lost.length} round holes are`;
  return [
    {
      code: 'foam/tip-lost',
      severity: 'note',
      text: `${what} left out, because no dart ends there any more.`,
      value: lost.length,
      where: { part, vertices: clipPlaces(vertices) },
    },
  ];
}
