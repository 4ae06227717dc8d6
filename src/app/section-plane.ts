import type { SculptView } from '../model/bench-view.ts';
import type { BenchPlane, UpAxis } from '../viewport/bench-contract.ts';

/** How a cut stands: upright across the sculpt, upright along it, or level. */
export type SectionFacing = 'front' | 'side' | 'level';
type Way = BenchPlane['normal'];

/** Towards the viewer, to the right and up, for each way a file may have up. */
const WAYS: Readonly<Record<UpAxis, Readonly<Record<SectionFacing, Way>>>> = {
  x: { front: [0, 0, 1], side: [0, -1, 0], level: [1, 0, 0] },
  y: { front: [0, 0, 1], side: [1, 0, 0], level: [0, 1, 0] },
  z: { front: [0, -1, 0], side: [1, 0, 0], level: [0, 0, 1] },
};

/** A plane through the middle of the sculpt; what lies towards the viewer, to the right or above is taken away. */
export const middlePlane = (sculpt: SculptView, up: UpAxis, facing: SectionFacing): BenchPlane => ({
  point: middleOf(sculpt),
  normal: WAYS[up][facing],
});

/** The other half is taken away instead. */
export function otherHalf({ point, normal: [x, y, z] }: BenchPlane): BenchPlane {
  return { point, normal: [0 - x, 0 - y, 0 - z] };
}

/** How far the plane stands from the middle of the sculpt, and how far it can go either way and still meet it, mm. */
export function placeAlong(sculpt: SculptView, plane: BenchPlane): { readonly at: number; readonly reach: number } {
  const middle = middleOf(sculpt);
  const scale = sculpt.mmPerUnit ?? 1;
  const along = (point: readonly number[]): number =>
    point.reduce((sum, x, i) => sum + plane.normal[i] * (x - middle[i]), 0);
  const reach = sculpt.facts.boxSize.reduce((sum, size, i) => sum + (Math.abs(plane.normal[i]) * size * scale) / 2, 0);
  return { at: along(plane.point), reach };
}

function middleOf({ facts, mmPerUnit }: SculptView): Way {
  const [x, y, z] = facts.boxMin.map((least, i) => (least + facts.boxSize[i] / 2) * (mmPerUnit ?? 1));
  return [x, y, z];
}
