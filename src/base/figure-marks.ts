/**
 * How figures are written where they are read by people: the one thing about them that goes by language. Each window has its own; worker and
 * terminal write the point.
 */
export type DecimalMark = '.' | ',';

let mark: DecimalMark = '.';

export const decimalMark = (): DecimalMark => mark;

export function setDecimalMark(to: DecimalMark): void {
  mark = to;
}
