import type { Say } from '../../base/paper-language.ts';
import type { Words } from '../../model/template.ts';
import type { FlowItem } from './flow.ts';
import { TYPE_MM, type Pen } from './pen.ts';

/** Side of the square and length of the inch rules. */
export interface ScaleSize {
  readonly squareMm: 100 | 50;
  readonly ruleIn: 4 | 2;
}

const MM_PER_IN = 25.4;

/** From the inch rules to the square, and room for the words beside them, mm. */
const RULE_AWAY_MM = 13;
const EDGE_MM = 10;

/** Room the whole figure takes, mm: the square with an inch rule on its left and one under it. */
export function scaleFigureSide({ squareMm, ruleIn }: ScaleSize): number {
  return EDGE_MM + RULE_AWAY_MM + Math.max(squareMm, ruleIn * MM_PER_IN);
}

/**
 * A square ruled in mm along all four sides, and two rules in inches, one for each direction.
 *
 *     ┤ ┌┬┬┬┬┬┬┐
 *     ┤ ├ 100  ┤
 *     ┤ ├  mm  ┤
 *     ┤ └┴┴┴┴┴┴┘
 *       ┬──┬──┬──┬──┬
 */
export function scaleFigure(size: ScaleSize, say: Say): FlowItem {
  const { squareMm, ruleIn } = size;
  const side = scaleFigureSide(size);
  return {
    heightMm: side,
    gapMm: 5,
    draw: (pen, left, top) => {
      const x = left + EDGE_MM + RULE_AWAY_MM;
      const y = top - squareMm;
      drawSquare(pen, x, y, squareMm, say('across and up'));
      drawInchRule(pen, ruleIn, (along, depth) => [x + along, y - RULE_AWAY_MM + depth], false);
      drawInchRule(pen, ruleIn, (along, depth) => [x - RULE_AWAY_MM + depth, y + along], true);
    },
  };
}

function drawSquare(pen: Pen, left: number, bottom: number, side: number, ways: string): void {
  pen.rectangle('ruler', left, bottom, side, side);
  for (let mm = 1; mm < side; mm += 1) {
    const tick = mm % 10 === 0 ? 3.5 : mm % 5 === 0 ? 2.4 : 1.4;
    pen.line('ruler', left + mm, bottom, left + mm, bottom + tick);
    pen.line('ruler', left + mm, bottom + side, left + mm, bottom + side - tick);
    pen.line('ruler', left, bottom + mm, left + tick, bottom + mm);
    pen.line('ruler', left + side, bottom + mm, left + side - tick, bottom + mm);
  }
  for (let mm = 20; mm < side; mm += 20) {
    pen.write(String(mm), { x: left + mm, y: bottom + 4.6 }, { align: 'centre' });
    pen.write(String(mm), { x: left + 4.4, y: bottom + mm - TYPE_MM.body / 2 });
  }
  const middle = { x: left + side / 2, y: bottom + side / 2 };
  pen.write(`${side} mm`, { x: middle.x, y: middle.y - 1 }, { heightMm: TYPE_MM.name, align: 'centre', bold: true });
  pen.write(ways, { x: middle.x, y: middle.y - 7.5 }, { align: 'centre' });
}

/** From an inch rule to its numbers, mm. */
const LABEL_AWAY_MM = 1.4;

/** @param at from places along the rule and above it to the page. */
function drawInchRule(
  pen: Pen,
  lengthIn: number,
  at: (along: number, depth: number) => readonly [number, number],
  isUpright: boolean,
): void {
  const length = lengthIn * MM_PER_IN;
  pen.line('ruler', ...at(0, 0), ...at(length, 0));
  for (let sixteenth = 0; sixteenth <= 16 * lengthIn; sixteenth += 1) {
    const tick =
      sixteenth % 16 === 0
        ? 4.5
        : sixteenth % 8 === 0
          ? 3.2
          : sixteenth % 4 === 0
            ? 2.3
            : sixteenth % 2 === 0
              ? 1.6
              : 1;
    const along = (sixteenth * MM_PER_IN) / 16;
    pen.line('ruler', ...at(along, 0), ...at(along, tick));
  }
  const label = (text: string, along: number, align: Words['align'], bold: boolean): void => {
    const [x, y] = at(along, -LABEL_AWAY_MM);
    if (isUpright) pen.write(text, { x, y: y - TYPE_MM.body / 2 }, { align: 'right', bold });
    else pen.write(text, { x, y: y - TYPE_MM.body }, { align, bold });
  };
  for (let inch = 1; inch < lengthIn; inch += 1) label(String(inch), inch * MM_PER_IN, 'centre', false);
  label(`${lengthIn} in`, length - (isUpright ? TYPE_MM.body / 2 : 0), 'right', true);
}
