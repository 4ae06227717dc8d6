import { textWidthMm } from './text-width.ts';
import type { TurnedBox } from './turned-box.ts';
import type { Vec2 } from './vec.ts';

/** How far letters reach under the baseline and over it, as shares of the capital height (DejaVu Sans: p and É). */
const DESCENT = 0.33;
const ASCENT = 1.1;

/** A line of words as it is set. */
interface SetWords {
  readonly text: string;
  readonly at: Vec2;
  readonly angleRad: number;
  readonly heightMm: number;
  readonly align: 'left' | 'centre' | 'right';
  readonly wide?: number;
}

/** The box round a line of words, turned with it, mm. */
export function placeOfWords({ text, at, angleRad, heightMm, align, wide = 1 }: SetWords): TurnedBox {
  const halfWidth = (wide * textWidthMm(text, heightMm)) / 2;
  const along = { left: halfWidth, centre: 0, right: -halfWidth }[align];
  const up = ((ASCENT - DESCENT) / 2) * heightMm;
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  return {
    x: at.x + c * along - s * up,
    y: at.y + s * along + c * up,
    halfWidth,
    halfHeight: ((ASCENT + DESCENT) / 2) * heightMm,
    angleRad,
  };
}
