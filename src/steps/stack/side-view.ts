import type { Region } from '../../geom/polygon-boolean.ts';
import { heightsOver, cutOfSide, sectionWalks } from '../../mesh/lines/section-walk.ts';
import type { StackSideView } from '../../model/stack.ts';
import type { Solid } from './frame.ts';
import { ringsOf } from './regions.ts';

/** A layer as the view needs it. */
export interface ViewedLayer {
  readonly number: number;
  readonly from: number;
  readonly to: number;
  /** What is foam of it. */
  readonly regions: readonly Region[];
}

/**
 * The stack cut along its axis: outline of the solid and stretches of foam.
 * @param across  direction of the frame that runs to the right.
 * @param at      where the cut lies on the other direction, mm.
 */
export function sideView(solid: Solid, layers: readonly ViewedLayer[], across: 'x' | 'y', at: number): StackSideView {
  const { positions, triangles } = solid.surface;
  const [right, other] = across === 'x' ? [0, 1] : [1, 0];
  const normal = { x: other === 0 ? 1 : 0, y: other === 1 ? 1 : 0, z: 0 };
  const heights = heightsOver(positions, { point: { x: normal.x * at, y: normal.y * at, z: 0 }, normal });
  const outlines = sectionWalks(solid.surface, heights).map(({ halfedges }) => {
    const ring = new Float64Array(2 * halfedges.length);
    for (const [i, h] of halfedges.entries()) {
      const { low, high, share } = cutOfSide(triangles, heights, h);
      for (const [k, axis] of [right, 2].entries()) {
        const [p, q] = [positions[3 * low + axis], positions[3 * high + axis]];
        ring[2 * i + k] = p + share * (q - p);
      }
    }
    return ring;
  });
  const steps = layers.flatMap(({ number, from, to, regions }) => {
    const cuts: number[] = [];
    for (const ring of ringsOf(regions)) {
      for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
        const [p, q] = [ring[j + other], ring[i + other]];
        if (p > at === q > at) continue;
        cuts.push(ring[j + right] + ((at - p) / (q - p)) * (ring[i + right] - ring[j + right]));
      }
    }
    cuts.sort((a, b) => a - b);
    return Array.from({ length: Math.floor(cuts.length / 2) }, (_, k) => ({
      layer: number,
      left: cuts[2 * k],
      right: cuts[2 * k + 1],
      from,
      to,
    }));
  });
  return { across, atMm: at, solid: outlines, steps };
}
