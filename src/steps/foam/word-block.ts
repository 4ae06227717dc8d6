import { textWidthMm } from '../../geom/text-width.ts';
import type { TurnedBox } from '../../geom/turned-box.ts';
import type { Words } from '../../model/template.ts';

/** How far letters reach under the baseline and over it, in capital heights (DejaVu Sans: p and É). */
const DESCENT = 0.33;
const ASCENT = 1.1;

/** Gap between two lines, in capital heights of the lower one. */
const LINE_GAP = 0.3;

export interface WordLine {
  readonly text: string;
  /** Height of a capital, mm. */
  readonly heightMm: number;
  readonly bold?: boolean;
}

/** Lines of words one under the other, flush left. */
export interface WordBlock {
  readonly lines: readonly WordLine[];
  readonly widthMm: number;
  readonly heightMm: number;
}

export function blockOf(lines: readonly WordLine[]): WordBlock {
  let heightMm = 0;
  lines.forEach((line, i) => {
    heightMm += (DESCENT + ASCENT + (i > 0 ? LINE_GAP : 0)) * line.heightMm;
  });
  return { lines, widthMm: Math.max(...lines.map(({ text, heightMm: cap }) => textWidthMm(text, cap))), heightMm };
}

export const oneLine = (text: string, heightMm: number): WordBlock => blockOf([{ text, heightMm }]);

/** The box of a block with its centre at a place. */
export const boxAt = (block: WordBlock, x: number, y: number, angleRad: number): TurnedBox => ({
  x,
  y,
  halfWidth: block.widthMm / 2,
  halfHeight: block.heightMm / 2,
  angleRad,
});

/** The block's lines as they stand in its box. A single line is centred, several are flush left. */
export function wordsInBox(block: WordBlock, box: TurnedBox): readonly Words[] {
  const [c, s] = [Math.cos(box.angleRad), Math.sin(box.angleRad)];
  const place = (x: number, y: number) => ({ x: box.x + c * x - s * y, y: box.y + s * x + c * y });
  let top = block.heightMm / 2;
  const isSingle = block.lines.length === 1;
  return block.lines.map(({ text, heightMm, bold }, i) => {
    if (i > 0) top -= LINE_GAP * heightMm;
    const baseline = top - ASCENT * heightMm;
    top = baseline - DESCENT * heightMm;
    return {
      text,
      at: place(isSingle ? 0 : -block.widthMm / 2, baseline),
      angleRad: box.angleRad,
      heightMm,
      align: isSingle ? ('centre' as const) : ('left' as const),
      ...(bold === true ? { bold } : {}),
    };
  });
}
