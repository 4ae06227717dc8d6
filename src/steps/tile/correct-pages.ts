import type { Page } from '../../model/page.ts';
import type { PrinterProfile } from '../../model/printer.ts';
import type { Drawing, Stroke, Words } from '../../model/template.ts';

/** From what is to be measured on paper to the page that makes the printer print it so: the profile's inverse about the page's middle. */
interface Correction {
  /** x' = xx x + xy y + x0, y' = yy y + y0. */
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  readonly x0: number;
  readonly y0: number;
}

function correctionFor(
  { acrossShare, upShare, leanRad }: PrinterProfile,
  widthMm: number,
  heightMm: number,
): Correction {
  const xx = 1 / acrossShare;
  const yy = 1 / (upShare * Math.cos(leanRad));
  const xy = -Math.tan(leanRad) / acrossShare;
  const [mx, my] = [widthMm / 2, heightMm / 2];
  return { xx, xy, yy, x0: mx - xx * mx - xy * my, y0: my - yy * my };
}

/** What of the paper is asked for so that nothing of a corrected page leaves it. */
export interface CorrectedFrame {
  readonly marginMm: number;
  /** Longest page of a roll, mm. */
  readonly longestMm: number;
}

/**
 * A printer that prints short is given a larger drawing, and that must not leave the page: the white edge grows where it must. On a roll the page
 * grows along it instead.
 * @param page     the paper as it goes through the printer, mm; for a roll with the longest page.
 * @param marginMm white edge that is wished for.
 * @param leastMm  white edge that stays on the page itself, unless less is wished for.
 */
export function correctedFrame(
  profile: PrinterProfile,
  page: { readonly widthMm: number; readonly heightMm: number; readonly roll: boolean },
  marginMm: number,
  leastMm: number,
): CorrectedFrame {
  const { widthMm, heightMm } = page;
  const { xx, xy, yy } = correctionFor(profile, widthMm, heightMm);
  const least = Math.min(marginMm, leastMm);
  const lean = Math.abs(xy);
  // The farthest corner of the frame lies xx (W/2 - m) + |xy| (H/2 - m) from the middle, which may be W/2 - least.
  const acrossMm = (xx * widthMm + lean * heightMm - widthMm + 2 * least) / (2 * (xx + lean));
  const upMm = page.roll ? marginMm : (yy * heightMm - heightMm + 2 * least) / (2 * yy);
  const tenth = (mm: number): number => Math.ceil(10 * mm - 1e-6) / 10;
  return {
    marginMm: Math.max(marginMm, tenth(acrossMm), tenth(upMm)),
    longestMm: heightMm / Math.max(1, yy),
  };
}

/**
 * The page that measures true when that printer has printed it, words too: what is clear of lines stays clear.
 * @param roll true: the page grows or shrinks along the roll with what is on it.
 */
export function correctPage(page: Page, profile: PrinterProfile, roll: boolean): Page {
  const by = correctionFor(profile, page.widthMm, page.heightMm);
  if (!roll) return { ...page, drawing: correctDrawing(page.drawing, by) };
  const heightMm = by.yy * page.heightMm;
  const moved = { ...by, y0: by.y0 + (heightMm - page.heightMm) / 2 };
  return { ...page, heightMm, drawing: correctDrawing(page.drawing, moved) };
}

function correctDrawing({ strokes, words }: Drawing, by: Correction): Drawing {
  return {
    strokes: strokes.map((stroke) => correctStroke(stroke, by)),
    words: words.map((line) => correctWords(line, by)),
  };
}

function correctStroke(stroke: Stroke, { xx, xy, yy, x0, y0 }: Correction): Stroke {
  const points = new Float64Array(stroke.points.length);
  for (let i = 0; i < points.length; i += 2) {
    points[i] = xx * stroke.points[i] + xy * stroke.points[i + 1] + x0;
    points[i + 1] = yy * stroke.points[i + 1] + y0;
  }
  return { ...stroke, points };
}

function correctWords(words: Words, { xx, xy, yy, x0, y0 }: Correction): Words {
  const [cos, sin] = [Math.cos(words.angleRad), Math.sin(words.angleRad)];
  const along = { x: xx * cos + xy * sin, y: yy * sin };
  const length = Math.hypot(along.x, along.y);
  // An area grows by xx·yy, its side along the words by `length`: the rest is what their height grows by.
  const high = (xx * yy) / length;
  return {
    ...words,
    at: { x: xx * words.at.x + xy * words.at.y + x0, y: yy * words.at.y + y0 },
    angleRad: Math.atan2(along.y, along.x),
    heightMm: words.heightMm * high,
    wide: length / high,
  };
}
