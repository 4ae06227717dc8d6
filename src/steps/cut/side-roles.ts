import { triangleArea } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { PlacedSetting, SeamChain } from '../../model/seams.ts';
import type { CutSurface } from './cut-patches.ts';

/** Which side of a seam does what: carries the allowance, lies on top of a lap, stands on the other at a rebate. */
export type SideRoles = Pick<SeamChain, 'lapSide' | 'topSide' | 'standSide'>;

/** Areas that differ by less than this share are alike: copies of one panel differ by rounding. */
const LIKE_AREA_SHARE = 1e-6;

/**
 * The roles the maker gave the sides of a seam, and where nothing was said those of a rule: a lap lies on top, and the smaller of two pieces
 * stands on the larger (of two alike the later one, so that round a corner no three pieces stand on each other in a ring and leave it open).
 * @param patches  of the left side and the right.
 */
export function sideRoles(
  mesh: Mesh,
  cut: Pick<CutSurface, 'patches' | 'patchOfTriangle'>,
  [left, right]: readonly [number, number],
  wish: PlacedSetting | undefined,
): SideRoles {
  const named = (face: number | undefined, placed?: number): 0 | 1 | null => {
    if (placed === undefined && face === undefined) return null;
    const on = placed === undefined ? patchesOf(mesh, cut, face) : new Set([cut.patchOfTriangle[placed]]);
    if (on.has(right) && !on.has(left)) return 1;
    return on.has(left) ? 0 : null;
  };
  const lapSide = named(wish?.lapFace, wish?.lapTriangle) ?? 0;
  switch (wish?.kind) {
    case 'lap':
      return { lapSide, topSide: wish.lapUnder === true ? otherSide(lapSide) : lapSide };
    case 'rebate':
      return { lapSide, standSide: named(wish.standFace, wish.standTriangle) ?? smallerSide(mesh, cut, left, right) };
    default:
      return { lapSide };
  }
}

/** Patches that a polygon lies in: more than one where a line across it parts them. */
function patchesOf(mesh: Mesh, { patchOfTriangle }: Pick<CutSurface, 'patchOfTriangle'>, face?: number): Set<number> {
  const found = new Set<number>();
  mesh.faceOfTriangle.forEach((own, t) => {
    if (own === face) found.add(patchOfTriangle[t]);
  });
  return found;
}

const otherSide = (side: 0 | 1): 0 | 1 => (side === 0 ? 1 : 0);

function smallerSide(mesh: Mesh, { patches }: Pick<CutSurface, 'patches'>, left: number, right: number): 0 | 1 {
  const area = (patch: number): number =>
    patches[patch].meshTriangles.reduce((sum, t) => sum + triangleArea(mesh.positions, mesh.triangles, t), 0);
  const [a, b] = [area(left), area(right)];
  if (Math.abs(a - b) <= LIKE_AREA_SHARE * Math.max(a, b)) return left > right ? 0 : 1;
  return a < b ? 0 : 1;
}
