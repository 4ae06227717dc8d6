import type { jsPDF } from 'jspdf';
import { emFromCapHeight, textWidthMm } from '../../geom/text-width.ts';
import { BOLD_OUTLINE_SHARE, LINE_STYLES } from '../../model/line-style.ts';
import type { Stroke, Words } from '../../model/template.ts';
import { plainText } from './plain-text.ts';

/** 1 PDF unit is 1/72 in (ISO 32000-1, 8.3.2.3). */
const PT_PER_MM = 72 / 25.4;

/** Where drawing goes: the document for words, and raw content for lines, whose y runs up as it does on our pages. */
export interface PdfCanvas {
  readonly doc: jsPDF;
  /** Adds operators to the content of the page (ISO 32000-1, 8.5). */
  readonly write: (operators: string) => void;
}

/** Draws lines with their widths, dashes and greys; ends are cut square, so that a line ends where it says and not half its width later. */
export function drawPdfStrokes({ write }: PdfCanvas, strokes: readonly Stroke[]): void {
  let style = '';
  for (const stroke of strokes) {
    if (stroke.points.length < 4) continue;
    const wanted = styleOperators(stroke.role);
    if (wanted !== style) write(wanted);
    style = wanted;
    write(pathOperators(stroke));
  }
}

function styleOperators(role: Stroke['role']): string {
  const { widthMm, dashMm, grey } = LINE_STYLES[role];
  return `0 J 1 j ${pt(widthMm)} w [${dashMm.map(pt).join(' ')}] 0 d ${grey} G ${grey} g`;
}

function pathOperators({ points, closed, filled }: Stroke): string {
  const parts = [`${pt(points[0])} ${pt(points[1])} m`];
  for (let i = 2; i + 1 < points.length; i += 2) parts.push(`${pt(points[i])} ${pt(points[i + 1])} l`);
  parts.push(filled === true ? 'h f' : closed ? 'h S' : 'S');
  return parts.join('\n');
}

/** Sets words in the font in force, black; one weight is embedded, so bold ones get an outline. */
export function drawPdfWords({ doc, write }: PdfCanvas, words: readonly Words[], pageHeightMm: number): void {
  if (words.length === 0) return;
  doc.setTextColor(0);
  // How wide letters are set holds until it is set anew (ISO 32000-1, 9.3.4).
  const isStretched = words.some(({ wide }) => wide !== undefined);
  for (const { text, at, angleRad, heightMm, align, bold, wide = 1 } of words) {
    const plain = plainText(text);
    if (plain.trim() === '') continue;
    doc.setFontSize(emFromCapHeight(heightMm) * PT_PER_MM);
    if (bold === true) write(`${pt(BOLD_OUTLINE_SHARE * heightMm)} w 1 j [] 0 d 0 G`);
    // Where the words begin is found here, with the widths every writer and step uses.
    const back = wide * textWidthMm(plain, heightMm) * { left: 0, centre: 0.5, right: 1 }[align];
    const x = at.x - back * Math.cos(angleRad);
    const y = at.y - back * Math.sin(angleRad);
    doc.text(plain, x, pageHeightMm - y, {
      angle: (angleRad * 180) / Math.PI,
      renderingMode: bold === true ? 'fillThenStroke' : 'fill',
      ...(isStretched ? { horizontalScale: wide } : {}),
    });
  }
}

/** mm as points with five decimals: 4 nm. */
function pt(mm: number): string {
  const rounded = Math.round(mm * PT_PER_MM * 1e5) / 1e5;
  return String(rounded === 0 ? 0 : rounded);
}
