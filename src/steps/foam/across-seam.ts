import { dot3, pointAt3, sub3, unit3, length3, type Vec3 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import { panelsBeside, smoothJoins } from './chain-bevels.ts';
import { hingedEnds, type HingeShapes } from './hinge-shapes.ts';
import type { PatchBend } from './part-bends.ts';
import type { ChainPlace, MarkPlace } from './seam-walk.ts';

/** One side of a seam as its piece stands there. */
export interface StandingSide {
  readonly bend: Pick<PatchBend, 'surface' | 'panels'>;
  readonly hinges: HingeShapes | null;
  readonly shell: Pick<ShellLayer, 'neutralPositions'>;
}

/** Ends of one mesh edge of a seam on the surface a side keeps its length on, mm. */
type EdgeEnds = readonly [Vec3, Vec3];

/**
 * Which places of the two sides of a seam come together, as a rule from a place of side 0.
 *
 * The sides keep their length at depths of their own, where foams or ways of bending differ, and there the seam begins and ends elsewhere at a
 * corner. Plates that meet touch at places straight across from each other, square to the seam:
 *
 *     side 0    |───────x───────────|
 *     side 1        |───x───────|            not at an equal share of both
 *
 * At a vertex where a smooth surface merely turns, what lies deeper is shorter by itself, and the vertex of one depth belongs to that of the
 * other. Where one side has no place across from the other's, both go to the nearest that have.
 */
export function acrossSeam(
  mesh: Mesh,
  chain: SeamChain,
  sides: readonly StandingSide[],
): (place: ChainPlace) => MarkPlace {
  if (sides.length < 2) return ({ edge, share }) => ({ edge, shares: [share, share] });
  const ends = sides.map((side, i) => endsOf(chain, side, i === 0 ? 0 : 1));
  const beside = sides.map(({ bend: { surface, panels } }, i) =>
    panelsBeside({ side: chain.sides[i], which: i === 0 ? 0 : 1, surface, panels }),
  );
  const { before, after } = smoothJoins(mesh, chain, beside);
  return ({ edge, share }) => {
    const [own, mate] = ends.map((endsAt) => endsAt(edge));
    return { edge, shares: sharesAcross(own, mate, share, before(edge) >= 0, after(edge) >= 0) };
  };
}

function endsOf(
  chain: SeamChain,
  { bend, hinges, shell: { neutralPositions } }: StandingSide,
  which: 0 | 1,
): (edge: number) => EdgeEnds {
  if (hinges !== null) {
    const hinged = hingedEnds(bend, hinges, chain.sides[which], which);
    return (edge) => [pointAt3(hinged, 3 * edge), pointAt3(hinged, 3 * edge + 1)];
  }
  return (edge) => [
    pointAt3(neutralPositions, chain.vertices[edge]),
    pointAt3(neutralPositions, chain.vertices[edge + 1]),
  ];
}

/** Shares of two edges that lie across from each other, as near as may be to a share of the first. */
function sharesAcross(
  [a0, a1]: EdgeEnds,
  [b0, b1]: EdgeEnds,
  share: number,
  isSmoothBefore: boolean,
  isSmoothAfter: boolean,
): readonly [number, number] {
  const edge = sub3(a1, a0);
  if (!(length3(edge) > 0)) return [share, share];
  const along = unit3(edge);
  const shift0 = isSmoothBefore ? 0 : dot3(sub3(a0, b0), along);
  const shift1 = isSmoothAfter ? 0 : dot3(sub3(a1, b1), along);
  const mateMm = dot3(sub3(b1, b0), along);
  const ownMm = mateMm + shift1 - shift0;
  if ((shift0 === 0 && shift1 === 0) || !(mateMm > 0 && ownMm > 0)) return [share, share];
  const mate = within((shift0 + share * ownMm) / mateMm);
  return [within((mate * mateMm - shift0) / ownMm), mate];
}

const within = (share: number): number => Math.min(1, Math.max(0, share));
