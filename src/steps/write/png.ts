import { fail, ok, type Result } from '../../base/result.ts';
import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { emFromCapHeight, textWidthMm } from '../../geom/text-width.ts';
import { BOLD_OUTLINE_SHARE, LINE_STYLES } from '../../model/line-style.ts';
import type { Drawing, Stroke, Words } from '../../model/template.ts';
import { plainText } from './plain-text.ts';
import { PngBand } from './png-band.ts';
import { dotsPerMetre, PngFile } from './png-file.ts';
import type { FontOutlines } from './png-font.ts';

/** Most dots in one picture: a sheet of 1 × 2 m at 350 dpi. Beyond that few programs open it. */
const MOST_DOTS = 400e6;

/** Rows that are drawn at a time: little enough to hold at any width. */
const BAND_ROWS = 128;

/** What is drawn, lower left corner at the origin, y up, mm, and what to call it in a refusal. */
export interface Picture {
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly drawing: Drawing;
}

/** A thing to be drawn, in dots: which rows it reaches, and how it goes into a band. */
interface Mark {
  readonly top: number;
  readonly bottom: number;
  readonly draw: (band: PngBand) => void;
}

/**
 * Draws the lines and words of a page or sheet as a grey picture at true scale, which its file states in dots to the metre.
 * The drawing's upper left corner is the picture's; where a side is no whole number of dots the picture is up to one dot larger.
 * @param dpi dots to the inch, > 0.
 * @returns fails with `png/too-large` beyond {@link MOST_DOTS} dots.
 */
export const writePng = (picture: Picture, dpi: number, font: FontOutlines): Result<Uint8Array> =>
  runAtOnce(pngSteps(picture, dpi, font));

/** The same, band by band. */
export function* pngSteps(picture: Picture, dpi: number, font: FontOutlines): Stepwise<Result<Uint8Array>> {
  const { name, widthMm, heightMm, drawing } = picture;
  const perMetre = dotsPerMetre(dpi);
  if (!(perMetre > 0)) throw new RangeError(`png: ${dpi} dpi`);
  const scale = perMetre / 1000;
  const [width, height] = [widthMm, heightMm].map((mm) => Math.max(1, Math.ceil(mm * scale - 1e-6)));
  if (width * height > MOST_DOTS) {
    const most = Math.floor(Math.sqrt(MOST_DOTS / (widthMm * heightMm)) * 25.4);
    const text = `At ${dpi} dpi ${name} would be ${width} × ${height} dots, which few programs open: take ${most} dpi or less.`;
    return fail('png/too-large', text);
  }
  const toDots = (points: ArrayLike<number>): Float64Array =>
    Float64Array.from({ length: points.length }, (_, i) =>
      i % 2 === 0 ? points[i] * scale : (heightMm - points[i]) * scale,
    );
  const marks = [
    ...drawing.strokes.flatMap((stroke) => strokeMarks(stroke, scale, toDots)),
    ...drawing.words.flatMap((words) => wordMarks(words, scale, toDots, font)),
  ].sort((a, b) => a.top - b.top);
  const file = new PngFile(width, height, perMetre);
  let waiting: Mark[] = [];
  let next = 0;
  for (let top = 0; top < height; top += BAND_ROWS) {
    const rows = Math.min(BAND_ROWS, height - top);
    const band = new PngBand(width, top, rows);
    while (next < marks.length && marks[next].top < top + rows) waiting.push(marks[next++]);
    for (const mark of waiting) mark.draw(band);
    waiting = waiting.filter(({ bottom }) => bottom > top + rows);
    file.push(band.dots);
    yield;
  }
  return ok(file.end());
}

type ToDots = (points: ArrayLike<number>) => Float64Array;

