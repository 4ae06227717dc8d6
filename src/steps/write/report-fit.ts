import type { Mesh } from '../../mesh/mesh.ts';
import type { BodyFit } from '../../model/body-fit.ts';
import type { CoreFit } from '../../model/clearance.ts';
import type { Opening, TapeFit, TapeMeasure } from '../../model/girth.ts';
import type { Vec3 } from '../../geom/vec.ts';
import { triples } from './report-numbers.ts';

/**
 * How the foam fits body and core; corners and polygons in file numbers.
 * @param corners  how many of the mesh's vertices, the first ones, are of the file: those that paths have added are not told.
 */
export function fitReport(
  { tapes, cores, joints, puttingOn }: BodyFit,
  mesh: Mesh,
  corners: number,
): Record<string, unknown> {
  return {
    tapes: tapes.map(tapeReport),
    cores: cores.map((core) => coreReport(core, mesh)),
    joints: joints.map(({ joint, bent }) => ({ ...joint, bent: bent && { ...bent, point: pointOf(bent.point) } })),
    puttingOn:
      puttingOn === null
        ? null
        : {
            goesOn: puttingOn.goesOn,
            lacks: puttingOn.lacks,
            openings: puttingOn.openings.map((opening) => openingReport(opening, mesh, corners)),
            splitAt:
              puttingOn.splitAt === null
                ? null
                : {
                    seams: puttingOn.splitAt.letters,
                    lengthMm: puttingOn.splitAt.lengthMm,
                    kind: puttingOn.splitAt.kind,
                  },
          },
  };
}

const tapeReport = ({ tape, back, face, ...rest }: TapeFit): Record<string, unknown> => ({
  ...tape,
  back: back === null ? null : measureReport(back),
  face: face === null ? null : measureReport(face),
  ...rest,
});

const measureReport = ({ hull, bridges, ...figures }: TapeMeasure): Record<string, unknown> => ({
  ...figures,
  bridgesMm: bridges.map(({ mm }) => mm),
  hullMm: triples(hull),
});

const coreReport = (
  { core, tightest, atVertices: _, outline: __, ...figures }: CoreFit,
  mesh: Mesh,
): Record<string, unknown> => ({
  ...core,
  tightest:
    tightest === null
      ? null
      : {
          clearanceMm: tightest.clearanceMm,
          point: pointOf(tightest.point),
          face: mesh.faceOfTriangle[tightest.triangle],
        },
  ...figures,
});

const openingReport = (opening: Opening, mesh: Mesh, corners: number): Record<string, unknown> => ({
  vertices: Array.from(opening.vertices)
    .filter((v) => v < corners)
    .map((v) => mesh.fileVertex[v]),
  centre: pointOf(opening.centre),
  normal: pointOf(opening.normal),
  girthMm: opening.girthMm,
  breadthMm: opening.breadthMm,
  areaMm2: opening.areaMm2,
  acrossMm: opening.acrossMm,
  uprightMm: opening.uprightMm,
  use: opening.use,
  narrowest: opening.narrowest === null ? null : { ...opening.narrowest, point: pointOf(opening.narrowest.point) },
  slitMm: opening.slitMm,
  passes: opening.passes,
});

const pointOf = ({ x, y, z }: Vec3): readonly [number, number, number] => [x, y, z];
