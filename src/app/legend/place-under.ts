import type { BenchPick } from '../../viewport/bench-contract.ts';
import { chainIndex, type Bench } from '../bench-state.ts';
import type { ViewState } from '../view-state.ts';

/** A place that figures are read at, in the numbering of the records on show. */
export interface PlaceUnder {
  readonly triangle?: number;
  readonly vertex?: number;
  /** Index of the seam's chain. */
  readonly seam?: number;
  /** mm, model space. */
  readonly point?: readonly [number, number, number];
}

/** The place under the pointer; null where nothing of the sculpt is there. */
export function placeOfPick({ triangle, vertex, seam, point }: BenchPick): PlaceUnder | null {
  if (triangle === undefined && (seam ?? -1) < 0) return null;
  return {
    ...(triangle === undefined ? {} : { triangle }),
    ...(vertex === undefined ? {} : { vertex }),
    ...(seam === undefined || seam < 0 ? {} : { seam }),
    ...(point === undefined ? {} : { point }),
  };
}

/** The place figures are read at: under the pointer, else where the keyboard is: at the walking mark, on the seam in hand or chosen, on the area. */
export function placeRead(view: ViewState, bench: Bench): PlaceUnder | null {
  if (view.under !== null) return view.under;
  const { cursor, walked, grip, choice, place } = view;
  if (cursor !== null) return atCorner(bench, cursor, walked);
  if (grip !== null) return { ...onSeam(bench, grip.seam), point: grip.at };
  if (choice.kind === 'seam') return onSeam(bench, choice.seam);
  return place === null ? null : { triangle: place };
}

function atCorner({ sculpt, seams }: Bench, vertex: number, edge: number | null): PlaceUnder | null {
  if (sculpt === null) return null;
  const corner = sculpt.triangles.indexOf(vertex);
  const seam = edge === null ? -1 : (seams?.chainOfEdge[edge] ?? -1);
  const at = [0, 1, 2].map((k) => sculpt.positions[3 * vertex + k]) as [number, number, number];
  return {
    vertex,
    point: at,
    ...(corner < 0 ? {} : { triangle: Math.floor(corner / 3) }),
    ...(seam < 0 ? {} : { seam }),
  };
}

/** A seam that is chosen is read where it fits worst. */
function onSeam(bench: Bench, id: string): PlaceUnder | null {
  const seam = chainIndex(bench, id);
  if (seam < 0) return null;
  const fit = bench.dryFit?.perSeam.find((one) => one.seam === id);
  return { seam, ...(fit === undefined ? {} : { point: fit.at }) };
}
