import type { PrinterProfile } from '../../model/printer.ts';
import type { PaperLayer } from '../../model/template.ts';
import type { ReadPage } from './read-pdf.ts';

/** 1 in = 25.4 mm = 72 pt (ISO 32000-1, 8.3.2.3). */
const MM_PER_PT = 25.4 / 72;

/** A line as it lies on the paper that comes out of the printer. */
export interface PrintedLine {
  readonly layer: PaperLayer | null;
  readonly closed: boolean;
  /** Packed x y, mm, y up from the paper's lower left corner. */
  readonly points: Float64Array;
}

/** Size of a page as a printer is told, mm. */
export const pageSizeMm = ({ widthPt, heightPt, userUnit }: ReadPage): { widthMm: number; heightMm: number } => ({
  widthMm: widthPt * userUnit * MM_PER_PT,
  heightMm: heightPt * userUnit * MM_PER_PT,
});

/**
 * The lines of a page as that printer puts them on paper: stretched and leaning about the middle of the page.
 * @param printer null for one that prints true.
 * @param isRoll  the paper is as long as what comes out.
 */
export function printedLines(page: ReadPage, printer: PrinterProfile | null, isRoll: boolean): readonly PrintedLine[] {
  const { widthMm, heightMm } = pageSizeMm(page);
  const mm = page.userUnit * MM_PER_PT;
  const { acrossShare, upShare, leanRad } = printer ?? { acrossShare: 1, upShare: 1, leanRad: 0 };
  const [leaning, up] = [upShare * Math.sin(leanRad), upShare * Math.cos(leanRad)];
  const [mx, my] = [widthMm / 2, heightMm / 2];
  const middleUp = isRoll ? up * my : my;
  return page.paths.map(({ layer, closed, points }) => {
    const own = new Float64Array(points.length);
    for (let i = 0; i + 1 < points.length; i += 2) {
      const [dx, dy] = [mm * points[i] - mx, mm * points[i + 1] - my];
      own[i] = mx + acrossShare * dx + leaning * dy;
      own[i + 1] = middleUp + up * dy;
    }
    return { layer: (layer?.toLowerCase() ?? null) as PaperLayer | null, closed, points: own };
  });
}
