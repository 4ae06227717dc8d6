import type { BendField } from '../../model/bend-field.ts';
import type { PullWay } from '../../model/springing.ts';
import { roomOfTriangle } from '../../viewport/room-field.ts';
import type { Bench } from '../bench-state.ts';
import { fitAt } from '../fit-at.ts';
import { N_PER_CM } from './figure-scale.ts';
import type { FigureKind } from './figures.ts';
import type { PlaceUnder } from './place-under.ts';

/** Figures at one place, in the unit of their scale. */
export type FigureReading =
  | { readonly kind: 'stretch'; readonly stretchPct: number; readonly squashPct: number }
  /** `radiusMm` of the neutral surface; Infinity where it is flat. `strainPct` > 0 on a ridge, < 0 in a valley. */
  | { readonly kind: 'bend'; readonly strainPct: number; readonly radiusMm: number }
  | { readonly kind: 'room'; readonly roomMm: number }
  | { readonly kind: 'pull'; readonly letter: string; readonly nPerCm: number; readonly way: PullWay }
  | { readonly kind: 'fit'; readonly letter: string; readonly faceGapMm: number; readonly backGapMm: number };

/** What a figure is at a place; null where nothing is known there. */
export function readingAt(
  kind: FigureKind,
  bench: Bench,
  bends: BendField | null,
  place: PlaceUnder,
): FigureReading | null {
  switch (kind) {
    case 'stretch':
      return stretchAt(bench, place);
    case 'bend':
      return bendAt(bench, bends, place);
    case 'room':
      return roomAt(bench, place);
    case 'pull':
      return pullAt(bench, place);
    case 'fit': {
      const fit = fitAt(bench, { kind: 'edge', ...place });
      return fit === null ? null : { kind, ...fit };
    }
  }
}

/** Where the needles of the scale stand. */
export function needlesOf(reading: FigureReading): readonly number[] {
  switch (reading.kind) {
    case 'stretch':
      return [-reading.squashPct, reading.stretchPct];
    case 'bend':
      return [reading.strainPct];
    case 'room':
      return [reading.roomMm];
    case 'pull':
      return [reading.nPerCm];
    case 'fit':
      return [reading.faceGapMm, reading.backGapMm];
  }
}

/** The patch a triangle of the sculpt is of and its number in it; null off the pieces. */
function inPatch({ pieces }: Bench, triangle: number | undefined) {
  const patch = triangle === undefined ? undefined : pieces?.patchOfTriangle[triangle];
  if (triangle === undefined || patch === undefined || patch < 0 || pieces === null) return null;
  const local = pieces.patches[patch].meshTriangles.indexOf(triangle);
  return local < 0 ? null : { patch, local };
}

function stretchAt(bench: Bench, { triangle }: PlaceUnder): FigureReading | null {
  const at = inPatch(bench, triangle);
  const { stretchPct = null, squashPct = null } = at === null ? {} : (bench.pieces?.patches[at.patch] ?? {});
  if (at === null || stretchPct === null || squashPct === null) return null;
  return { kind: 'stretch', stretchPct: stretchPct[at.local], squashPct: squashPct[at.local] };
}

function bendAt(bench: Bench, bends: BendField | null, { triangle }: PlaceUnder): FigureReading | null {
  const at = inPatch(bench, triangle);
  const strainPct = at === null ? undefined : bends?.patches[at.patch]?.strainPct[at.local];
  if (at === null || strainPct === undefined || bench.shell === null) return null;
  const piece = bench.pieces?.patches[at.patch].piece ?? -1;
  const thicknessMm = piece < 0 ? bench.shell.thicknessMm : (bench.pieces?.pieces[piece].thicknessMm ?? NaN);
  const k = bench.shell.neutralFraction;
  const skinMm = thicknessMm * Math.max(k, 1 - k);
  return { kind: 'bend', strainPct, radiusMm: (100 * skinMm) / Math.abs(strainPct) };
}

/** Where no core is beside it there is nothing to tell. */
function roomAt({ room, sculpt }: Bench, { triangle, vertex }: PlaceUnder): FigureReading | null {
  if (room === null || sculpt === null) return null;
  const atVertex = vertex === undefined ? NaN : room.atVertices[vertex];
  const roomMm =
    Number.isNaN(atVertex) && triangle !== undefined
      ? roomOfTriangle(room.atVertices, sculpt.triangles, triangle)
      : atVertex;
  return Number.isNaN(roomMm) ? null : { kind: 'room', roomMm };
}

function pullAt({ springing, seams }: Bench, { seam }: PlaceUnder): FigureReading | null {
  const chain = seam === undefined ? undefined : seams?.chains[seam];
  const pull = springing?.seams.find((one) => one.seam === chain?.id);
  if (pull === undefined) return null;
  return { kind: 'pull', letter: pull.letter, nPerCm: N_PER_CM * pull.pullNPerMm, way: pull.way };
}
