import type { Placement, Sheet } from '../model/sheet.ts';
import type { Template } from '../model/template.ts';
import { drawnLines } from '../viewport/drawing-lines.ts';

/** How a sheet lies in a picture whose unit is mm and whose y runs down. */
export interface SheetFrame {
  readonly width: number;
  readonly height: number;
  /** From the sheet's own numbers into the picture, and its turning part alone, which is its own inverse. */
  readonly matrix: string;
  readonly turning: string;
  /** True where the sheet's y runs across the picture, to the right. */
  readonly isTurned: boolean;
}

/** Room shown beyond the last piece where a picture comes closer: this share of what is filled, and so much, mm. */
const BEYOND_SHARE = 0.25;
const BEYOND_MM = 120;

/**
 * @param isClose  true: only the part that is filled, and a little beyond it. False: the whole sheet, its long side across, as who stands before a
 *   bench sees it.
 */
export function frameOf(
  { widthMm, heightMm, fillAlong, filledMm }: Pick<Sheet, 'widthMm' | 'heightMm' | 'fillAlong' | 'filledMm'>,
  isClose = false,
): SheetFrame {
  const part = (1 + BEYOND_SHARE) * filledMm + BEYOND_MM;
  const [x, y] = !isClose
    ? [widthMm, heightMm]
    : fillAlong === 'x'
      ? [Math.min(widthMm, part), heightMm]
      : [widthMm, Math.min(heightMm, part)];
  if (y > x) return { width: y, height: x, matrix: TURNED, turning: TURNED, isTurned: true };
  return { width: x, height: y, matrix: `matrix(1 0 0 -1 0 ${y})`, turning: 'matrix(1 0 0 -1 0 0)', isTurned: false };
}

/** y to the right, x down: a quarter turn, seen with y down. */
const TURNED = 'matrix(0 1 1 0 0 0)';

/** A way on the screen, to the right and up, as one on the sheet. */
export const sheetFromScreen = ({ isTurned }: SheetFrame, right: number, up: number): readonly [number, number] =>
  isTurned ? [-up, right] : [right, up];

/**
 * Where a picture that comes closer breaks a sheet off: a narrow line with zigzags (ISO 128-2:2020, 01.1), and what lies beyond it.
 * @returns path data on the sheet; null where the sheet is shown to its end.
 */
export function breakOf(
  { widthMm, heightMm }: Pick<Sheet, 'widthMm' | 'heightMm'>,
  { width, height, isTurned }: SheetFrame,
): { readonly line: string; readonly beyond: string } | null {
  const [shownX, shownY] = isTurned ? [height, width] : [width, height];
  const isAcross = shownY < heightMm;
  if (!isAcross && shownX >= widthMm) return null;
  const [long, end] = isAcross ? [widthMm, shownY] : [heightMm, shownX];
  const tooth = long / 50;
  const at = (along: number, off: number): string => {
    const place = end - 2 * tooth + off;
    return isAcross ? `${along} ${place}` : `${place} ${along}`;
  };
  const teeth = [1, 2, 3].flatMap((n) => {
    const middle = (long * n) / 4;
    return [
      at(middle - tooth, 0),
      at(middle - tooth / 3, tooth),
      at(middle + tooth / 3, -tooth),
      at(middle + tooth, 0),
    ];
  });
  const line = `M${[at(0, 0), ...teeth, at(long, 0)].join('L')}`;
  // A picture may show more than its frame: nothing is left of the sheet there.
  const rest = (isAcross ? heightMm : widthMm) - end + 3 * tooth;
  return { line, beyond: `${line}L${at(long, rest)}L${at(0, rest)}Z` };
}

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
