import type { Vec2 } from './vec.ts';

/** x' = a x + c y + e, y' = b x + d y + f: the order in which SVG writes `matrix(a b c d e f)` (SVG 1.1, chapter 7.4). */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const IDENTITY: Affine = [1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export function composed(outer: Affine, inner: Affine): Affine {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

export const mapped = ([a, b, c, d, e, f]: Affine, { x, y }: Vec2): Vec2 => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

/** How much it enlarges at most: its greater singular value. */
export function greatestScale([a, b, c, d]: Affine): number {
  const [sum, difference] = [Math.hypot(a + d, b - c), Math.hypot(a - d, b + c)];
  return (sum + difference) / 2;
}

/**
 * Reads the attribute `transform` as SVG writes it (SVG 1.1, chapter 7.6): matrix, translate, scale, rotate, skewX, skewY, one behind the other.
 * @returns null where it cannot be read.
 */
export function readTransform(text: string): Affine | null {
  let whole = IDENTITY;
  const list = /\s*(?:,\s*)?([A-Za-z]+)\s*\(([^)]*)\)\s*/y;
  while (list.lastIndex < text.length) {
    if (text.slice(list.lastIndex).trim() === '') break;
    const found = list.exec(text);
    if (found === null) return null;
    const values = found[2].trim() === '' ? [] : (found[2].match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g) ?? []);
    if (/[^\d\s,.+\-eE]/.test(found[2])) return null;
    const one = affineOf(found[1], values.map(Number));
    if (one === null) return null;
    whole = composed(whole, one);
  }
  return whole.every(Number.isFinite) ? whole : null;
}

function affineOf(kind: string, n: readonly number[]): Affine | null {
  const rad = ((n[0] ?? 0) * Math.PI) / 180;
  const [c, s] = [Math.cos(rad), Math.sin(rad)];
  const about = (x: number, y: number): Affine => [c, s, -s, c, x - c * x + s * y, y - s * x - c * y];
  switch (`${kind} ${n.length}`) {
    case 'matrix 6':
      return [n[0], n[1], n[2], n[3], n[4], n[5]];
    case 'translate 1':
    case 'translate 2':
      return [1, 0, 0, 1, n[0], n[1] ?? 0];
    case 'scale 1':
    case 'scale 2':
      return [n[0], 0, 0, n[1] ?? n[0], 0, 0];
    case 'rotate 1':
      return about(0, 0);
    case 'rotate 3':
      return about(n[1], n[2]);
    case 'skewX 1':
      return [1, 0, Math.tan(rad), 1, 0, 0];
    case 'skewY 1':
      return [1, Math.tan(rad), 0, 1, 0, 0];
    default:
      return null;
  }
}
