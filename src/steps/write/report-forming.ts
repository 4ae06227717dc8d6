import { deg } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { cutRing } from '../../model/cut-larger.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { FoamSpot, LeastRatio } from '../../model/forming.ts';
import type { Ring } from '../../geom/ring.ts';
import { pairs } from './report-numbers.ts';

/** How a piece was laid flat and how near that is to the best there is. */
export function layingReport(piece: FoamPiece, flat: FlatPiece, mesh: Mesh): Record<string, unknown> {
  const { method, steps, converged } = flat.solve;
  return {
    converged,
    solve: { method, steps, converged },
    scaleRatio: scaleRatioOf(flat),
    ...(piece.leastRatio === undefined ? {} : { leastRatio: leastRatioReport(piece.leastRatio, mesh) }),
    ...(piece.spots === undefined ? {} : { spots: piece.spots.map((spot) => spotReport(spot, mesh)) }),
  };
}

/** How a piece lies on its sheet, and what is cut where its foam will shrink: the lines of the finished piece scaled about the origin. */
export function cuttingReport(piece: FoamPiece): Record<string, unknown> {
  const larger = (ring: Ring): number[][] => pairs(cutRing(piece, ring));
  return {
    ...(piece.grainRad === undefined ? {} : { grainDeg: deg(piece.grainRad) }),
    ...(piece.shrinkage === undefined
      ? {}
      : {
          shrinkage: piece.shrinkage,
          cutOutlineMm: larger(piece.outline),
          cutHolesMm: piece.holes.map(larger),
          cutOtherOutlineMm: larger(piece.otherOutline),
          cutOtherHolesMm: piece.otherHoles.map(larger),
        }),
  };
}

/** Greatest over least scale of the map from the flat piece to the prop; 1 for a piece that only bends. */
function scaleRatioOf({ major, minor }: FlatPiece): number {
  const greatest = major.reduce((most, a) => Math.max(most, a), 0);
  const least = minor.reduce((found, b) => Math.min(found, b), Infinity);
  return greatest / least;
}

const spotReport = (spot: FoamSpot, mesh: Mesh): Record<string, unknown> => ({
  kind: spot.kind,
  percent: spot.percent,
  areaMm2: spot.areaMm2,
  triangle: spot.triangle,
  face: mesh.faceOfTriangle[spot.meshTriangle],
  at: [spot.at.x, spot.at.y],
  point: [...spot.point],
  alongDeg: deg(spot.alongRad),
  way: spot.way,
  placeText: spot.placeText,
  wayText: spot.wayText,
});

const leastRatioReport = (least: LeastRatio, mesh: Mesh): Record<string, unknown> => ({
  ratio: least.ratio,
  kind: least.kind,
  vertex: least.centreVertex < 0 ? null : mesh.fileVertex[least.centreVertex],
  centre: least.centre,
  radiusMm: least.radiusMm,
  heldDeg: least.heldDeg,
  defectDeg: least.defectDeg,
  domeDeg: least.domeDeg,
  saddleDeg: least.saddleDeg,
});
