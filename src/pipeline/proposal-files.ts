import type { Mesh } from '../mesh/mesh.ts';
import type { Patch } from '../model/patch.ts';
import type { PieceGround, ProposedPiece, Proposal } from './propose/proposal.ts';
import type { SeamGround } from './seam-ground.ts';

/** The seams of a proposal as a seam file, tied to the file they were found on. */
export function seamFileText({ sculpt: { model }, surface }: SeamGround, { seams }: Proposal): string {
  const { edges, paths } = surface.marksOf(seams.isSeam);
  const lines = (list: readonly unknown[]): string => list.map((one) => JSON.stringify(one)).join(',\n');
  const more = paths.length === 0 ? '' : `,"paths":[\n${lines(paths)}\n]`;
  return `{"version":1,"modelHash":"${model.hash}","edges":[\n${lines(edges)}\n]${more}}\n`;
}

/**
 * What is told of a proposal, with every triangle flat and in space: enough to recompute all of it from the model and the seam file. The
 * format is described by shared/proposal.schema.json.
 */
export interface ProposalReport {
  readonly schemaVersion: 1;
  readonly file: string;
  readonly modelHash: string;
  readonly scaleMmPerUnit: number;
  /** Of the foam; 0 where pieces are laid flat from the sculpt itself. */
  readonly thicknessMm: number;
  readonly limits: {
    readonly stretchPct: number;
    readonly squashPct: number;
    readonly sheetMm?: readonly [number, number];
    readonly leastWidthMm?: number;
  };
  readonly pieceCount: number;
  readonly seamLengthMm: number;
  readonly areaMm2: number;
  readonly lengthOverRootArea: number;
  readonly dartCount: number;
  readonly moves: number;
  readonly feasible: boolean;
  readonly reasons: readonly { readonly limit: string; readonly piece: number; readonly text: string }[];
  readonly pieces: readonly ReportedPiece[];
}

export interface ReportedPiece {
  /** Corner of the file for each corner of the piece: on a dart each side has its own. */
  readonly sourceVertices: readonly number[];
  /** Three corners of the piece per triangle, counter-clockwise from the face. */
  readonly triangles: readonly (readonly number[])[];
  /** Per corner where it lies flat, mm; null where the piece cannot be laid flat. */
  readonly uvMm: readonly (readonly number[])[] | null;
  /** Per corner where it is in space, mm. */
  readonly surfaceMm: readonly (readonly number[])[];
  /** The three corners of each triangle where it keeps its size, mm, where that is elsewhere: on the hinges of a piece with grooves. */
  readonly hingedMm?: readonly (readonly (readonly number[])[])[];
  readonly areaMm2: number;
  /** The larger of the 99th percentiles by area and by number of triangles, per cent; null where the piece cannot be laid flat. */
  readonly stretch99Pct: number | null;
  readonly squash99Pct: number | null;
  /** Pairs of triangles that lie on each other. */
  readonly overlaps: number;
  readonly isFeasible: boolean;
}

/** The report of a proposal. */
export function proposalReport(ground: SeamGround, proposal: Proposal): ProposalReport {
  const { sculpt, surface, thicknessMm, limits } = ground;
  const { model, mmPerUnit } = sculpt;
  const { stretchPct, squashPct, sheet, leastWidthMm } = limits;
  return {
    schemaVersion: 1,
    file: model.fileName,
    modelHash: model.hash,
    scaleMmPerUnit: mmPerUnit ?? 1,
    thicknessMm,
    limits: {
      stretchPct,
      squashPct,
      ...(sheet === undefined ? {} : { sheetMm: [sheet.widthMm, sheet.heightMm] }),
      ...(leastWidthMm === undefined ? {} : { leastWidthMm }),
    },
    pieceCount: proposal.pieces,
    seamLengthMm: proposal.lengthMm,
    areaMm2: proposal.perPiece.reduce((sum, { areaMm2 }) => sum + areaMm2, 0),
    lengthOverRootArea: proposal.lengthOverRootArea,
    dartCount: proposal.dartCount,
    moves: proposal.moves,
    feasible: proposal.feasible,
    reasons: proposal.reasons.map(({ limit, piece, text }) => ({ limit, piece: piece + 1, text })),
    pieces: proposal.perPiece.map((piece) => reportedPiece(surface.mesh, ground, piece)),
  };
}

function reportedPiece(mesh: Mesh, { positions, surfaceOf }: SeamGround, piece: ProposedPiece): ReportedPiece {
  const { patch, flat, areaMm2, stretch99, squash99, overlaps, isFeasible } = piece;
  return {
    sourceVertices: [...patch.meshVertices].map((v) => mesh.fileVertex[v]),
    triangles: groups(patch.triangles, 3),
    uvMm: flat === null ? null : groups(flat.uv, 2),
    surfaceMm: [...patch.meshVertices].map((v) => [...positions.subarray(3 * v, 3 * v + 3)]),
    ...hingedPart(patch, positions, surfaceOf?.(patch)),
    areaMm2,
    stretch99Pct: flat === null ? null : stretch99,
    squash99Pct: flat === null ? null : squash99,
    overlaps,
    isFeasible,
  };
}

function hingedPart(patch: Patch, positions: Float64Array, ground?: PieceGround): Pick<ReportedPiece, 'hingedMm'> {
  if (ground === undefined || (ground.positions === positions && ground.corners === undefined)) return {};
  const at = (corner: number): number[] => {
    const v = patch.meshVertices[patch.triangles[corner]];
    const [from, i] = ground.corners === undefined ? [ground.positions, v] : [ground.corners, corner];
    return [...from.subarray(3 * i, 3 * i + 3)];
  };
  return { hingedMm: Array.from(patch.meshTriangles, (_, t) => [at(3 * t), at(3 * t + 1), at(3 * t + 2)]) };
}

function groups(packed: Float64Array | Uint32Array, size: number): number[][] {
  return Array.from({ length: packed.length / size }, (_, i) => [...packed.subarray(size * i, size * i + size)]);
}
