import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { edgeLengths } from '../../src/mesh/edge-fold.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import type { SeamSet } from '../../src/model/seams.ts';
import { percentile99 } from '../../src/pipeline/propose/piece-limits.ts';
import type { ProposalLimits } from '../../src/pipeline/propose/proposal.ts';
import { cutPatches } from '../../src/steps/cut/cut-patches.ts';
import { flattenPatch } from '../../src/steps/flatten/flatten-patch.ts';
import { restShapes } from '../../src/steps/flatten/rest-shapes.ts';
import { checkProposal, type CheckedProposal } from '../reference/recompute/check-proposal.mjs';

export interface LaidModel {
  readonly mesh: Mesh;
  readonly fileName: string;
  readonly mmPerUnit: number;
  readonly limits: ProposalLimits;
}

/** Seams of any origin: cut along, laid flat as a proposal is, and recomputed from outside. */
export async function laidSeams(
  modelBytes: Uint8Array,
  { mesh, fileName, mmPerUnit, limits }: LaidModel,
  seams: SeamSet,
): Promise<{ readonly checked: CheckedProposal; readonly broken: number[] }> {
  const { positions, fileVertex } = mesh;
  const { patches } = cutPatches(mesh, seams, positions);
  const pieces = [];
  const isKept: boolean[] = [];
  for (const patch of patches) {
    const flat =
      patch.kind === 'closed' || patch.kind === 'handled'
        ? null
        : await flattenPatch(patch, positions, limits.laying, QUIET_WORK);
    const rest = restShapes(patch, positions);
    const value = flat?.ok === true ? flat.value : null;
    const stretch99Pct =
      value === null
        ? null
        : percentile99(
            rest,
            value.major.map((a) => 100 * (a - 1)),
          );
    const squash99Pct =
      value === null
        ? null
        : percentile99(
            rest,
            value.minor.map((b) => 100 * (1 - b)),
          );
    const overlaps = value?.overlapCount ?? value?.overlaps.length ?? 0;
    const isFeasible =
      stretch99Pct !== null &&
      squash99Pct !== null &&
      stretch99Pct <= limits.stretchPct &&
      squash99Pct <= limits.squashPct &&
      overlaps === 0;
    isKept.push(isFeasible);
    pieces.push({
      sourceVertices: [...patch.meshVertices].map((v) => fileVertex[v]),
      triangles: groups(patch.triangles, 3),
      uvMm: value === null ? null : groups(value.uv, 2),
      surfaceMm: [...patch.meshVertices].map((v) => [...positions.subarray(3 * v, 3 * v + 3)]),
      areaMm2: rest.totalArea,
      stretch99Pct,
      squash99Pct,
      overlaps,
      isFeasible,
    });
  }
  const lengths = edgeLengths(mesh);
  const seamLengthMm = lengths.reduce((sum, length, e) => sum + length * seams.isSeam[e], 0);
  const areaMm2 = pieces.reduce((sum, piece) => sum + piece.areaMm2, 0);
  const { stretchPct, squashPct } = limits;
  const report = {
    file: fileName,
    modelHash: await contentHash(modelBytes),
    scaleMmPerUnit: mmPerUnit,
    thicknessMm: 0,
    limits: { stretchPct, squashPct },
    pieceCount: pieces.length,
    seamLengthMm,
    areaMm2,
    lengthOverRootArea: seamLengthMm / Math.sqrt(areaMm2),
    feasible: isKept.every(Boolean),
    pieces,
  };
  const { edgeVertices } = topologyOf(mesh);
  const edges = [...seams.isSeam.keys()]
    .filter((e) => seams.isSeam[e] === 1)
    .map((e) => [fileVertex[edgeVertices[2 * e]], fileVertex[edgeVertices[2 * e + 1]]]);
  return {
    checked: checkProposal(modelBytes, { version: 1, edges }, report),
    broken: patches.flatMap((patch, i) => (isKept[i] ? [] : [...patch.meshTriangles])),
  };
}

function groups(packed: Float64Array | Uint32Array, size: number): number[][] {
  return Array.from({ length: packed.length / size }, (_, i) => [...packed.subarray(size * i, size * i + size)]);
}
