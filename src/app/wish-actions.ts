import type { SculptView } from '../model/bench-view.ts';
import type { EdgeWish, GrainWish } from '../model/flatten-settings.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import { setEdgeWish, type Command } from '../project/commands.ts';
import { setGrain } from '../project/piece-commands.ts';
import { edgesAndPaths } from '../project/path-names.ts';
import type { SculptPart } from '../project/project.ts';
import { chainIndex, pieceIndex, type Bench } from './bench-state.ts';
import { edgesOfChain } from './edge-facts.ts';
import { filePairs } from './edge-index.ts';
import { facesOf } from './panels.ts';
import type { Workbench } from './workbench.ts';

/** Edges of the sculpt that a seam or an open edge runs along, in file numbers. */
export function pairsOfSeam(bench: Bench, seam: string): [number, number][] {
  const { sculpt } = bench;
  return sculpt === null ? [] : filePairs(sculpt, edgesOfChain(bench, chainIndex(bench, seam)));
}

/** What is wished for a seam or an open edge. */
export function edgeWishOf(bench: Bench, part: SculptPart | null, seam: string): Omit<EdgeWish, 'edge'> {
  const wishes = part?.edgeWishes ?? [];
  const drawn = part?.seams.paths ?? [];
  if (wishes.length + drawn.length === 0) return {};
  const pairs = pairsOfSeam(bench, seam);
  const own = new Set(pairs.flatMap(([a, b]) => [`${a} ${b}`, `${b} ${a}`]));
  const { paths } = edgesAndPaths(pairs);
  const { holdLength = false, straight = false } = Object.assign(
    {},
    ...wishes.filter(({ edge }) => own.has(edge.join(' '))),
    ...drawn.filter((_, i) => paths.has(i)),
  ) as Partial<EdgeWish>;
  return { holdLength, straight };
}

export function setEdgeWishOf(bench: Workbench, seam: string, wish: Omit<EdgeWish, 'edge'>): void {
  bench.run(setEdgeWish(pairsOfSeam(bench.bench, seam), wish));
}

/**
 * Polygons of the file in a piece, by which it is named. Those that a line across them parts are left out where it has others: they would name
 * its neighbour as well.
 */
export const facesOfPiece = (bench: Bench, piece: FoamPiece): number[] => facesOfPatch(bench, piece.patch);

/** The same of a patch, which lies in a piece or cannot yet. */
export function facesOfPatch({ sculpt, pieces }: Bench, patch: number): number[] {
  if (sculpt === null) return [];
  const faces = facesOf(sculpt, pieces?.patches[patch]?.meshTriangles ?? []);
  return sculpt.edgeNames === undefined ? faces : wholeOnes(sculpt, pieces?.patchOfTriangle ?? [], faces);
}

function wholeOnes(sculpt: SculptView, patchOfTriangle: ArrayLike<number>, faces: number[]): number[] {
  const patchOfFace = new Map<number, number>();
  const parted = new Set<number>();
  sculpt.faceOfTriangle.forEach((face, t) => {
    const patch = patchOfFace.get(face);
    if (patch === undefined) patchOfFace.set(face, patchOfTriangle[t]);
    else if (patch !== patchOfTriangle[t]) parted.add(face);
  });
  const whole = faces.filter((face) => !parted.has(face));
  return whole.length > 0 ? whole : faces;
}

/** What is wished for the grain of a piece, or null. */
export function grainOf(bench: Bench, part: SculptPart | null, piece: FoamPiece): GrainWish | null {
  const settings = part?.pieceSettings.filter(({ grain }) => grain !== undefined) ?? [];
  if (settings.length === 0) return null;
  const faces = new Set(facesOfPiece(bench, piece));
  return settings.findLast(({ face }) => faces.has(face))?.grain ?? null;
}

/** Lays the grain on a piece, and its mirror image on the piece's twin, so that twins they stay. They undo as one. */
export function grainCommands(bench: Bench, piece: FoamPiece, grain: GrainWish | null): readonly Command[] {
  const key = `grain ${piece.id}`;
  const twin = piece.twinOf === undefined ? undefined : bench.pieces?.pieces[pieceIndex(bench, piece.twinOf)];
  const mirrored = grain === null ? null : { ...grain, angleDeg: 0 - grain.angleDeg };
  return [
    setGrain(facesOfPiece(bench, piece), grain, key),
    ...(twin === undefined ? [] : [setGrain(facesOfPiece(bench, twin), mirrored, key)]),
  ];
}
