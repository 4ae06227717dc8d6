import { pointAt3, type Vec2 } from '../../geom/vec.ts';
import { inPicture, type PictureView } from './hidden-lines.ts';
import type { SolidScene } from './solid-scene.ts';

/** Where a place of a picture's plane, mm at full size, lies on paper. */
export interface OnPaper {
  readonly scale: number;
  /** Round the whole scene, in the picture's plane. */
  readonly box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };
  at(p: Vec2): Vec2;
}

/** A piece of paper, mm. */
export interface PaperRoom {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Left white all round. */
  readonly edgeMm: number;
  /** Where it begins, from the left; missing: 0. */
  readonly leftMm?: number;
}

/** x y, x y … of the picture's plane on paper. */
export function pointsOnPaper(paper: OnPaper, points: ArrayLike<number>): Float64Array {
  const placed = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 2) {
    const { x, y } = paper.at({ x: points[i], y: points[i + 1] });
    placed[i] = x;
    placed[i + 1] = y;
  }
  return placed;
}

/** The scene as large as the paper takes it, in the middle. */
export function onPaper(
  { positions }: SolidScene,
  view: PictureView,
  { widthMm, heightMm, edgeMm, leftMm = 0 }: PaperRoom,
): OnPaper {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let v = 0; v < positions.length / 3; v += 1) {
    const { x, y } = inPicture(view, pointAt3(positions, v));
    [minX, maxX] = [Math.min(minX, x), Math.max(maxX, x)];
    [minY, maxY] = [Math.min(minY, y), Math.max(maxY, y)];
  }
  const fits = (room: number, size: number): number => (room - 2 * edgeMm) / Math.max(size, 1);
  const scale = Math.min(fits(widthMm, maxX - minX), fits(heightMm, maxY - minY));
  const [midX, midY] = [(minX + maxX) / 2, (minY + maxY) / 2];
  return {
    scale,
    box: { minX, minY, maxX, maxY },
    at: ({ x, y }) => ({ x: leftMm + widthMm / 2 + scale * (x - midX), y: heightMm / 2 + scale * (y - midY) }),
  };
}
