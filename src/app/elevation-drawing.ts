import type { SculptView } from '../model/bench-view.ts';

/** Axes of the front view: which coordinate runs right, which up, and which (with its sign) towards the reader. */
interface FrontAxes {
  readonly right: number;
  readonly rightSign: 1 | -1;
  readonly up: number;
  readonly near: number;
  readonly nearSign: 1 | -1;
}

/** The side a maker would call the front: towards +z where y is up, towards -y where z is up (both are common practice). */
export const FRONT: Readonly<Record<'x' | 'y' | 'z', FrontAxes>> = {
  x: { right: 1, rightSign: 1, up: 0, near: 2, nearSign: 1 },
  y: { right: 0, rightSign: 1, up: 1, near: 2, nearSign: 1 },
  z: { right: 0, rightSign: 1, up: 2, near: 1, nearSign: -1 },
};

/** More triangles than this are drawn as their box: sorting them would hold the window up. */
export const MOST_TRIANGLES = 8_000;

export interface Elevation {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly depthMm: number;
}

/** Size of the sculpt as seen from the front. */
export function elevationSize(sculpt: SculptView, up: 'x' | 'y' | 'z'): Elevation {
  const axes = FRONT[up];
  const scale = sculpt.mmPerUnit ?? 1;
  const size = sculpt.facts.boxSize;
  return { widthMm: size[axes.right] * scale, heightMm: size[axes.up] * scale, depthMm: size[axes.near] * scale };
}

/**
 * Draws the sculpt from the front, far triangles first, in tones of one ink.
 * @param pxPerMm scale of the drawing.
 * @param isNight the ink is lighter than the paper: lit faces take more of it, not less.
 * @returns false when the sculpt is too large for it.
 */
export function drawElevation(
  pen: CanvasRenderingContext2D,
  sculpt: SculptView,
  up: 'x' | 'y' | 'z',
  pxPerMm: number,
  ink: string,
  paper: string,
  isNight = false,
): boolean {
  const { positions, triangles } = sculpt;
  const count = triangles.length / 3;
  if (count > MOST_TRIANGLES) return false;
  const axes = FRONT[up];
  const scale = sculpt.mmPerUnit ?? 1;
  const low = sculpt.facts.boxMin;
  const lowRight = low[axes.right] * scale;
  const highUp = (low[axes.up] + sculpt.facts.boxSize[axes.up]) * scale;
  const x = (v: number): number => (positions[3 * v + axes.right] - lowRight) * pxPerMm;
  const y = (v: number): number => (highUp - positions[3 * v + axes.up]) * pxPerMm;
  const near = (v: number): number => positions[3 * v + axes.near] * axes.nearSign;

  const depth = Float32Array.from(
    { length: count },
    (_, t) => near(triangles[3 * t]) + near(triangles[3 * t + 1]) + near(triangles[3 * t + 2]),
  );
  const order = Uint32Array.from(depth.keys()).sort((a, b) => depth[a] - depth[b]);
  pen.lineWidth = 0.6;
  pen.lineJoin = 'round';
  let toneInPen = -1;
  for (const t of order) {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    pen.beginPath();
    pen.moveTo(x(a), y(a));
    pen.lineTo(x(b), y(b));
    pen.lineTo(x(c), y(c));
    pen.closePath();
    const tone = toneOf(x, y, near, a, b, c, pxPerMm);
    if (tone !== toneInPen) {
      pen.fillStyle = `color-mix(in srgb, ${ink} ${isNight ? 80 - tone : tone}%, ${paper})`;
      pen.strokeStyle = pen.fillStyle;
      toneInPen = tone;
    }
    pen.fill();
    pen.stroke();
  }
  return true;
}

/** Per cent of ink: light comes from the upper left and front; the inside of a shell is darker. */
function toneOf(
  x: (v: number) => number,
  y: (v: number) => number,
  near: (v: number) => number,
  a: number,
  b: number,
  c: number,
  pxPerMm: number,
): number {
  const [ux, uy, uz] = [x(b) - x(a), y(a) - y(b), (near(b) - near(a)) * pxPerMm];
  const [vx, vy, vz] = [x(c) - x(a), y(a) - y(c), (near(c) - near(a)) * pxPerMm];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.hypot(nx, ny, nz);
  if (length === 0) return 30;
  const light = (-0.45 * nx + 0.55 * ny + 0.7 * nz) / length;
  return Math.round(nz < 0 ? 55 : 40 - 32 * Math.max(0, light));
}
