import { inStretches, runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { cross3, dot3, length3, pointAt3, sub3 } from '../../geom/vec.ts';
import type { Surface } from '../surface.ts';
import { nextHalfedge, prevHalfedge } from '../topology.ts';

/**
 * Each triangle laid flat along each of its sides: half-edge h runs from (0, 0) to (length[h], 0), and the corner across it stands at
 * (foot[h], height[h]), mm, height >= 0.
 */
export interface SideShapes {
  readonly length: Float64Array;
  readonly foot: Float64Array;
  readonly height: Float64Array;
  /** Angle at the corner a half-edge leaves, in its triangle, radians; 0 to pi. */
  readonly angle: Float64Array;
}

const known = new WeakMap<Surface, SideShapes>();

/** The shapes along all sides, found once for each surface. From cross products, so needles keep their height to rounding. */
export function sideShapesOf(surface: Surface): SideShapes {
  return known.get(surface) ?? runAtOnce(sideShapeSteps(surface));
}

/** Half-edges measured in one stretch: a few milliseconds. */
const STRETCH_SIDES = 1 << 14;

/** The same in stretches: whoever goes first pays for those who come after. */
export function* sideShapeSteps(surface: Surface): Stepwise<SideShapes> {
  const found = known.get(surface);
  if (found !== undefined) return found;
  const { positions, triangles } = surface;
  const [length, foot, height, angle] = [0, 1, 2, 3].map(() => new Float64Array(triangles.length));
  yield* inStretches(triangles.length, STRETCH_SIDES, (from, to) => {
    for (let h = from; h < to; h += 1) {
      const a = pointAt3(positions, triangles[h]);
      const along = sub3(pointAt3(positions, triangles[nextHalfedge(h)]), a);
      const up = sub3(pointAt3(positions, triangles[prevHalfedge(h)]), a);
      length[h] = length3(along);
      const twice = length3(cross3(along, up));
      foot[h] = length[h] > 0 ? dot3(along, up) / length[h] : 0;
      height[h] = length[h] > 0 ? twice / length[h] : 0;
      angle[h] = Math.atan2(twice, dot3(along, up));
    }
  });
  const shapes: SideShapes = { length, foot, height, angle };
  known.set(surface, shapes);
  return shapes;
}