function strokeMarks({ role, points, closed, filled }: Stroke, scale: number, toDots: ToDots): readonly Mark[] {
  const { widthMm, dashMm, grey } = LINE_STYLES[role];
  const dots = toDots(points);
  if (filled === true) return [fillMark([dots], 1 - grey)];
  const width = widthMm * scale;
  const lines =
    dashMm.length === 0
      ? [{ dots, closed }]
      : dashes(
          dots,
          closed,
          dashMm.map((mm) => mm * scale),
        );
  return lines.flatMap((line) => lineMarks(line.dots, line.closed, width, 1 - grey));
}

/** A mark for each straight part; round at bends, square at ends. */
function lineMarks(dots: Float64Array, closed: boolean, width: number, ink: number): readonly Mark[] {
  const count = dots.length / 2;
  const parts = closed ? count : count - 1;
  return Array.from({ length: parts }, (_, i) => {
    const j = (i + 1) % count;
    const [ax, ay, bx, by] = [dots[2 * i], dots[2 * i + 1], dots[2 * j], dots[2 * j + 1]];
    const isRound = [closed || i > 0, closed || i < parts - 1] as const;
    return {
      top: Math.min(ay, by) - width / 2 - 1,
      bottom: Math.max(ay, by) + width / 2 + 1,
      draw: (band) => band.stroke(ax, ay, bx, by, width, ink, isRound),
    };
  });
}

function fillMark(rings: readonly Float64Array[], ink: number): Mark {
  const ys = rings.flatMap((ring) => [...ring].filter((_, i) => i % 2 === 1));
  return { top: Math.min(...ys), bottom: Math.max(...ys), draw: (band) => band.fill(rings, ink) };
}

/** The drawn parts of a dashed line. */
function dashes(
  dots: Float64Array,
  closed: boolean,
  pattern: readonly number[],
): { dots: Float64Array; closed: false }[] {
  const found: number[][] = [];
  let run: number[] | null = null;
  let [step, left] = [0, pattern[0]];
  const count = dots.length / 2;
  for (let i = 0; i < (closed ? count : count - 1); i += 1) {
    const j = (i + 1) % count;
    const [ax, ay, bx, by] = [dots[2 * i], dots[2 * i + 1], dots[2 * j], dots[2 * j + 1]];
    const length = Math.hypot(bx - ax, by - ay);
    let at = 0;
    while (at < length) {
      const to = Math.min(length, at + left);
      if (step % 2 === 0) {
        if (run === null) found.push((run = [ax + ((bx - ax) * at) / length, ay + ((by - ay) * at) / length]));
        run.push(ax + ((bx - ax) * to) / length, ay + ((by - ay) * to) / length);
      }
      left -= to - at;
      at = to;
      if (left <= 1e-9) {
        step = (step + 1) % pattern.length;
        left = pattern[step];
        run = null;
      }
    }
  }
  return found.map((points) => ({ dots: Float64Array.from(points), closed: false }));
}

/** Letters one after another with the widths every writer uses; bold ones with an outline, as in print. */
function wordMarks(words: Words, scale: number, toDots: ToDots, font: FontOutlines): readonly Mark[] {
  const { at, angleRad, heightMm, align, bold } = words;
  const text = plainText(words.text);
  const em = emFromCapHeight(heightMm);
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  let along = -textWidthMm(text, heightMm) * { left: 0, centre: 0.5, right: 1 }[align];
  const marks: Mark[] = [];
  for (const letter of text) {
    const start = along;
    const rings = font.of(letter).map((ring) =>
      toDots(
        Float64Array.from({ length: ring.length }, (_, i) => {
          const [x, y] = [start + em * ring[i & ~1], em * ring[i | 1]];
          return i % 2 === 0 ? at.x + c * x - s * y : at.y + s * x + c * y;
        }),
      ),
    );
    along += textWidthMm(letter, heightMm);
    if (rings.length === 0) continue;
    marks.push(fillMark(rings, 1));
    if (bold === true) {
      const width = BOLD_OUTLINE_SHARE * heightMm * scale;
      marks.push(...rings.flatMap((ring) => lineMarks(ring, true, width, 1)));
    }
  }
  return marks;
}
