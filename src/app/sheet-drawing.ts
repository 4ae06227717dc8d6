import type { Placement, Sheet } from '../model/sheet.ts';
import type { Template } from '../model/template.ts';
import { drawnLines } from '../viewport/drawing-lines.ts';

/** How a sheet lies in a picture whose unit is mm and whose y runs down: its long side across, as who stands before a bench sees it. */
export interface SheetFrame {
  readonly width: number;
  readonly height: number;
  /** From the sheet's own numbers into the picture, and its turning part alone, which is its own inverse. */
  readonly matrix: string;
  readonly turning: string;
  readonly isTall: boolean;
}

export function frameOf({ widthMm, heightMm }: Pick<Sheet, 'widthMm' | 'heightMm'>): SheetFrame {
  if (heightMm > widthMm)
    return {
      width: heightMm,
      height: widthMm,
      matrix: `matrix(0 -1 -1 0 ${heightMm} ${widthMm})`,
      turning: 'matrix(0 -1 -1 0 0 0)',
      isTall: true,
    };
  return {
    width: widthMm,
    height: heightMm,
    matrix: `matrix(1 0 0 -1 0 ${heightMm})`,
    turning: 'matrix(1 0 0 -1 0 0)',
    isTall: false,
  };
}

/** A way on the screen, to the right and up, as one on the sheet. */
export const sheetFromScreen = ({ isTall }: SheetFrame, right: number, up: number): readonly [number, number] =>
  isTall ? [up, -right] : [right, up];

/** The outline of a sheet as path data. */
export function sheetPath({ widthMm, heightMm, outline }: Sheet): string {
  return outline === undefined ? `M0 0H${widthMm}V${heightMm}H0Z` : ringPath(outline);
}

export function ringPath(ring: ArrayLike<number>): string {
  let d = '';
  for (let i = 0; i + 1 < ring.length; i += 2) d += `${i === 0 ? 'M' : 'L'}${ring[i]} ${ring[i + 1]}`;
  return `${d}Z`;
}

/** Where a template lies, as a transform: turned over first, then turned, then moved. */
export function placeOnSheet({
  x,
  y,
  turnRad,
  isFlipped = false,
}: Pick<Placement, 'x' | 'y' | 'turnRad' | 'isFlipped'>): string {
  return `translate(${x} ${y}) rotate(${degrees(turnRad)})${isFlipped ? ' scale(-1 1)' : ''}`;
}

/** Takes back how a template is turned, so that words on it are read as the picture is. */
export function uprightOn({ turning }: SheetFrame, { turnRad, isFlipped = false }: Placement): string {
  return `${isFlipped ? 'scale(-1 1) ' : ''}rotate(${-degrees(turnRad)}) ${turning}`;
}

const degrees = (rad: number): number => (rad * 180) / Math.PI;

/** What is cut of a template, and the other edge of its leaning cuts, as path data. */
export interface CutPaths {
  readonly cut: string;
  readonly bevel: string;
}

const KNOWN = new WeakMap<Template, CutPaths>();

/** Worked out once for each template: a picture is drawn again with every move of a hand. */
export function cutPaths(template: Template): CutPaths {
  const known = KNOWN.get(template);
  if (known !== undefined) return known;
  const lines = drawnLines(template.drawing);
  const of = (role: 'cut' | 'bevel'): string => lines.find((one) => one.role === role)?.path ?? '';
  const paths = { cut: of('cut'), bevel: of('bevel') };
  KNOWN.set(template, paths);
  return paths;
}
