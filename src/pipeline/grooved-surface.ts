import { runAtOnce } from '../base/stepwise.ts';
import { rad } from '../geom/vec.ts';
import { edgeFolds } from '../mesh/edge-fold.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { FoamRules, PieceSetting } from '../model/foam-settings.ts';
import type { Patch } from '../model/patch.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import { hingeShapeSteps } from '../steps/foam/hinge-shapes.ts';
import { hingeSurface } from '../steps/foam/hinge-surface.ts';
import { patchBend } from '../steps/foam/part-bends.ts';
import { hingedLengths } from './patch-wishes.ts';
import type { PieceGround } from './propose/proposal.ts';

/** What the surface of a piece goes by beside its triangles. */
export interface GroovedSurfaceWishes {
  /** Of the sheet pieces are cut from; its first vertices are those of the mesh. */
  readonly shell: ShellLayer;
  readonly rules: FoamRules;
  readonly pieceSettings: readonly PieceSetting[];
}

/**
 * Tells of any piece of a sculpt where it keeps its length once it is made: on the neutral surface of its sheet where it is rolled, on its hinges
 * where it is folded along grooves, panel by panel where its folds go both ways.
 * @returns a function of the patch, which knows a patch again.
 */
export function groovedSurfaces(
  mesh: Mesh,
  { shell, rules, pieceSettings }: GroovedSurfaceWishes,
): (patch: Patch) => PieceGround {
  const folds = edgeFolds(mesh);
  const { edgeOfHalfedge } = topologyOf(mesh);
  const limit = rad(rules.foldLimitDeg);
  const isBentByWish = pieceSettings.some(({ bendStyle }) => bendStyle !== undefined);
  const rolled = { positions: shell.neutralPositions };
  const known = new WeakMap<Patch, PieceGround>();
  const isFolded = ({ meshTriangles }: Patch): boolean =>
    meshTriangles.some((t) => [0, 1, 2].some((k) => Math.abs(folds[edgeOfHalfedge[3 * t + k]]) > limit));
  const groundOf = (patch: Patch): PieceGround => {
    if (!isFolded(patch) && !isBentByWish) return rolled;
    const bend = patchBend(mesh, patch, rules, pieceSettings);
    const hinged = hingeSurface(bend, shell, rules.hingeMm);
    const shapes = runAtOnce(hingeShapeSteps(bend, hinged, rules.hingeMm));
    const positions = hinged.neutralPositions;
    if (shapes === null) return { positions };
    return { positions, corners: shapes.corners, lengthsOf: (edges) => hingedLengths(edges, { bend, shapes }) };
  };
  return (patch) => {
    let ground = known.get(patch);
    if (ground === undefined) {
      ground = groundOf(patch);
      known.set(patch, ground);
    }
    return ground;
  };
}
