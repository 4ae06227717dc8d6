import type { Affine } from '../../geom/affine.ts';
import { readSvgLength } from '../../geom/svg-size.ts';

/** What a share of a length is a share of, units of the drawing. */
export interface Viewport {
  readonly width: number;
  readonly height: number;
}

/** mm of one px: 96 of them to the inch (CSS Values 3, chapter 6.2). */
export const MM_PER_PX = 25.4 / 96;

const SHARE = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*%\s*$/;

/**
 * A length in units of the drawing, one with a unit counted in px, a share taken of the viewport.
 * @param along  what a share is of: its width, its height, or its diagonal over the root of 2 (SVG 1.1, chapter 7.10).
 * @returns null where it is no length.
 */
export function userLength(
  text: string | undefined,
  along: 'x' | 'y' | 'both',
  { width, height }: Viewport,
): number | null {
  if (text === undefined) return null;
  const share = SHARE.exec(text);
  if (share !== null) {
    const whole = along === 'x' ? width : along === 'y' ? height : Math.sqrt((width * width + height * height) / 2);
    return (Number(share[1]) / 100) * whole;
  }
  const length = readSvgLength(text);
  if (length === null) return null;
  return length.mmPerUnit === null ? length.value : (length.value * length.mmPerUnit) / MM_PER_PX;
}

/** `min-x min-y width height`; null where there is none or it is not to be used. */
export function readViewBox(text: string | undefined): readonly [number, number, number, number] | null {
  const box = (text ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  return box.length === 4 && box.every(Number.isFinite) && box[2] > 0 && box[3] > 0
    ? [box[0], box[1], box[2], box[3]]
    : null;
}

/**
 * The map of a viewBox into its frame (SVG 1.1, chapter 7.8): as large as it fits (`meet`), or as fills it (`slice`), at the start, middle or end of
 * what is left; or each way by itself (`none`).
 */
export function fitViewBox(
  [minX, minY, boxWidth, boxHeight]: readonly [number, number, number, number],
  how: string | undefined,
  { width, height }: Viewport,
): Affine {
  const words = (how ?? '').trim().replace(/^defer\s+/, '');
  const [sx, sy] = [width / boxWidth, height / boxHeight];
  if (words.startsWith('none')) return [sx, 0, 0, sy, -minX * sx, -minY * sy];
  const scale = /\bslice\b/.test(words) ? Math.max(sx, sy) : Math.min(sx, sy);
  const [, alignX, alignY] = /x(Min|Mid|Max)Y(Min|Mid|Max)/.exec(words) ?? ['', 'Mid', 'Mid'];
  const at = (align: string): number => (align === 'Min' ? 0 : align === 'Mid' ? 0.5 : 1);
  return [
    scale,
    0,
    0,
    scale,
    -minX * scale + at(alignX) * (width - boxWidth * scale),
    -minY * scale + at(alignY) * (height - boxHeight * scale),
  ];
}
