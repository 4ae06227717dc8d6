import { ringOfPoints, type Ring } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { PieceEdge, TracedSide } from '../../model/foam-piece.ts';
import type { Patch } from '../../model/patch.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import { cutLines, type CutLines } from './cut-lines.ts';
import { pieceEdges, ringOffsets, type RingOffsets } from './edge-offsets.ts';
import type { EdgeRun } from './edge-runs.ts';
import { turnUpright } from './piece-frame.ts';
import type { SeamCut } from './seam-cuts.ts';

/** A piece's lines in its own frame, mm, seen from the face side. */
export interface PieceShape {
  /** Of the foam it is cut from, mm. */
  readonly thicknessMm: number;
  /** x y per local vertex of the patch. */
  readonly uv: Float64Array;
  readonly up: Vec2 | null;
  /** The patch's loops on the neutral surface: outer ring, then holes. */
  readonly neutral: readonly Ring[];
  readonly offsets: readonly RingOffsets[];
  readonly face: CutLines;
  readonly back: CutLines;
  readonly edges: readonly PieceEdge[];
}

/** Gives a flat piece its edges. */
export function shapePiece(
  patch: Patch,
  flat: FlatPiece,
  runs: readonly EdgeRun[],
  chains: readonly SeamChain[],
  cuts: readonly SeamCut[],
  layer: ShellLayer,
  upAxis: 'x' | 'y' | 'z',
): PieceShape {
  const { uv, up } = turnUpright(patch, flat.uv, layer.neutralPositions, upAxis);
  const neutral = patch.loops.map((loop) => ringOfPoints(uv, loop));
  const offsets = ringOffsets(patch.loops, runs, chains, cuts);
  const isFolded = flat.overlaps.length > 0;
  return {
    thicknessMm: layer.thicknessMm,
    uv,
    up,
    neutral,
    offsets,
    face: cutLines(
      neutral,
      offsets.map(({ face }) => face),
      isFolded,
    ),
    back: cutLines(
      neutral,
      offsets.map(({ back }) => back),
      isFolded,
    ),
    edges: pieceEdges(neutral, runs, chains, offsets),
  };
}

/** The lines of the side that is traced, and of the other. */
export const tracedLines = (shape: PieceShape, side: TracedSide): CutLines =>
  side === 'face' ? shape.face : shape.back;
export const otherLines = (shape: PieceShape, side: TracedSide): CutLines =>
  side === 'face' ? shape.back : shape.face;
