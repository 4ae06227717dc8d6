import { deg, vec2, vec3, type Vec2 } from '../../geom/vec.ts';
import { curve } from '../../geom/outline-curve.ts';
import type { ShapePatch, ShapePiece } from '../../model/shape.ts';
import { integrate } from '../../geom/integrate.ts';
import { edge, piece, rolled, side } from './pieces.ts';

/** Length of the ellipse a plane cuts out of a cylinder: 4 a E(e), half axes `radius` and `radius / cos(cut)`. */
export const ellipseLength = (radius: number, slope: number): number =>
  4 * integrate((t) => radius * Math.sqrt(1 + (slope * Math.sin(t)) ** 2), 0, Math.PI / 2);

/**
 * A pipe piece between two planes, rolled out from the lowest place of its top: y = low + base on the way round, x = r theta
 * (parallel line development). Heights are above the level through the axis at 0.
 */
export function pipePiece(
  name: string,
  radius: number,
  top: (theta: number) => number,
  bottom: ((theta: number) => number) | null,
  extra: {
    readonly quantity?: number;
    readonly first: number;
    readonly seam: string;
    readonly topSeam?: string;
    readonly bottomSeam?: string;
    /** Lean of the plane that cuts its joints, radians; each cut leans with it, one way on the long side and the other way on the short one. */
    readonly mitre?: number;
  },
): ShapePiece {
  const { quantity = 1, first, seam, topSeam, bottomSeam, mitre = 0 } = extra;
  const lean = deg(mitre);
  const bevelDeg = [-lean, lean, -lean] as const;
  const at =
    (height: (theta: number) => number) =>
    (share: number): Vec2 =>
      vec2(2 * Math.PI * radius * share, height(first + 2 * Math.PI * share));
  const low = bottom ?? (() => 0);
  const lowEnd = (share: number): Vec2 => at(low)(share);
  return piece(
    name,
    [
      bottom === null
        ? side('base', lowEnd(0), lowEnd(1))
        : edge('lower cut', curve(at(low), 0, 1), { seam: bottomSeam, bevelDeg }),
      side('end', lowEnd(1), at(top)(1), { seam }),
      edge(bottom === null ? 'cut' : 'upper cut', curve(at(top), 1, 0), { seam: topSeam, bevelDeg }),
      side('start', at(top)(0), lowEnd(0), { seam }),
    ],
    {
      quantity,
      bend: rolled(radius),
      marks: ['quarter', 'half', 'three quarters'].map((name, i) => ({
        name: `${name} round`,
        at: lowEnd((i + 1) / 4),
      })),
    },
  );
}

/** The same piece on the finished pipe, about the z axis. */
export const pipePatch = (
  name: string,
  radius: number,
  top: (theta: number) => number,
  bottom: (theta: number) => number,
  first: number,
): ShapePatch => ({
  piece: name,
  solid: (u, v) => {
    const theta = first + 2 * Math.PI * u;
    return vec3(radius * Math.cos(theta), radius * Math.sin(theta), bottom(theta) + (top(theta) - bottom(theta)) * v);
  },
  flat: (u, v) => {
    const theta = first + 2 * Math.PI * u;
    return vec2(2 * Math.PI * radius * u, bottom(theta) + (top(theta) - bottom(theta)) * v);
  },
});
