import { ringOfPoints, type Ring } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { PieceEdge, TracedSide } from '../../model/foam-piece.ts';
import type { Patch } from '../../model/patch.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import { cornerPoints, type CornerPoints } from './corner-points.ts';
import { cutLines, type CutLines } from './cut-lines.ts';
import { pieceEdges, ringOffsets, type RingOffsets } from './edge-offsets.ts';
import type { EdgeRun } from './edge-runs.ts';
import type { PanelCorner } from './panel-corners.ts';
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
  corners: readonly PanelCorner[] = [],
): PieceShape {
  const { uv, up } = turnUpright(patch, flat.uv, layer.neutralPositions, upAxis);
  const neutral = patch.loops.map((loop) => ringOfPoints(uv, loop));
  const offsets = ringOffsets(patch.loops, runs, chains, cuts);
  const isFolded = flat.overlaps.length > 0;
  const isPlain = plainCorners(patch, runs, cuts);
  const { backMm, thicknessMm, neutralFraction } = layer;
  const cornersAt = (height: number): readonly CornerPoints[] =>
    cornerPoints(neutral, corners, backMm + height, backMm + neutralFraction * thicknessMm, isPlain);
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
      cornersAt(thicknessMm),
    ),
    back: cutLines(
      neutral,
      offsets.map(({ back }) => back),
      isFolded,
      cornersAt(0),
    ),
    edges: pieceEdges(neutral, runs, chains, offsets),
  };
}

/** Tells of a place on a loop whether the edges on both its sides are cut on the planes that halve their folds. */
function plainCorners(
  patch: Patch,
  runs: readonly EdgeRun[],
  cuts: readonly SeamCut[],
): (loop: number, at: number) => boolean {
  const isPlain = patch.loops.map((loop) => new Uint8Array(loop.length));
  for (const { ring, from, count, chain } of runs) {
    if (cuts[chain].joining !== 'halved') continue;
    for (let j = 0; j < count; j += 1) isPlain[ring][(from + j) % isPlain[ring].length] = 1;
  }
  return (loop, at) => {
    const edges = isPlain[loop];
    return edges[at] === 1 && edges[(at + edges.length - 1) % edges.length] === 1;
  };
}

/** The lines of the side that is traced, and of the other. */
export const tracedLines = (shape: PieceShape, side: TracedSide): CutLines =>
  side === 'face' ? shape.face : shape.back;
export const otherLines = (shape: PieceShape, side: TracedSide): CutLines =>
  side === 'face' ? shape.back : shape.face;
